/** Drawings of the checks, of the four photos, and of where on the plant to look. */
import type { CheckId } from '../../causes/checks.ts';
import { greenfly, ladybird, paw, pellets, slug } from './creatures.ts';
import {
  bed,
  blade,
  type Dress,
  deadened,
  earth,
  finger,
  lens,
  marked,
  moon,
  plant,
  pot,
  soil,
  sound,
  sun,
} from './plant.ts';
import {
  circle,
  dots,
  head,
  ink,
  line,
  missing,
  oval,
  over,
  type Parts,
  polyline,
  scatter,
  shape,
  specks,
  wash,
  within,
} from './strokes.ts';
import { chip, thermometer } from './things.ts';

/** The corners of a picture's frame. */
const frame = (left: number, top: number, width: number, height: number): string => {
  const [right, bottom, arm] = [left + width, top + height, 9];
  return `M${left} ${top + arm}v${-arm}h${arm}M${right - arm} ${top}h${arm}v${arm}M${right} ${bottom - arm}v${arm}h${-arm}M${left + arm} ${bottom}h${-arm}v${-arm}`;
};
/** A two-headed arrow: look from one to the other. */
const between = (ax: number, bx: number, y: number): Parts =>
  line(`M${ax} ${y}H${bx}`, head(ax, y, -90), head(bx, y, 90));
