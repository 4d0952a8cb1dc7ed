/**
 * The eleven steps by which a test pot is scored, drawn as a bean seedling from the side: what `compare/pot-test/injury-scale.ts`
 * says in words. The broken stroke at the right is as tall as a seedling in clean mix.
 */
import { type Blade, blade, deadened, earth, sound } from './plant.ts';
import {
  along,
  circle,
  cross,
  line,
  missing,
  type Parts,
  type Point,
  pair,
  plus,
  polyline,
  shape,
  smooth,
  turned,
} from './strokes.ts';

const GROUND = 86;
const TALL = 70;

/** As tall as in clean mix. */
const beside: Parts = missing(`M90 ${GROUND}V${GROUND - TALL}M87 ${GROUND - TALL}H93`);
const soil: Parts = [line(`M4 ${GROUND}H84`), earth(GROUND, 4, 84)];

type Leaf = (from: Point, degrees: number, length: number) => Parts;

const flat: Leaf = (from, degrees, length) => sound(blade(from, degrees, length, 0.5));
const limp: Leaf = (from, degrees, length) => deadened(blade(from, degrees, length, 0.4));

/** Open, but its edge runs in waves and its blade in creases. */
const crinkled: Leaf = (from, degrees, length) => {
  const at = (up: number, across: number): Point => along(from, degrees, up * length, across * length);
  const side = (sign: number): Point[] => [
    at(0.16, sign * 0.17),
    at(0.3, sign * 0.19),
    at(0.42, sign * 0.27),
    at(0.56, sign * 0.21),
    at(0.7, sign * 0.23),
    at(0.86, sign * 0.08),
  ];
  return [
    shape('leaf', smooth([from, ...side(1), at(1, 0), ...side(-1).reverse()], true)),
    line(...[0.24, 0.42, 0.6, 0.78].map((up) => polyline([at(up, -0.12), at(up + 0.08, 0), at(up, 0.12)]))),
  ];
};

/** A spoon seen from the side: its rim above, its back below, the tip drawn in. `deep`: 0 nearly flat, 1 a cup. */
const cupped =
  (deep: number): Leaf =>
  (from, degrees, length) => {
    const sign = degrees < 0 ? -1 : 1;
    const at = (up: number, across: number): Point =>
      along(from, degrees, up * length, sign * across * length);
    const tip = at(0.98 - 0.3 * deep, -0.1 - 0.34 * deep);
    const back = `C${pair(at(0.3, 0.2 + 0.26 * deep))} ${pair(at(1.02, 0.26 + 0.2 * deep))} ${pair(tip)}`;
    const rim = `C${pair(at(0.72, 0.12 + 0.08 * deep))} ${pair(at(0.36, 0.02 + 0.12 * deep))} ${pair(from)}`;
    const hollow = `C${pair(at(0.62, -0.16 - 0.1 * deep))} ${pair(at(0.26, -0.16))} ${pair(from)}`;
    return [shape('leaf', `M${pair(from)}${back}${rim}z`), line(`M${pair(tip)}${hollow}`)];
  };

/** Narrow as a strap, its veins side by side. */
const strap: Leaf = (from, degrees, length) => {
  const sign = degrees < 0 ? -1 : 1;
  const bend = (up: number, across: number): Point =>
    along(from, degrees, up * length, sign * (across + 0.3 * up * up) * length);
  const edge = (side: number): Point[] => [0.25, 0.55, 0.85].map((up) => bend(up, side));
  return [
    shape('leaf', smooth([from, ...edge(0.13), bend(1.05, 0), ...edge(-0.13).reverse()], true)),
    line(smooth([bend(0.2, 0), bend(0.45, 0), bend(0.75, 0)])),
  ];
};

interface SetOfLeaves {
  /** Height on the stem, 0 at the soil, 1 at the tip. */
  readonly at: number;
  readonly leaf: Leaf;
  readonly length: number;
  /** Degrees from up. */
  readonly stand: number;
  /** Length of the stalk that bears each leaf. */
  readonly stalk?: number;
}

interface Seedling {
  readonly stem: readonly Point[];
  readonly sets: readonly SetOfLeaves[];
}

/** A place on the stem, by the length along it. */
function onStem(stem: readonly Point[], share: number): Point {
  const lengths = stem.slice(1).map(([x, y], at) => Math.hypot(x - stem[at]![0], y - stem[at]![1]));
  let left = share * lengths.reduce((sum, one) => sum + one, 0);
  for (const [at, length] of lengths.entries()) {
    if (left <= length || at === lengths.length - 1) {
      const [a, b] = [stem[at]!, stem[at + 1]!];
      const part = Math.min(1, left / length);
      return [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part];
    }
    left -= length;
  }
  return stem[0]!;
}

function seedling({ stem, sets }: Seedling): Parts {
  const leaves = sets.map(({ at, leaf, length, stand, stalk = 0 }) => {
    const from = onStem(stem, at);
    return [-1, 1].map((side): Parts => {
      const end = plus(from, turned(side * stand, stalk));
      return [stalk > 0 ? line(polyline([from, end])) : [], leaf(end, side * stand, length)];
    });
  });
  return [line(smooth(stem)), leaves];
}

