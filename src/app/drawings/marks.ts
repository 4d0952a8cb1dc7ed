/** Drawings of what a leaf can show: every mark, and the broader words for when a person cannot say it exactly. */
import type { BroaderMarkId, MarkId } from '../../signs/vocabulary.ts';
import {
  bareLeaf,
  inner,
  insideOf,
  leaf,
  leafWithHoles,
  nearVein,
  OUTLINE,
  OUTLINE_POINTS,
  onLeaf,
  place,
  raggedHole,
  roundHole,
  STALK,
  terms,
  VEIN_PATHS,
  VEIN_STARTS,
  veins,
} from './leaf.ts';
import { blade, sound } from './plant.ts';
import {
  along,
  any,
  band,
  blackened,
  both,
  circle,
  clipped,
  crosses,
  dots,
  hatch,
  line,
  lump,
  missing,
  not,
  oval,
  type Parts,
  type Point,
  pair,
  polygon,
  polyline,
  scatter,
  shape,
  smooth,
  specks,
  stepped,
  type Tint,
  wash,
  within,
} from './strokes.ts';

/** Places of spots that look strewn and never touch the outline. */
const SPOTS: readonly (readonly [u: number, t: number, r: number])[] = [
  [-0.5, 0.34, 5],
  [0.42, 0.26, 4],
  [0.52, 0.5, 5.5],
  [-0.42, 0.58, 4.5],
  [0.25, 0.72, 4],
  [-0.15, 0.16, 3.6],
  [-0.2, 0.8, 3.4],
];
const eachSpot = (draw: (x: number, y: number, r: number) => Parts, from = 0, to = 7): Parts =>
  SPOTS.slice(from, to).map(([u, t, r]) => draw(...place(u, t), r));

const steps = (n: number, at: (s: number) => Point): Point[] =>
  Array.from({ length: n }, (_, i) => at(i / (n - 1)));
/** Corners that stray over the leaf's edge are drawn back onto it. */
const bounded = (corners: readonly Point[]): Point[] =>
  corners.map(([x, y]) => {
    const { u, t } = terms(x, y);
    return place(Math.max(-1, Math.min(1, u)), Math.max(0.02, Math.min(0.98, t)));
  });
/** The leaf's outline with its edge going in and out. */
const crinkled = (low: number, high: number): Point[] => {
  const side = (sign: number): Point[] =>
    steps(11, (s) => place(sign * (s === 0 ? 0.45 : Math.round(s * 10) % 2 ? low : high), 0.05 + 0.85 * s));
  return [place(0, 0), ...side(-1), place(0, 1), ...side(1).reverse()];
};
/** One wash over several overlapping patches, nowhere painted twice. */
const washUnion = (tint: Tint, patches: readonly (readonly Point[])[]): Parts => ({
  look: `wash union tint-${tint}`,
  d: patches.map((patch) => polygon(patch)).join(''),
});
const clippedPatch = (corners: readonly Point[], tint: Tint): Parts => {
  const inside = onLeaf(() => true, 0);
  return [wash(tint, polygon(corners)), line(clipped(steppedRound(corners), inside))];
};
const steppedRound = (corners: readonly Point[]): Point[] =>
  corners.flatMap((corner, i) => stepped(corner, corners[(i + 1) % corners.length] ?? corner));

/** A patch that follows the leaf's edge on one side: between two heights, from `depth` of the half width outwards. */
function edgePatch(side: number, from: number, to: number, depth: number): Point[] {
  const steps = Array.from({ length: 9 }, (_, i) => i / 8);
  const outer = steps.map((s) => place(side, from + (to - from) * s));
  const back = steps.map((s) =>
    place(side * (1 - (1 - depth) * Math.sin(Math.PI * s) ** 0.6), from + (to - from) * s),
  );
  return [...outer, ...back.reverse().slice(1, -1)];
}