const roundYoung: Dress = (b) => {
  const [x, y] = b.at(0.6);
  return shape('yellow', circle(x, y, 4.5));
};
const roundLeaf: Dress = (b) => {
  const [x, y] = b.at(0.6);
  return [shape('yellow', circle(x, y, 7)), line(polyline([b.at(0), b.at(0.6)]))];
};
export const CHECK_DRAWINGS: Readonly<Record<CheckId, () => Parts>> = {
  'turn-leaf-over': () => [
    shape('leaf', 'M6 62C10 34 34 16 62 14C62 40 44 70 6 62z'),
    line('M6 62L2 70M6 62Q30 46 48 28M18 52Q16 44 20 38M30 44Q28 34 32 28'),
    over('M62 14C74 30 76 52 58 70C50 60 46 46 48 28z', 'pale'),
    line('M62 14Q66 42 58 70M64 30Q56 34 50 40M65 44Q58 48 54 54'),
    dots([
      [56, 40],
      [60, 50],
      [69, 42],
      [66, 56],
    ]),
    line('M44 8C60 -2 86 6 88 30', head(88, 32, 182)),
    finger([62, 66], 120, 40, 5.5),
  ],
  'look-with-lens': () => [
    shape('leaf', 'M4 76C6 40 36 14 78 10C80 52 50 86 4 76z'),
    line('M4 76Q40 54 66 22'),
    specks([
      [22, 62],
      [30, 68],
      [26, 52],
      [62, 26],
      [70, 22],
    ]),
    lens(46, 44, 22),
    line('M30 56Q48 44 62 30M44 46Q52 50 60 50'),
    dots([
      [38, 36],
      [46, 32],
      [36, 44],
      [52, 58],
      [44, 54],
    ]),
    greenfly(56, 40, 20, 4.5),
  ],
  'look-for-hunters': () => [
    line('M30 92C34 60 36 30 36 4'),
    greenfly(29, 20, 10, 6),
    greenfly(42, 76, -10, 6),
    greenfly(26, 80, 10, 6),
    lens(48, 44, 25),
    ladybird(48, 44, 40, 13),
  ],
  'rub-leaf': () => [
    shape('leaf', 'M4 52C14 22 46 10 76 16C74 48 42 68 4 52z'),
    line('M4 52Q36 40 62 24'),
    line(...scatter(within(30, 36, 13), 5.6).map(([x, y]) => circle(x, y, 1.5))),
    finger([50, 44], 132, 60, 10),
    specks([
      [50, 40],
      [47, 47],
      [53, 46],
      [57, 41],
      [44, 42],
      [48, 54],
    ]),
    line('M52 74Q42 70 38 62M70 34q6 2 10 8'),
  ],
  'hold-to-light': () => {
    const held = blade([58, 84], -28, 78, 0.5);
    const vein = (up: number, side: number): string =>
      polyline([held.at(up), held.at(up + 0.16, side * 0.34)]);
    return [
      sun(34, 36, 21, false, 8),
      wash('ground', held.edge),
      shape('yellow', held.edge),
      line(held.rib, vein(0.2, 1), vein(0.4, 1), vein(0.56, 1), vein(0.2, -1)),
      shape(
        'dead',
        'M42 66C32 62 26 54 34 50C40 46 32 42 28 38C24 34 22 28 28 24L30 27C27 30 30 34 34 38C40 42 44 48 38 53C34 57 40 60 44 62z',
      ),
      finger([62, 80], 110, 40, 5.5),
      finger([56, 88], 84, 46, 5),
    ];
  },
  'look-for-tracks': () => [
    [0, 72, 144, 216, 288].map((degrees) => sound(blade([48, 46], degrees, 21, 0.5))),
    pellets(
      [
        [14, 26],
        [21, 20],
        [22, 29],
      ],
      3.6,
    ),
    paw(78, 22, 9),
    shape('pale', 'M6 74C16 60 26 84 38 74L40 79C28 90 18 66 9 80z'),
    line('M62 76q7 3 9 12M70 72q7 3 9 12M78 68q7 3 9 12'),
    missing('M48 16A30 30 0 0 1 78 46A30 30 0 0 1 48 76A30 30 0 0 1 18 46A30 30 0 0 1 48 16'),
  ],
  'look-at-bites': () => [
    line('M34 92V62M52 92V64', 'M34 84C26 82 20 78 16 70'),
    sound(blade([16, 70], -14, 20)),
    lens(44, 38, 28),
    shape('leaf', 'M28 60V38L40 24V62', 'M48 64V40l4 5 1-13 4 10 4-14 2 14V60'),
    over(oval(34, 31, 9, 3.6, -49), 'pale'),
  ],
  'look-by-torch': () => [
    moon(80, 16, 10),
    shape('yellow', 'M34 30L86 44V84L26 46z'),
    over('M6 22L16 10L36 28L28 46z', 'leaf'),
    line('M14 30L26 18', 'M6 22L2 16M16 10L10 4'),
    line('M40 88H94'),
    slug(36, 88),
  ],
  'scrape-soil': () => [
    line('M48 92V8', 'M52 92V8'),
    sound(blade([48, 22], -50, 22)),
    sound(blade([52, 16], 50, 22)),
    line('M4 50H20C30 50 32 74 40 78H60C66 74 66 62 70 54', 'M84 50H92'),
    earth(56, 0, 28),
    earth(80, 12, 92),
    finger([64, 70], 48, 46, 5.5),
    finger([74, 74], 48, 46, 5.5),
    line('M22 42l-8-6M30 40l-5-9'),
  ],
  'lift-plant': () => [
    line('M90 8L62 50', 'M85 3L95 10'),
    shape('leaf', 'M52 46L72 58L68 64L48 52z'),
    line('M50 52L28 86M56 56L36 90M64 61L46 92'),
    plant({ x: 34, ground: 46, height: 36, pairs: 2, size: 0.4, lean: -6 }),
    line(
      'M34 46C30 56 22 60 14 72M34 46C34 58 30 66 24 80M34 46C40 54 40 60 44 66M26 58q-8 0-12 6M32 64q4 6 2 12',
    ),
    line('M4 90H22M52 92H92'),
  ],
  'cut-stem': () => [
    shape('leaf', 'M18 92V52L42 44V92'),
    over(oval(30, 48, 12.6, 5, -18), 'pale'),
    shape('leaf', 'M20 40V6H44V32z'),
    shape('pale', 'M48 42L94 24V34C80 40 66 46 50 50z'),
    line('M54 60q10-2 18-8'),
  ],
  'look-at-dawn': () => [
    sun(36, 58, 20, true, 9),
    line('M4 58H64M78 58H92', 'M8 68H26M34 68H58M16 77H44'),
    plant({ x: 71, ground: 88, height: 56, pairs: 2, size: 0.34 }),
    line('M54 88H92'),
  ],
  'wait-and-compare': () => [
    sound(blade([20, 76], 16, 66, 0.6)),
    line('M20 76L14 90', 'M17 82C28 78 34 80 46 74'),
    shape('mark', 'M46 74L56 62L78 68L74 84L52 82z'),
    line(circle(53, 74, 1.4)),
    line(
      ...Array.from({ length: 7 }, (_, i) => `M${60 + (i % 4) * 9 + (i > 3 ? 4 : 0)} ${i > 3 ? 36 : 18}v11`),
    ),
  ],
  'compare-other-bed': () => [
    bed({ top: 4, height: 34, rows: 1, r: 9, sick: () => true, columns: 3, left: 4, width: 66 }),
    bed({ top: 58, height: 34, rows: 1, r: 9, sick: () => false, columns: 3, left: 26, width: 66 }),
    line('M80 20C92 24 92 40 84 52', head(83, 54, 210), 'M14 76C4 72 4 56 12 44', head(13, 42, 30)),
  ],
  'compare-varieties': () => [
    soil(86),
    plant({ x: 22, ground: 86, height: 58, pairs: 2, size: 0.32 }),
    plant({
      x: 74,
      ground: 86,
      height: 58,
      pairs: 2,
      size: 0.32,
      dress: (_, __, top) => (top ? roundYoung : roundLeaf),
    }),
    between(38, 58, 22),
  ],
  'compare-other-crops': () => [
    soil(64),
    line('M14 64C8 50 10 36 6 26M14 64C14 46 16 34 14 20M14 64C20 50 20 38 24 28'),
    shape('pale', circle(14, 62, 6)),
    plant({ x: 48, ground: 64, height: 44, pairs: 2, size: 0.34 }),
    line('M80 64V30M80 52l-12-12M80 52l12-12M80 42l-9-10M80 42l9-10M80 32l-5-8M80 32l5-8'),
    ...[14, 34, 54, 74].map((x, i) =>
      ink(oval(x, 84 + (i % 2) * 6, 5, 2.8), oval(x + 8, 84 + (i % 2) * 6, 2, 2.2)),
    ),
  ],
  'pot-test': () => [
    pot(24, 40, 40, 50),
    pot(72, 40, 40, 50, 'pale'),
    [22, 70].map((x) => [
      over(oval(x - 3, 60, 6.5, 4.2, 20), 'pale'),
      over(oval(x + 7, 66, 6.5, 4.2, -20), 'pale'),
    ]),
    line('M24 28V8', head(24, 30, 180), 'M72 28V8', head(72, 30, 180)),
    specks(scatter((x, y) => x > 12 && x < 36 && y > 72 && y < 86, 5)),
  ],
  'look-in-root-zone': () => [
    plant({ x: 34, ground: 40, height: 28, pairs: 1, size: 0.6 }),
    line('M4 40H58L62 86H74L80 40H92'),
    line('M34 40C34 56 28 66 20 78M34 40C36 58 42 66 48 76M34 48q-10 4-18 6M34 52q8 4 16 4M34 60v26'),
    (
      [
        [14, 66, 20],
        [46, 64, -30],
        [28, 84, 10],
        [44, 84, 60],
        [22, 62, 70],
        [52, 48, 15],
      ] as const
    ).map(([x, y, degrees]) => chip(x, y, degrees)),
    line('M68 8V34', head(68, 36, 180)),
  ],
  'finger-in-soil': () => [
    line('M4 52H36M62 52H92'),
    earth(56, 4, 34),
    earth(58, 62, 92),
    earth(82, 10, 92),
    finger([49, 80], 4, 46, 10),
    line(
      'M42 36C30 34 22 28 22 14M62 36C76 36 80 30 80 6M62 20C58 26 54 26 52 18',
      'M36 52q6 4 4 14M62 52q-6 4-4 14',
    ),
  ],
  'read-soil-thermometer': () => [
    line('M4 50H38M58 50H92'),
    earth(54, 4, 34),
    earth(58, 62, 74),
    thermometer(48, 6, 76, 40),
    line('M80 50V84M76 84h8'),
    plant({ x: 18, ground: 50, height: 26, pairs: 1, size: 0.6 }),
  ],
  'test-soil-reaction': () => [
    over('M16 10H40V76A12 12 0 0 1 16 76z'),
    shape('yellow', 'M16 40H40V76A12 12 0 0 1 16 76z'),
    shape('dead', 'M16 66C24 62 32 68 40 64V76A12 12 0 0 1 16 76z'),
    line('M12 10H44', 'M24 48h4M30 54h4'),
    line(board4(58, 12, 26)),
    dots([
      [71, 24],
      [66, 40],
      [76, 40],
      [64, 56],
      [71, 56],
      [78, 56],
      [64, 72],
      [71, 68],
      [78, 72],
      [71, 76],
    ]),
    line('M46 56h8', head(55, 56, 90)),
  ],
  'read-heap-thermometer': () => [
    shape('dead', 'M4 88C12 62 22 48 40 42C58 40 76 60 90 88z'),
    line('M4 88H92', 'M20 76h6M32 80h5M62 78h6M54 66h5M28 62h5M74 80h5'),
    line('M72 28L44 66'),
    over(circle(76, 22, 16), 'pale'),
    line('M76 22L84 14M64 22h3M76 10v3M85 22h3', 'M22 34q-4-5 0-10t0-10M38 30q-4-5 0-10t0-10'),
  ],
  'ask-supplier': () => [
    shape('yellow', 'M6 58L28 48H66L46 58z', 'M6 58H46V88H6z', 'M46 58L66 48V76L46 88z'),
    line('M16 58V88M34 58V88M16 58L37 48M34 58L55 48', 'M22 66h6M22 74h8M38 70h4M8 76h5M24 82h5'),
    over('M40 8H84Q90 8 90 14V30Q90 36 84 36H66L58 46L58 36H40Q34 36 34 30V14Q34 8 40 8z'),
    line('M57 18C57 12 67 12 67 18C67 22 62 22 62 26M62 31v0.1'),
  ],
  'read-seed-packet': () => [
    shape('pale', 'M20 14H68V90H20z'),
    line('M20 26H68', 'M28 76H60M28 83H50'),
    sound(blade([44, 68], 0, 36, 0.8)),
    shape('dead', oval(80, 60, 5, 3.4, 30), oval(86, 74, 5, 3.4, -20), oval(78, 84, 5, 3.4, 60)),
    line('M20 14L26 6H68V14'),
  ],
};
/** A strip of four boxes to compare a colour with. */
function board4(left: number, top: number, width: number): string {
  return `M${left} ${top + 4}h${width}v68h${-width}zm0 17h${width}m0 17h${-width}m0 17h${width}`;
}

