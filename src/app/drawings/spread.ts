/** Drawings of how trouble lies over the bed, seen from above, how it came about in time, and what a test pot shows. */
import type { SpreadSignId, TestSignId } from '../../signs/vocabulary.ts';
import {
  type BedPlan,
  bed,
  blade,
  board,
  type Dress,
  deadened,
  plant,
  pot,
  rosette,
  soil,
  sound,
  sun,
  yellowed,
} from './plant.ts';
import {
  along,
  arrow,
  circle,
  crosses,
  dots,
  head,
  line,
  missing,
  over,
  type Parts,
  polyline,
  scatter,
  shape,
  specks,
  wash,
} from './strokes.ts';
import { frostStar } from './things.ts';

const sickAt = (...at: readonly string[]): BedPlan => ({
  sick: (column, row) => at.includes(`${column}${row}`),
});
const narrow = (top: number, height: number, sick: BedPlan['sick'], rest: Partial<BedPlan> = {}): Parts =>
  bed({ top, height, rows: 1, sick, r: 8, ...rest });
/** A kind of plant that grows as a fan of narrow leaves. */
const spiky = (x: number, y: number, r: number): Parts =>
  line(...[0, 60, 120, 180, 240, 300].map((degrees) => polyline([[x, y], along([x, y], degrees, r)])));
/** A kind of plant that grows as a round head. */
const headed = (x: number, y: number, r: number): Parts => [
  shape('leaf', circle(x, y, r * 0.85)),
  line(`M${x - r * 0.5} ${y}q${r * 0.5} ${-r * 0.6} ${r} 0`),
];
const kinds = [spiky, headed, (x: number, y: number, r: number): Parts => rosette(x, y, r)] as const;
/** The young plant that weather drawings share, its dress chosen by side. */
const young = (dress?: (level: number, side: number, top: boolean) => Dress, x = 48): Parts => [
  soil(86),
  plant({ x, ground: 86, height: 38, pairs: 2, size: 0.46, ...(dress ? { dress } : {}) }),
];
const spoiled = (): Dress => deadened;
/** A leaf of a day-by-day pad. */
const page = (left: number, picture: Parts): Parts => [
  shape('pale', board(left, 26, 40, 56)),
  line(`M${left} 38h40`, `M${left + 12} 20v10M${left + 28} 20v10`),
  picture,
];
const little = (x: number, ground: number, height: number, dress: Dress): Parts => [
  line(`M${x} ${ground}v${-height}`),
  [-1, 1].flatMap((side) => [
    dress(blade([x, ground - height * 0.3], side * 76, height * 0.52, 0.54)),
    dress(blade([x, ground - height], side * 42, height * 0.5, 0.54)),
  ]),
];