/** A leaf from the side, arched, its underside open to view from y 46 down. */
const ARCH_TOP: readonly Point[] = [
  [8, 58],
  [22, 40],
  [46, 31],
  [72, 36],
  [90, 54],
];
const ARCH_UNDER: readonly Point[] = [
  [90, 54],
  [70, 49],
  [48, 47],
  [26, 50],
  [8, 58],
];
const archedLeaf: Parts = [
  shape('leaf', `${smooth(ARCH_TOP)}${smooth(ARCH_UNDER).replace('M', 'L')}`),
  line('M8 58q-4 8-4 16', 'M26 49q2-9 8-14M46 47q2-8 6-15M66 48q1-6 5-12'),
];

/** Little cells between the veins, every second one light: a mosaic. */
function mosaic(): Parts {
  const cells: Point[][] = [];
  const rows = [0.06, 0.2, 0.33, 0.46, 0.58, 0.7, 0.82, 0.95];
  const columns = [-1, -0.55, 0, 0.5, 1];
  rows.slice(0, -1).forEach((low, row) => {
    const high = rows[row + 1] ?? 1;
    columns.slice(0, -1).forEach((left, column) => {
      if ((row + column) % 2) return;
      const right = columns[column + 1] ?? 1;
      const rise = (u: number): number => 0.12 * Math.abs(u);
      const corner = (u: number, t: number): Point => place(u * 0.97, Math.min(0.97, t + rise(u)));
      cells.push([corner(left, low), corner(right, low), corner(right, high), corner(left, high)]);
    });
  });
  const light = any(...cells.map(insideOf));
  return [
    shape('leaf', OUTLINE),
    line(STALK),
    wash('yellow', ...cells.map(polygon)),
    line(...cells.map(polygon)),
    dots(scatter(both(light, onLeaf(undefined, 0.12)), 6)),
  ];
}

/** A winding tunnel that widens from start to end: its two walls. */
function trail(at: readonly Point[], narrow: number, wide: number): Parts {
  const wall = (sign: number): Point[] =>
    at.map((point, i) => {
      const [ax, ay] = at[Math.max(0, i - 1)] ?? point;
      const [bx, by] = at[Math.min(at.length - 1, i + 1)] ?? point;
      const length = Math.hypot(bx - ax, by - ay) || 1;
      const half = narrow + ((wide - narrow) * i) / at.length;
      return [point[0] - (sign * half * (by - ay)) / length, point[1] + (sign * half * (bx - ax)) / length];
    });
  return shape('pale', smooth([...wall(1), ...wall(-1).reverse()], true));
}

/** A narrow ribbon of a leaf turned over upon itself. */
function ribbon(from: Point, degrees: number, length: number, twists = 2): Parts {
  const half = 4.2;
  const edge = (phase: number): Point[] =>
    Array.from({ length: 25 }, (_, i) => {
      const s = i / 24;
      const swing =
        Math.cos(s * Math.PI * twists + phase) *
        half *
        Math.sin(Math.PI * Math.min(1, s * 0.92 + 0.1)) ** 0.6;
      const bend = 9 * Math.sin(s * 2.4) * Math.sign(degrees || 1);
      return along(from, degrees, s * length, swing - bend);
    });
  const [a, b] = [edge(0), edge(Math.PI)];
  return [wash('leaf', polygon([...a, ...b.reverse()])), line(polyline(a), polyline(b))];
}