const upright = (height: number, x = 44): Point[] => [
  [x, GROUND],
  [x, GROUND - height / 2],
  [x, GROUND - height],
];

const first = (leaf: Leaf): SetOfLeaves => ({ at: 0.4, leaf, length: 26, stand: 78, stalk: 4 });
const second = (leaf: Leaf, length = 24): SetOfLeaves => ({ at: 0.72, leaf, length, stand: 62, stalk: 4 });
const newest = (leaf: Leaf, length = 23, stand = 48): SetOfLeaves => ({ at: 1, leaf, length, stand });

/** The growing tip, standing still: a closed bud. */
const bud = (at: Point, r = 2.6): Parts => shape('leaf', circle(at[0], at[1] - r, r));

const wilted = (x: number, side: number, height: number): Parts => {
  const stem: Point[] = [
    [x, GROUND],
    [x + side * 2, GROUND - height * 0.7],
    [x + side * 9, GROUND - height],
    [x + side * 16, GROUND - height * 0.55],
  ];
  return [line(smooth(stem)), limp(stem.at(-1)!, side * 165, 14), limp(stem[2]!, side * 120, 13)];
};

/** Flat on the soil. */
const fallen = (x: number, side: number): Parts => {
  const end: Point = [x + side * 17, GROUND - 5];
  return [line(smooth([[x, GROUND], [x + side * 6, GROUND - 7], end])), limp(end, side * 97, 15)];
};

const leafGone = (b: Blade): Parts => missing(b.edge);

export const INJURY_DRAWINGS = {
  'injury-0': () => [
    soil,
    beside,
    seedling({ stem: upright(58), sets: [first(flat), second(flat), newest(flat)] }),
  ],
  'injury-10': () => [
    soil,
    beside,
    seedling({ stem: upright(58), sets: [first(flat), second(flat), newest(crinkled, 28)] }),
  ],
  'injury-20': () => [
    soil,
    beside,
    seedling({ stem: upright(58), sets: [first(flat), second(flat), newest(cupped(0.5), 22, 28)] }),
  ],
  'injury-30': () => [
    soil,
    beside,
    seedling({ stem: upright(62), sets: [first(flat), second(cupped(0.7)), newest(cupped(0.7), 16, 34)] }),
  ],
  'injury-40': () => [
    soil,
    beside,
    seedling({ stem: upright(60), sets: [first(cupped(0.5)), second(strap, 27), newest(cupped(1), 11, 34)] }),
  ],
  'injury-50': () => [
    soil,
    beside,
    seedling({
      stem: upright(44),
      sets: [
        { at: 0.5, leaf: cupped(0.8), length: 25, stand: 76, stalk: 4 },
        { at: 0.86, leaf: cupped(1), length: 19, stand: 56, stalk: 3 },
      ],
    }),
    bud([44, GROUND - 44]),
  ],
  'injury-60': () => {
    const stem: Point[] = [
      [40, GROUND],
      [34, 76],
      [44, 67],
      [54, 60],
      [44, 51],
      [47, 44],
    ];
    return [
      soil,
      beside,
      line(smooth(stem)),
      cupped(1)([36, 72], -80, 22),
      cupped(1)([54, 60], 76, 22),
      cupped(1)([44, 51], -62, 19),
      bud(stem.at(-1)!),
    ];
  },
  'injury-70': () => {
    // It bends over and round, so that the tip looks down.
    const stem: Point[] = [
      [38, GROUND],
      [36, 74],
      [43, 60],
      [56, 57],
      [65, 65],
      [58, 73],
    ];
    return [
      soil,
      beside,
      line(smooth(stem)),
      line(smooth([stem[1]!, [28, 69], [26, 75], [19, 68]])),
      cupped(1)([19, 68], -34, 17),
      line(smooth([stem[2]!, [38, 54], [45, 47]])),
      cupped(1)([45, 47], 30, 17),
      shape('leaf', circle(57, 75, 4.2)),
    ];
  },
  'injury-80': () => [
    soil,
    beside,
    // Thick, and split from the top.
    shape('leaf', `M40 ${GROUND}L39 58Q39 54 41 56L43.5 68L46 56Q48 54 48 58L47 ${GROUND}z`),
    strap([39, 68], -62, 22),
    strap([48, 74], 70, 18),
    line(cross(43.5, 47, 4.5)),
  ],
  'injury-90': () => [
    soil,
    beside,
    wilted(20, 1, 26),
    fallen(76, -1),
    seedling({ stem: upright(20, 51), sets: [{ at: 1, leaf: cupped(1), length: 11, stand: 60 }] }),
  ],
  'injury-100': () => [
    soil,
    beside,
    fallen(14, 1),
    fallen(52, -1),
    fallen(58, 1),
    leafGone(blade([44, 70], -30, 20, 0.5)),
    leafGone(blade([44, 70], 30, 20, 0.5)),
    missing(`M44 ${GROUND - 6}V70`),
  ],
} as const satisfies Record<string, () => Parts>;