const spread: Record<SpreadSignId, () => Parts> = {
  'one-plant': () => bed(sickAt('21')),
  scattered: () => bed(sickAt('00', '21', '32')),
  patch: () => bed(sickAt('20', '21', '11', '31')),
  'every-year': () => [
    [4, 35, 66].map((top) =>
      bed({ left: 4, width: 66, top, height: 26, columns: 3, rows: 1, r: 8, sick: (column) => column === 2 }),
    ),
    line('M78 17C92 17 92 45 80 47', head(79, 47, -80), 'M78 50C92 50 92 78 80 80', head(79, 80, -80)),
  ],
  'whole-bed': () => bed({ sick: () => true }),
  'several-kinds': () =>
    bed({
      sick: (column) => column > 1,
      well: (x, y, r, row) => (kinds[row] ?? spiky)(x, y, r),
    }),
  'one-end': () => bed({ sick: (column, row) => column === 3 || (column === 2 && row !== 1) }),
  'variety-only': () =>
    bed({
      rows: 2,
      r: 10,
      sick: (_, row) => row === 0,
      well: (x, y, r) => headed(x, y, r),
    }),
  'elsewhere-fine': () => [
    narrow(8, 36, () => true, { rows: 1, r: 9 }),
    narrow(52, 36, () => false, { rows: 1, r: 9 }),
  ],
  'same-compost-only': () => [
    wash('leaf', board(6, 38, 42, 50)),
    bed({ top: 38, height: 50, rows: 2, sick: (column) => column < 2 }),
    line('M48 38V88'),
    specks(
      scatter(
        (x, y) =>
          x > 8 &&
          x < 46 &&
          y > 40 &&
          y < 86 &&
          [16.5, 37.5].every((cx) => [50.5, 75.5].every((cy) => Math.hypot(x - cx, y - cy) > 9.5)),
        4.6,
      ),
    ),
    shape('dead', 'M18 18C24 4 42 4 48 18z'),
    line('M12 18H52L46 27H22L12 18L4 15', 'M24 27l-4 6'),
    over(circle(44, 29, 5)),
  ],
  spreading: () => [
    bed({ columns: 3, top: 8, height: 80, r: 9, sick: (column, row) => column + row < 2 }),
    (
      [
        [
          [58, 21],
          [66, 21],
        ],
        [
          [48, 31],
          [48, 37],
        ],
        [
          [30, 48],
          [38, 48],
        ],
        [
          [20, 58],
          [20, 64],
        ],
      ] as const
    ).map(([from, to]) => arrow(from, to)),
  ],
  'oldest-first': () => [
    soil(88),
    plant({
      x: 42,
      ground: 88,
      height: 70,
      pairs: 3,
      size: 0.38,
      dress: (level, _, top) => (top || level > 1 ? sound : level === 1 ? yellowed : deadened),
    }),
    arrow([84, 80], [84, 24]),
  ],
  sudden: () => [page(4, little(24, 76, 26, sound)), page(52, [little(72, 76, 26, deadened)])],
  'after-cold': () => [young(spoiled), line(frostStar(22, 26, 16), frostStar(74, 20, 12))],
  'after-planting': () => [
    line('M4 56H30M66 56H92', 'M30 56L36 84H60L66 56'),
    shape('dead', 'M38 50H58L54 72H42z'),
    line('M42 56h6M48 62h6M44 67h5'),
    plant({ x: 48, ground: 50, height: 32, pairs: 1, size: 0.5 }),
    shape('leaf', 'M76 50C70 64 72 76 80 88C88 76 90 64 84 50z'),
    line('M80 50V32M76 20h8v12h-8z', 'M80 56V72'),
    line('M28 30v10', head(28, 42, 180)),
  ],
  'after-spray': () => [
    young(spoiled, 34),
    line('M92 10L72 16', 'M72 10L62 14L64 24L74 22z', 'M92 4V22'),
    missing('M60 18L26 26M60 20L34 42M62 24L50 46'),
    specks([
      [46, 28],
      [38, 32],
      [44, 36],
      [52, 32],
      [30, 34],
      [54, 40],
      [22, 34],
    ]),
  ],
  'after-feed': () => [
    young(undefined, 30),
    shape('pale', 'M52 22L82 6L92 26L66 40C56 38 52 30 52 22z'),
    line('M87 16L95 12', 'M58 22C66 20 70 28 66 38'),
    dots(scatter((x, y) => x > 44 - (y - 34) * 0.3 && x < 62 && y > 36 && y < 82, 8, 5)),
    dots([
      [44, 83],
      [50, 82],
      [56, 83],
      [62, 82],
      [68, 83],
    ]),
  ],
  'after-hot-sun': () => [young((_, side) => (side > 0 ? bleached : sound), 40), sun(72, 25, 13, false, 6)],
  'after-wind': () => [
    soil(86),
    plant({
      x: 34,
      ground: 86,
      height: 42,
      pairs: 2,
      size: 0.5,
      lean: 26,
      stand: (level, side) => (side < 0 ? 20 : 96 - level * 6),
    }),
    line(
      'M4 22H54C66 22 66 8 56 8C50 8 48 12 50 15',
      'M4 34H76C90 34 90 18 80 18C74 18 72 22 74 26',
      'M4 46H26',
    ),
    sound(blade([82, 62], 110, 12)),
  ],
  'after-rain': () => [
    young(),
    shape('pale', 'M22 30C10 30 10 16 22 16C26 4 44 2 50 12C60 4 76 10 74 18C86 18 86 30 74 30z'),
    line('M20 37l-4 12M34 37l-6 18M64 37l-3 9M78 37l-6 18M24 60l-3 10M74 62l-3 9'),
    line('M8 90q10-4 20 0t20 0 20 0 20 0'),
  ],
  'always-so': () => [
    soil(84),
    little(15, 84, 18, yellowed),
    little(40, 84, 32, yellowed),
    little(71, 84, 44, yellowed),
  ],
  'getting-better': () => [
    soil(84),
    little(18, 84, 26, deadened),
    arrow([36, 66], [48, 66]),
    plant({
      x: 72,
      ground: 84,
      height: 60,
      pairs: 3,
      size: 0.32,
      dress: (level, _, top) => (level === 0 && !top ? deadened : sound),
    }),
  ],
};

function bleached(b: ReturnType<typeof blade>): Parts {
  return [shape('pale', b.edge), crosses([b.at(0.5)], 2)];
}
const test: Record<TestSignId, () => Parts> = {
  'pot-test-injury': () => [
    pot(24, 58, 36, 30),
    pot(72, 58, 36, 30, 'leaf'),
    line('M24 58C20 48 30 44 26 36C24 30 18 30 16 34M26 38C32 34 36 38 34 44'),
    shape(
      'leaf',
      'M16 34C8 30 6 20 14 18C12 24 18 26 20 22C24 28 22 34 16 34z',
      'M34 44C42 42 44 34 38 30C38 36 34 34 32 32C28 36 28 42 34 44z',
      'M26 36C22 28 24 20 32 18C28 24 34 26 30 34z',
    ),
    line('M72 58V22'),
    [-1, 1].map((side) => [
      sound(blade([72, 40], side * 66, 20, 0.66)),
      sound(blade([72, 22], side * 34, 16, 0.6)),
    ]),
  ],
};
export const SPREAD_DRAWINGS: Readonly<Record<SpreadSignId | TestSignId, () => Parts>> = {
  ...spread,
  ...test,
};