interface Bite {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}
/** The leaf's outline where round pieces are bitten from its edge: inside a bite it follows the bite's arc. */
function bittenOutline(bites: readonly Bite[]): Point[] {
  const whole = onLeaf(undefined, 0);
  const rim = steppedRound(OUTLINE_POINTS);
  const biteAt = ([x, y]: Point): Bite | undefined =>
    bites.find((bite) => within(bite.x, bite.y, bite.r)(x, y));
  const angle = (bite: Bite, [x, y]: Point): number => (Math.atan2(x - bite.x, bite.y - y) * 180) / Math.PI;
  const arc = (bite: Bite, from: Point, to: Point): Point[] => {
    const start = angle(bite, from);
    const clockwise = (angle(bite, to) - start + 720) % 360;
    const middle = along([bite.x, bite.y], start + clockwise / 2, bite.r * 0.9);
    const swing = whole(...middle) ? clockwise : clockwise - 360;
    return Array.from({ length: 11 }, (_, i) => along([bite.x, bite.y], start + (swing * i) / 10, bite.r));
  };
  const path: Point[] = [];
  let entered: { readonly bite: Bite; readonly from: Point } | undefined;
  for (const point of rim) {
    const bite = biteAt(point);
    if (bite) entered ??= { bite, from: point };
    else {
      if (entered) path.push(...arc(entered.bite, entered.from, point));
      entered = undefined;
      path.push(point);
    }
  }
  return path;
}
function bittenEdge(): Parts {
  const bites = (
    [
      [1, 0.36, 10],
      [1, 0.6, 9],
      [-1, 0.5, 12],
      [-1, 0.2, 7],
      [0.9, 0.84, 8],
    ] as const
  ).map(([u, t, r]) => {
    const [x, y] = place(u, t);
    return { x, y, r };
  });
  const clear = any(...bites.map(({ x, y, r }) => within(x, y, r + 2)));
  return [shape('leaf', polygon(bittenOutline(bites))), line(STALK), veins(not(clear))];
}

const speckle = (region: (x: number, y: number) => boolean, gap: number): Parts => dots(scatter(region, gap));

const RAGGED: readonly (readonly Point[])[] = [
  [
    place(-0.62, 0.32),
    place(-0.3, 0.28),
    place(-0.2, 0.4),
    place(-0.34, 0.46),
    place(-0.3, 0.56),
    place(-0.56, 0.54),
    place(-0.74, 0.44),
  ],
  [
    place(0.2, 0.5),
    place(0.44, 0.46),
    place(0.66, 0.54),
    place(0.5, 0.6),
    place(0.6, 0.7),
    place(0.34, 0.72),
    place(0.28, 0.62),
  ],
  [place(0.24, 0.22), place(0.46, 0.16), place(0.62, 0.24), place(0.5, 0.3), place(0.32, 0.34)],
];

