import type { MeasureId } from '../src/leaf/measures.ts';
import type { MarkPair } from '../src/signs/mark-pair.ts';
import type { MeasureScale } from '../src/signs/measure-scale.ts';
import type { ChewedShares } from './read-chewed-shares.ts';
import type { LabelledReading } from './read-labelled-photos.ts';

/** A labelled reading; of chewed leaflets also what their masks say. */
export interface JudgedPhoto extends LabelledReading {
  readonly chewed?: ChewedShares;
}

/** What one measure is asked: does it tell photos with the mark from photos that surely lack it? */
export interface MarkQuestion {
  readonly mark: MarkPair['mark'];
  readonly measure: MeasureId;
  readonly scale: MeasureScale;
  readonly present: (photo: JudgedPhoto) => boolean;
  readonly absent: (photo: JudgedPhoto) => boolean;
}

type Test = (photo: JudgedPhoto) => boolean;
const is =
  (...keys: string[]): Test =>
  ({ set, label }) =>
    keys.includes(`${set}/${label}`);
const any =
  (...tests: Test[]): Test =>
  (photo) =>
    tests.some((test) => test(photo));

const healthy = is('bean-uganda/healthy', 'blackgram-india/healthy', 'chilli-india/healthy');
const spotted = is(
  'bean-uganda/angular_leaf_spot',
  'bean-uganda/bean_rust',
  'blackgram-india/anthracnose',
  'chilli-india/cercospora',
);
const powdered = is('blackgram-india/powdery_mildew', 'chilli-india/powdery_mildew');
const interveinal = is('chilli-india/nutritional');
const mosaic = is('blackgram-india/yellow_mosaic');
const crinkled = is('blackgram-india/leaf_crinckle');
/** SPAD below which a leaf is plainly pale and above which it is plainly green; papaya, meter SPAD-502. */
const PALE_SPAD = 22;
const GREEN_SPAD = 34;
/** Papaya leaves on white paper: of 48 looked at, none is chewed. */
const whole = is('papaya-spad/golden_white_bg', 'papaya-spad/tainung_white_bg');
const pale: Test = ({ spad }) => spad !== undefined && spad < PALE_SPAD;
const green: Test = ({ spad }) => spad !== undefined && spad > GREEN_SPAD;

/** Chewed or not by the masks, never by our own measure; between the two a person would not be sure either. */
const HOLED = { plainly: 0.02, hardly: 0.002 };
const BITTEN = { plainly: 0.015, hardly: 0.004 };

interface Mark {
  readonly mark: MarkPair['mark'];
  /** Measures that might tell it; the one that does best on groups left out is kept. */
  readonly by: readonly (readonly [MeasureId, MeasureScale])[];
  readonly present: Test;
  /** Photos of other troubles are among these where they surely lack the mark, so that it is not told too easily. */
  readonly absent: Test;
}

const MARKS: readonly Mark[] = [
  {
    mark: 'yellow-even',
    by: [
      ['dark-green-index', 'plain'],
      ['hue', 'plain'],
      ['chlorotic-fraction', 'log-odds'],
    ],
    present: pale,
    absent: any(green, healthy, interveinal),
  },
  {
    mark: 'yellow-between-veins',
    by: [
      ['vein-contrast', 'plain'],
      ['chlorotic-fraction', 'log-odds'],
    ],
    present: interveinal,
    absent: any(healthy, mosaic, pale, green),
  },
  {
    mark: 'mottled',
    by: [
      ['mottle', 'plain'],
      ['evenness', 'plain'],
    ],
    present: mosaic,
    absent: any(healthy, green, pale),
  },
  {
    // Rust, ringed, haloed and angular spots look alike to these measures, so they speak of spots of any kind.
    mark: 'spotted',
    by: [
      ['spot-fraction', 'log-odds'],
      ['spot-count', 'log'],
      ['necrotic-fraction', 'log-odds'],
    ],
    present: spotted,
    absent: healthy,
  },
  {
    mark: 'white-powder',
    by: [['white-fraction', 'log-odds']],
    present: powdered,
    absent: any(healthy, spotted, interveinal, mosaic),
  },
  {
    // Not asked of curl (chilli, mites and thrips): it tells that worse, and one measure should not speak twice.
    mark: 'puckered',
    by: [['surface-relief', 'plain']],
    present: crinkled,
    absent: healthy,
  },
  {
    mark: 'ragged-holes',
    by: [['hole-fraction', 'log-odds']],
    present: ({ chewed }) => (chewed?.hole ?? 0) > HOLED.plainly,
    absent: any(({ chewed }) => (chewed?.hole ?? 1) < HOLED.hardly, whole, healthy),
  },
  {
    mark: 'edge-bites',
    by: [['edge-loss-fraction', 'log-odds']],
    present: ({ chewed }) => (chewed?.edge ?? 0) > BITTEN.plainly,
    absent: any(
      ({ chewed }) => (chewed?.edge ?? 1) < BITTEN.hardly,
      whole,
      is('bean-uganda/healthy', 'blackgram-india/healthy'),
    ),
  },
];

export const MARK_QUESTIONS: readonly MarkQuestion[] = MARKS.flatMap(({ by, ...mark }) =>
  by.map(([measure, scale]) => ({ ...mark, measure, scale })),
);
