import type { TrialRecord } from '../../garden/trial-record.ts';
import { trialReadingId } from '../../garden/trial-record.ts';
import { seededRandom } from '../../leaf/draw-leaf.ts';
import { layOutSeason } from '../state/plan-trial.ts';
import { growingHalf } from './growing-half.ts';
import { dayBefore, demoStamp } from './invent-days.ts';

interface TrialRow {
  readonly id: string;
  readonly seed: number;
  readonly bed: readonly [id: string, name: string];
  readonly laidOut: number;
  readonly trial: Pick<
    TrialRecord,
    'name' | 'ways' | 'unit' | 'measure' | 'ofWhat' | 'better' | 'matters' | 'plan' | 'note'
  >;
  readonly places: number;
  /** What the numbers are drawn from, made up: middle of each way, and how far single ones stray (standard deviation). */
  readonly middles: Readonly<Record<string, number>>;
  readonly stray: number;
  /** Each measuring: so many days ago, so much grown by then, so many of the first units done. */
  readonly measured: readonly (readonly [ago: number, grown: number, units: number])[];
  readonly round: number;
  readonly lost?: readonly [unit: number, ago: number, why: string];
  readonly lookOn?: number;
  readonly endedOn?: number;
}

const ROWS: readonly TrialRow[] = [
  {
    id: 'leaf-mould',
    seed: 41,
    bed: ['far', 'Far bed'],
    laidOut: 38,
    trial: {
      name: 'Does leaf mould on top help the leeks?',
      ways: [
        { id: 'A', name: 'bare soil' },
        { id: 'B', name: 'leaf mould on top' },
      ],
      unit: 'plant',
      measure: { by: 'hand', kind: 'height' },
      better: 'more',
      matters: 4,
      plan: { typical: 25, spreadWord: 'a-little-uneven', chance: 0.8, how: 'blocks', each: 8 },
      note: '',
    },
    places: 16,
    middles: { A: 18, B: 21 },
    stray: 2.6,
    measured: [
      [10, 0, 16],
      [0, 5, 6],
    ],
    round: 0.5,
    lost: [10, 4, 'dug up or broken'],
    lookOn: 0,
  },
  {
    id: 'net',
    seed: 7,
    bed: ['stone', 'Stone bed'],
    laidOut: 395,
    trial: {
      name: 'Is the net over the radishes worth it?',
      ways: [
        { id: 'A', name: 'net from sowing on' },
        { id: 'B', name: 'no net' },
      ],
      unit: 'plot',
      measure: { by: 'hand', kind: 'share' },
      ofWhat: 'leaf eaten into holes',
      better: 'less',
      matters: 0.1,
      plan: { typical: 0.2, spreadWord: 'very-uneven', chance: 0.8, how: 'blocks', each: 6 },
      note: 'Yes. The net goes on the day they are sown, and stays.',
    },
    places: 12,
    middles: { A: 0.06, B: 0.24 },
    stray: 0.06,
    measured: [[361, 0, 12]],
    round: 0.01,
    endedOn: 361,
  },
];

function inventTrial(row: TrialRow, today: string): TrialRecord {
  const { seed, laidOut, trial, places, middles, stray, measured, round, lost } = row;
  const day = (ago: number): string => dayBefore(today, ago);
  const [bedId, name] = row.bed;
  const bare: TrialRecord = {
    ...demoStamp(`trial-${row.id}`, day(row.endedOn ?? 0)),
    kind: 'trial',
    ...trial,
    layouts: [],
    readings: [],
    losses: [],
  };
  const beds = [{ bed: { id: `demo-${bedId}`, name }, places }];
  const layout = layOutSeason(bare, beds, seed, day(laidOut), growingHalf(today));
  const random = seededRandom(seed);
  // Normal by Box and Muller 1958, from memory; what a plant strays by it keeps.
  const strays = layout.units.map(
    () => stray * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
  );
  const readings = measured.flatMap(([ago, grown, units]) =>
    layout.units.slice(0, units).flatMap(({ id, way }, at) => {
      if (lost && lost[0] === at && lost[1] >= ago) return [];
      const value = Math.max(0, (middles[way] ?? 0) + grown + (strays[at] ?? 0));
      const rounded = Number((Math.round(value / round) * round).toFixed(2));
      return [{ id: trialReadingId(day(ago), id), date: day(ago), unitId: id, value: rounded }];
    }),
  );
  const gone = lost && layout.units[lost[0]];
  return {
    ...bare,
    layouts: [layout],
    readings,
    losses: gone ? [{ id: gone.id, date: day(lost[1]), why: lost[2] }] : [],
    ...(row.lookOn === undefined ? {} : { lookOn: day(row.lookOn) }),
    ...(row.endedOn === undefined ? {} : { ended: { date: day(row.endedOn), as: 'read' as const } }),
  };
}

/** Two invented trials: one that is being measured today, one that ended last year. Their numbers are drawn by a seeded lot. Pure. */
export const inventTrials = (today: string): TrialRecord[] => ROWS.map((row) => inventTrial(row, today));