const mark: Record<MarkId, () => Parts> = {
  'yellow-even': () => [bareLeaf('yellow'), veins(onLeaf((u) => Math.abs(u) < 0.02)), speckle(onLeaf(), 6.6)],
  'yellow-between-veins': () => [
    bareLeaf('yellow'),
    band('ground', VEIN_PATHS),
    band('leaf', VEIN_PATHS),
    line(VEIN_PATHS, OUTLINE),
    speckle(both(onLeaf(), not(nearVein(4.2))), 5.2),
  ],
  'yellow-edges': () => [
    bareLeaf('yellow'),
    wash('ground', inner(0.6, 0.02, 0.74)),
    wash('leaf', inner(0.6, 0.02, 0.74)),
    veins(onLeaf((u, t) => Math.abs(u) < 0.58 && t < 0.72)),
    speckle(
      onLeaf((u, t) => Math.abs(u) > 0.68 || t > 0.79),
      5.4,
    ),
  ],
  'yellow-along-veins': () => [
    bareLeaf(),
    band('ground', VEIN_PATHS),
    band('yellow', VEIN_PATHS),
    line(OUTLINE),
    dots(scatter(both(onLeaf(), nearVein(1.9)), 3.4)),
  ],
  'purple-tint': () => {
    const flush = bounded([
      ...steps(13, (s) => place(-1, 0.36 + 0.64 * s)),
      ...steps(13, (s) => place(1, 1 - 0.64 * s)),
      ...steps(7, (s) => place(0.8 - 1.6 * s, s > 0.2 && s < 0.8 ? 0.46 + 0.05 * Math.sin(s * 40) : 0.38)),
    ]);
    return [
      leaf(),
      wash('purple', polygon(flush)),
      hatch(both(insideOf(flush), onLeaf(undefined, 0.06)), 8.5),
    ];
  },
  'brown-edges': () => [
    shape('dead', OUTLINE),
    line(STALK),
    wash('ground', inner(0.66, 0.03, 0.78)),
    shape('leaf', inner(0.66, 0.03, 0.78)),
    veins(onLeaf((_, t) => t < 0.74, 0.4)),
    crosses(
      scatter(
        onLeaf((u, t) => Math.abs(u) > 0.76 || t > 0.85, 0.1),
        6.2,
      ),
      1.7,
    ),
  ],
  'brown-spots': () => [
    leaf(),
    eachSpot((x, y, r) => [shape('dead', circle(x, y, r)), crosses([[x, y]], r * 0.4)]),
  ],
  'haloed-spots': () => [
    bareLeaf(),
    eachSpot(
      (x, y) => [
        wash('yellow', circle(x, y, 10.5)),
        shape('dead', circle(x, y, 4.5)),
        crosses([[x, y]], 1.8),
        dots(Array.from({ length: 9 }, (_, i) => along([x, y], i * 40, 8.4))),
      ],
      0,
      4,
    ),
    veins(onLeaf((u) => Math.abs(u) < 0.02)),
  ],
  'ringed-spots': () => [
    bareLeaf(),
    veins(onLeaf((u) => Math.abs(u) < 0.02)),
    eachSpot(
      (x, y, r) => [shape('dead', circle(x, y, r + 5)), line(circle(x, y, r + 1), circle(x, y, 1.6))],
      0,
      4,
    ),
  ],
  'spreading-blotches': () => {
    const blots = [lump(31, 42, 18, 5, 0.5), lump(57, 27, 14, 8, 0.5), lump(47, 60, 13, 3, 0.5)].map(bounded);
    const outside = (i: number) => not(any(...blots.filter((_, j) => j !== i).map(insideOf)));
    const dark = any(...blots.map(insideOf));
    return [
      leaf(),
      washUnion('dead', blots),
      line(...blots.map((blot, i) => clipped(steppedRound(blot), outside(i)))),
      hatch(dark, 6.4),
    ];
  },
  'bleached-patches': () => [
    leaf(),
    [lump(33, 40, 11, 4), lump(62, 54, 10, 9), lump(54, 24, 7.5, 2)].map((corners) => [
      wash('ground', polygon(corners)),
      shape('pale', polygon(corners)),
    ]),
    crosses(
      [
        [30, 42],
        [37, 37],
        [60, 57],
        [65, 51],
        [54, 24],
      ],
      1.8,
    ),
  ],
  mottled: mosaic,
  stippled: () => [leaf(), specks(scatter(onLeaf(), 4.1))],
  'silver-flecks': () => {
    const flecks: readonly (readonly [number, number, number, number])[] = [
      [30, 44, 8, 62],
      [34, 58, 7, 50],
      [64, 50, 8, -58],
      [62, 34, 7, -50],
      [42, 26, 6, 20],
      [59, 66, 6, -40],
    ];
    return [
      bareLeaf(),
      veins(onLeaf((u) => Math.abs(u) < 0.02)),
      flecks.map(([x, y, half, degrees]) => [
        wash('ground', oval(x, y, half, 2.8, degrees - 90)),
        shape('pale', oval(x, y, half, 2.8, degrees - 90)),
      ]),
      dots(
        flecks.flatMap(([x, y, half, degrees]) => [
          along([x, y], degrees + 70, 6.4),
          along([x, y], degrees + 245, 6.6),
          along([x, y], degrees, half + 4),
        ]),
      ),
    ];
  },
  'silver-pattern': () => [
    leaf(),
    VEIN_STARTS.flatMap((from) =>
      [-1, 1].map((side) => {
        const patch = smooth(
          [
            place(side * 0.1, from + 0.09),
            place(side * 0.34, from + 0.1),
            place(side * 0.66, from + 0.2),
            place(side * 0.38, from + 0.17),
          ],
          true,
        );
        return [wash('ground', patch), shape('pale', patch)];
      }),
    ),
  ],
  'white-powder': () => {
    const clouds = [lump(32, 44, 13, 12, 0.25), lump(60, 34, 11, 3, 0.25), lump(55, 61, 10, 6, 0.25)].map(
      bounded,
    );
    const near = any(within(32, 44, 17), within(60, 34, 14), within(55, 61, 13));
    return [
      leaf(),
      clouds.map((cloud) => [wash('ground', smooth(cloud, true)), wash('pale', smooth(cloud, true))]),
      line(...scatter(both(near, onLeaf(undefined, 0.1)), 6.6, 3).map(([x, y]) => circle(x, y, 1.6))),
    ];
  },
  'grey-mould-under': () => [
    archedLeaf,
    wash('yellow', oval(36, 40, 7, 3.6, -20), oval(62, 39, 7, 3.6, 12)),
    dots([
      [32, 42],
      [37, 39],
      [41, 38],
      [58, 37.5],
      [63, 39],
      [67, 41],
    ]),
    line(
      ...Array.from({ length: 24 }, (_, i) => {
        const x = 18 + i * 2.7;
        const y = 47.5 + Math.abs(x - 48) * 0.1;
        return `M${x} ${y + 1}q${i % 2 ? 3 : -3} ${5 + (i % 3) * 2} ${i % 2 ? -1 : 1} ${11 + (i % 4) * 3}`;
      }),
    ),
  ],
  'rust-pustules': () => [
    leaf(),
    scatter(
      onLeaf((u, t) => Math.abs(u) > 0.1 && t < 0.86, 0.22),
      11.5,
      4,
    ).map(([x, y], i) => [shape('rust', oval(x, y, 3.4, 2.4, i * 50))]),
    specks(scatter((x, y) => y > 78 && y < 94 && x > 50 && x < 78, 5)),
  ],
  'pale-trails': () => [
    bareLeaf(),
    veins(onLeaf((u) => Math.abs(u) < 0.02)),
    trail(
      [
        [30, 58],
        [24, 50],
        [28, 42],
        [37, 45],
        [40, 55],
        [49, 60],
        [56, 53],
        [52, 44],
        [42, 38],
        [41, 29],
        [51, 25],
        [60, 31],
        [66, 41],
        [72, 43],
      ],
      1.2,
      3.6,
    ),
  ],
  'blisters-under': () => [
    archedLeaf,
    (
      [
        [24, 4.5],
        [37, 6.5],
        [51, 4],
        [63, 6],
        [77, 4],
      ] as const
    ).map(([x, r]) => {
      const y = 47.5 + Math.abs(x - 48) * 0.1;
      return [
        shape('pale', `M${x - r} ${y}c${-r * 0.5} ${r * 2.2} ${r * 2.5} ${r * 2.2} ${2 * r} 0`),
        line(`M${x + r * 0.1} ${y + r}q${r * 0.5} 0 ${r * 0.6} ${-r * 0.5}`),
      ];
    }),
  ],
  'cupped-up': () => [
    shape('leaf', 'M13 40C20 82 66 90 87 26C72 46 38 54 13 40z'),
    shape('leaf', 'M13 40C30 20 64 14 87 26C72 46 38 54 13 40z'),
    line(
      'M13 40L4 34',
      'M13 40Q44 26 87 26',
      'M34 33Q32 27 34 24M50 29Q48 23 52 19M66 27Q66 23 70 20',
      'M26 46Q28 60 36 70M46 48Q50 62 56 68M66 42Q70 50 74 52',
    ),
  ],
  'cupped-down': () => [
    shape(
      'leaf',
      'M10 44C24 12 62 8 78 40C84 54 82 72 70 82C70 66 64 58 52 56C38 52 24 60 18 74C10 66 8 56 10 44z',
    ),
    line(
      'M10 44L3 36',
      'M10 44C34 22 62 34 70 82',
      'M26 33Q20 46 18 62M40 32Q36 42 34 54M54 40Q52 48 52 56M34 30Q42 20 44 18M50 36Q60 26 64 24M62 50Q72 42 78 42',
    ),
    line('M18 74q6-4 12-2'),
  ],
  'twisted-narrow': () => [
    line('M48 92Q46 74 48 58'),
    ribbon([48, 62], -8, 52, 3),
    ribbon([48, 66], -62, 42, 3),
    ribbon([48, 64], 52, 44, 3),
    ribbon([47, 78], -96, 32, 2),
    ribbon([48, 76], 92, 34, 2),
  ],
  puckered: () => {
    const bulge = (u: number, t: number, r: number): string => {
      const at = place(u, t);
      const lean = u * 50;
      const p = (up: number, across: number): string => pair(along(at, lean, up * r, across * r));
      return `M${p(-0.3, -1)}C${p(1.2, -1.2)} ${p(1.2, 1.2)} ${p(-0.3, 1)}M${p(0.1, 0)}L${p(0.1, 0.45)}`;
    };
    const bulges = (
      [
        [-0.4, 0.2, 5],
        [0.36, 0.17, 4.6],
        [-0.7, 0.37, 5],
        [-0.26, 0.36, 5.4],
        [0.3, 0.35, 5],
        [0.7, 0.36, 5.2],
        [-0.55, 0.54, 5.2],
        [-0.2, 0.54, 4.4],
        [0.26, 0.53, 5],
        [0.64, 0.55, 5],
        [-0.4, 0.72, 5],
        [0.3, 0.71, 5],
        [0, 0.87, 3.6],
      ] as const
    ).map(([u, t, r]) => bulge(u, t, r));
    return [
      shape('leaf', smooth(crinkled(0.92, 1.08), true)),
      line(STALK),
      veins(onLeaf((u, t) => Math.abs(u) < 0.02 && t < 0.82)),
      line(...bulges),
    ];
  },
  'small-leaves': () => [
    missing(`${OUTLINE}${STALK}`),
    sound(blade([46, 80], 3, 27, 0.5)),
    line('M46 80L43 91'),
  ],
  'dull-limp': () => [
    line('M10 92C10 54 14 16 34 10C46 7 56 10 60 20', 'M12 56Q20 40 27 46'),
    shape(
      'leaf',
      'M60 20C46 26 40 40 43 52C38 62 46 72 50 88C58 82 64 86 68 80C80 72 76 62 80 52C82 38 74 26 60 20z',
    ),
    shape('leaf', 'M27 46C20 50 17 58 19 66C19 74 24 78 25 86C32 82 37 76 36 68C38 58 34 50 27 46z'),
    line(
      'M60 20C62 40 64 56 56 78M27 46Q29 60 27 74',
      'M62 38Q52 44 51 52M63 52Q72 56 72 64M61 62Q53 66 54 72M62 36Q72 40 73 48',
    ),
  ],
  'shot-holes': () =>
    leafWithHoles(
      [
        [-0.55, 0.3],
        [-0.28, 0.2],
        [0.3, 0.16],
        [0.6, 0.32],
        [0.28, 0.36],
        [-0.62, 0.5],
        [-0.3, 0.46],
        [0.62, 0.54],
        [0.3, 0.6],
        [-0.34, 0.68],
        [0.28, 0.8],
        [-0.2, 0.86],
        [-0.72, 0.4],
        [0.1, 0.48],
      ].map(([u, t], i) => roundHole(...place(u ?? 0, t ?? 0), 2.6 + (i % 3) * 0.5)),
    ),
  'ragged-holes': () => leafWithHoles(RAGGED.map(raggedHole)),
  'edge-bites': bittenEdge,
  'veins-left': () => [
    missing(OUTLINE),
    line(STALK, VEIN_PATHS),
    shape(
      'leaf',
      smooth([place(0.04, 0.06), place(-0.3, 0.12), place(-0.18, 0.18), place(-0.04, 0.24)], true),
      smooth([place(0.06, 0.66), place(0.36, 0.74), place(0.1, 0.84), place(-0.16, 0.8)], true),
      smooth([place(0.5, 0.5), place(0.78, 0.6), place(0.5, 0.66)], true),
    ),
  ],
  'surface-grazed': () => {
    const windows = [lump(33, 44, 13, 21, 0.4), lump(62, 34, 10, 17, 0.4), lump(57, 62, 9, 5, 0.4)];
    const bare = any(...windows.map(insideOf));
    return [
      bareLeaf(),
      veins(not(any(within(33, 44, 15), within(62, 34, 12), within(57, 62, 11)))),
      windows.map((corners) => [wash('ground', polygon(corners)), missing(polygon(corners))]),
      hatch(
        both(bare, (x, y) => any(within(33, 44, 10), within(62, 34, 7.5), within(57, 62, 6.5))(x, y)),
        4.4,
        0.4,
      ),
    ];
  },
  'yellow-patches': () => {
    const patches = [lump(33, 40, 14, 31), lump(62, 56, 12, 6), lump(58, 26, 9, 11)].map(bounded);
    return [
      leaf(),
      patches.map((corners) => [
        wash('ground', smooth(corners, true)),
        wash('yellow', smooth(corners, true)),
      ]),
      speckle(both(any(...patches.map(insideOf)), onLeaf(undefined, 0.08)), 5),
    ];
  },
  'brown-patches': () => {
    const corners = edgePatch(1, 0.2, 0.86, -0.1);
    return [
      leaf(),
      clippedPatch(corners, 'dead'),
      line(polygon(corners)),
      crosses(scatter(both(insideOf(corners), onLeaf(undefined, 0.14)), 8.5), 2.1),
    ];
  },
  blackened: () => {
    const front = Array.from({ length: 13 }, (_, i) => place(-1 + i / 6, 0.6 + (i % 2 ? 0.06 : -0.03)));
    const tip = Array.from({ length: 9 }, (_, i) => place(1, 0.6 + i * 0.05));
    const back = Array.from({ length: 9 }, (_, i) => place(-1, 1 - i * 0.05));
    const rag = edgePatch(-1, 0.12, 0.44, 0.55);
    const top = [...front, ...tip, ...back];
    return [leaf(), blackened(any(insideOf(top), insideOf(rag)), polygon(top), polygon(rag))];
  },
  'leaf-dead': () => {
    const shrunk = crinkled(0.6, 0.92).map(([x, y]): Point => [x - 4, 97 - y]);
    return [
      line('M4 6C20 2 40 4 43 17'),
      shape('dead', smooth(shrunk, true)),
      line(
        'M43 17C52 40 40 56 47 80',
        'M46 34Q38 36 31 46M46 40Q56 40 62 50M44 54Q36 58 34 66M44 62Q52 62 54 70',
      ),
      crosses(
        [
          [34, 30],
          [55, 31],
          [26, 54],
          [54, 54],
          [43, 68],
          [66, 46],
        ],
        2.4,
      ),
    ];
  },
  thickened: () => [
    shape('leaf', 'M10 52C22 24 56 12 88 22C82 46 50 62 10 52z'),
    shape('leaf', 'M10 52C50 62 82 46 88 22V42C82 66 48 84 10 70z'),
    line(
      'M10 52Q48 44 72 29',
      'M34 46Q36 36 34 29M52 40Q54 30 52 23',
      'M10 61L2 70',
      'M20 57v14M30 58v15M40 58v16M74 44v14M82 36v14',
      'M58 54l-4 7 7 4-5 9',
    ),
  ],
  'whole-colour-golden': () => {
    const petals = [-66, -24, 18, 60].map((degrees) =>
      blade([33, 76], degrees, degrees === 60 ? 38 : degrees === -66 ? 34 : 56, 0.38),
    );
    return [
      petals.map((b) => [
        shape('yellow', b.edge),
        line(b.rib),
        specks([0.3, 0.45, 0.6].flatMap((s) => [b.at(s, 0.22), b.at(s, -0.22)])),
      ]),
      shape('pale', 'M68 30h22v22h-22z'),
      line('M75 52v32l4 6 4-6V52', 'M73 37h12M73 44h8'),
      line('M8 80H70'),
    ];
  },
};