const whole = (dress?: (level: number, side: number, top: boolean) => Dress, ground = 84): Parts => [
  line(`M22 ${ground}H74`),
  plant({ x: 48, ground, height: 62, pairs: 3, size: 0.42, ...(dress ? { dress } : {}) }),
];
const plain: Dress = (b) => line(b.edge);
const asked =
  (which: 'old' | 'new', pairs: number) =>
  (level: number, _side: number, top: boolean): Dress =>
    (which === 'new' ? top : !top && level < pairs) ? marked : plain;

export type RoleDrawingId = 'old' | 'new' | 'whole' | 'normal';
export const ROLE_DRAWINGS: Readonly<Record<RoleDrawingId, () => Parts>> = {
  old: () => [whole(asked('old', 1), 80), line(frame(8, 52, 80, 36))],
  new: () => [whole(asked('new', 0), 88), line(frame(24, 6, 48, 32))],
  whole: () => [whole(undefined, 82), line(frame(6, 4, 84, 88))],
  normal: () => [
    line('M6 80H38M55 80H86'),
    plant({ x: 22, ground: 80, height: 48, pairs: 2, size: 0.36, dress: () => deadened }),
    plant({ x: 70, ground: 80, height: 48, pairs: 2, size: 0.36 }),
    line(frame(47, 20, 46, 70)),
  ],
};
export type PositionDrawingId = 'position-old' | 'position-new';
export const POSITION_DRAWINGS: Readonly<Record<PositionDrawingId, () => Parts>> = {
  'position-old': () => [
    whole(asked('old', 2), 88),
    line('M4 70h10', head(16, 70, 90), 'M92 70h-10', head(80, 70, -90)),
  ],
  'position-new': () => [
    whole(asked('new', 0), 88),
    line('M18 20h14', head(34, 20, 90), 'M78 20h-14', head(62, 20, -90)),
  ],
};

/** How much a leaf shows: in full, a little at its tip, nothing. */
const little: Dress = (b) => [
  plain(b),
  wash('mark', circle(...b.at(0.7), b.small ? 3 : 4)),
  dots([b.at(0.7)]),
];
const lying = (how: (level: number, top: boolean) => Dress): Parts => [
  line('M14 92H82'),
  plant({ x: 48, ground: 92, height: 68, pairs: 3, size: 0.5, dress: (level, _, top) => how(level, top) }),
];
export type LyingDrawingId = 'lying-only-old' | 'lying-most-old' | 'lying-most-new' | 'lying-both';
/** On which leaves the trouble lies: the leaves that show it are washed and veined, those with a little of it carry a spot. */
export const LYING_DRAWINGS: Readonly<Record<LyingDrawingId, () => Parts>> = {
  'lying-only-old': () => lying((level) => (level === 0 ? marked : plain)),
  'lying-most-old': () => lying((level) => (level < 2 ? marked : little)),
  'lying-most-new': () => lying((_, top) => (top ? marked : plain)),
  'lying-both': () => lying(() => marked),
};