const broader: Record<BroaderMarkId, () => Parts> = {
  yellowing: () => [
    leaf(),
    wash(
      'yellow',
      polygon([
        ...Array.from({ length: 15 }, (_, i) => place(0, i / 14)),
        ...Array.from({ length: 15 }, (_, i) => place(1, 1 - i / 14)),
      ]),
    ),
    speckle(
      onLeaf((u) => u > 0.08),
      6,
    ),
  ],
  curled: () => [
    shape('leaf', 'M44 78C72 78 86 56 79 36C73 20 62 14 50 8C44 30 42 56 44 78z'),
    shape('pale', 'M50 8C36 16 29 30 27 46C26 58 27 68 30 77C31 85 44 85 44 78C42 56 44 30 50 8z'),
    line(
      'M44 78C44 72 35 72 35 77C35 80 40 80 40 77',
      'M38 82L34 92',
      'M45 66Q60 64 74 52M44 50Q60 46 72 34M46 32Q56 28 62 20',
      'M28 42Q34 46 36 54M33 27Q39 31 40 38',
    ),
  ],
  holes: () =>
    leafWithHoles([
      roundHole(...place(-0.5, 0.3), 3),
      roundHole(...place(-0.2, 0.2), 3),
      roundHole(...place(-0.66, 0.44), 3),
      roundHole(...place(0.24, 0.8), 3),
      ...RAGGED.slice(1, 2).map(raggedHole),
      roundHole(...place(-0.4, 0.62), 6.5),
    ]),
  spotted: () => [
    leaf(),
    eachSpot(
      (x, y) => [wash('ground', circle(x, y, 6)), shape('dead', circle(x, y, 6)), crosses([[x, y]], 2)],
      0,
      1,
    ),
    eachSpot(
      (x, y) => [wash('ground', circle(x, y, 7)), shape('dead', circle(x, y, 7)), line(circle(x, y, 3))],
      2,
      3,
    ),
    eachSpot((x, y) => shape('rust', circle(x, y, 3.4)), 1, 2),
    eachSpot((x, y) => shape('rust', circle(x, y, 4)), 3, 4),
    eachSpot((x, y) => shape('rust', circle(x, y, 2.6)), 4, 7),
  ],
  browning: () => {
    const corners = edgePatch(-1, 0.1, 0.6, 0.45);
    const tip = [
      ...Array.from({ length: 7 }, (_, i) => place(1, 0.74 + i * 0.043)),
      ...Array.from({ length: 7 }, (_, i) => place(-1, 1 - i * 0.043)),
      place(-0.3, 0.66),
      place(0.2, 0.74),
    ];
    return [
      leaf(),
      shape('dead', polygon(corners), polygon(tip), circle(...place(0.5, 0.38), 6)),
      crosses(
        [
          ...scatter(both(insideOf(corners), onLeaf(undefined, 0.1)), 8),
          ...scatter(both(insideOf(tip), onLeaf(undefined, 0.15)), 8),
          place(0.5, 0.38),
        ],
        2,
      ),
    ];
  },
  'pale-marks': () => [
    bareLeaf(),
    veins(onLeaf((u) => Math.abs(u) < 0.02)),
    [polygon(lump(32, 52, 10, 4)), oval(60, 30, 8, 3, -50), oval(66, 42, 7, 3, -50)].map((d) => [
      wash('ground', d),
      shape('pale', d),
    ]),
    trail(
      Array.from({ length: 20 }, (_, i): Point => [52 + i * 1, 66 - 3.5 * Math.sin(i / 2) - i * 0.4]),
      1.4,
      2.4,
    ),
    line(...scatter(within(38, 30, 8), 5.4).map(([x, y]) => circle(x, y, 1.5))),
  ],
};

export const MARK_DRAWINGS: Readonly<Record<MarkId | BroaderMarkId, () => Parts>> = { ...mark, ...broader };
