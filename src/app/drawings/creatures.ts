/** Drawings of living things and the traces that only living things leave. */
import type { CreatureSignId } from '../../signs/vocabulary.ts';
import { bareLeaf, insideOf, leaf, leafWithHoles, onLeaf, place, roundHole, veins } from './leaf.ts';
import { blade, drop, soil, sound } from './plant.ts';
import {
  along,
  any,
  blackened,
  circle,
  dots,
  ink,
  line,
  lump,
  missing,
  oval,
  over,
  type Parts,
  type Point,
  pair,
  polyline,
  shape,
  smooth,
  type Tint,
  wash,
} from './strokes.ts';

/** A pear-shaped body seen from above, six legs, two feelers, two tubes at the tail; `degrees` is where the head points. */
export function greenfly(x: number, y: number, degrees: number, size: number, tint: Tint = 'yellow'): Parts {
  const p = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
  const body = smooth(
    [
      p(1, 0),
      p(0.72, 0.34),
      p(0.2, 0.52),
      p(-0.5, 0.72),
      p(-1, 0.34),
      p(-1, -0.34),
      p(-0.5, -0.72),
      p(0.2, -0.52),
      p(0.72, -0.34),
    ],
    true,
  );
  const both = (from: Point, middle: Point, to: Point): string =>
    [1, -1]
      .map((side) =>
        polyline([p(from[0], side * from[1]), p(middle[0], side * middle[1]), p(to[0], side * to[1])]),
      )
      .join('');
  return [
    line(
      both([0.5, 0.4], [0.8, 0.85], [0.6, 1.15]),
      both([0.1, 0.5], [0.15, 1], [-0.2, 1.3]),
      both([-0.3, 0.66], [-0.5, 1.1], [-1, 1.3]),
      both([0.95, 0.16], [1.3, 0.5], [1.2, 0.9]),
      both([-0.8, 0.4], [-1.1, 0.45], [-1.35, 0.5]),
    ),
    over(body, tint),
  ];
}
/** A round spotted beetle seen from above. */
export function ladybird(x: number, y: number, degrees: number, r: number): Parts {
  const p = (up: number, across: number): Point => along([x, y], degrees, up * r, across * r);
  const legs = [0.5, 0, -0.5].flatMap((up) =>
    [1, -1].map((side) => polyline([p(up, side * 0.85), p(up * 1.25, side * 1.35)])),
  );
  return [
    line(...legs, polyline([p(1.2, 0.2), p(1.6, 0.45)]), polyline([p(1.2, -0.2), p(1.6, -0.45)])),
    ink(oval(...p(0.98, 0), r * 0.5, r * 0.36, degrees)),
    over(circle(x, y, r), 'mark'),
    line(polyline([p(0.95, 0), p(-1, 0)])),
    ink(
      ...(
        [
          [0.4, 0.45],
          [0.4, -0.45],
          [-0.35, 0.5],
          [-0.35, -0.5],
        ] as const
      ).map(([up, across]) => circle(...p(up, across), r * 0.17)),
    ),
  ];
}
/** An insect of three parts with six legs. */
function ant(x: number, y: number, degrees: number, size: number): Parts {
  const p = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
  const legs = (
    [
      [0.25, 0.9, 0.8],
      [0, 0, 1.1],
      [-0.25, -0.9, 1],
    ] as const
  ).flatMap(([from, to, out]) =>
    [1, -1].map((side) =>
      polyline([p(from, side * 0.1), p((from + to) / 2 + 0.1, side * out * 0.75), p(to, side * out)]),
    ),
  );
  return [
    line(
      ...legs,
      polyline([p(1.1, 0.15), p(1.35, 0.5), p(1.7, 0.5)]),
      polyline([p(1.1, -0.15), p(1.35, -0.5), p(1.7, -0.5)]),
    ),
    ink(
      oval(...p(0.9, 0), size * 0.3, size * 0.36, degrees),
      oval(...p(0.2, 0), size * 0.22, size * 0.4, degrees),
      oval(...p(-0.8, 0), size * 0.42, size * 0.62, degrees),
    ),
  ];
}
/** A tiny pale moth-like fly: two pairs of wings held as a roof. */
function paleFly(x: number, y: number, degrees: number, size: number): Parts {
  const p = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
  const wing = (side: number): string =>
    `M${pair(p(0.5, 0))}C${pair(p(0.5, side * 1))} ${pair(p(-0.6, side * 1.5))} ${pair(p(-1, side * 0.7))}C${pair(p(-0.9, side * 0.2))} ${pair(p(-0.2, 0))} ${pair(p(0.5, 0))}z`;
  return [
    shape('pale', wing(1), wing(-1)),
    ink(circle(...p(0.7, 0), size * 0.3)),
    line(polyline([p(0.9, 0.1), p(1.3, 0.4)]), polyline([p(0.9, -0.1), p(1.3, -0.4)])),
  ];
}
/** A soft body of rings along a curve, head first. */
export function ringedGrub(at: readonly Point[], r: number, tint: Tint = 'leaf'): Parts {
  return at
    .map(([x, y], i) => [
      i === 0 ? [wash('ground', circle(x, y, r)), ink(circle(x, y, r))] : over(circle(x, y, r), tint),
    ])
    .reverse();
}
/** A slug from the side, head at the right. */
export const slug = (x: number, y: number): Parts => [
  over(
    `M${x} ${y}C${x + 6} ${y - 16} ${x + 34} ${y - 18} ${x + 42} ${y - 14}C${x + 50} ${y - 14} ${x + 54} ${y - 4} ${x + 48} ${y}z`,
    'dead',
  ),
  line(`M${x + 45} ${y - 13}l2-9M${x + 50} ${y - 10}l6-7`, `M${x + 20} ${y - 14}q9 8 18-1`),
  dots([
    [x + 47, y - 23],
    [x + 57, y - 18],
  ]),
];
/** A pigeon-like bird, pecking to the left. */
export const bird = (): Parts => [
  over(
    'M22 60C18 50 24 42 32 44C40 30 60 22 88 18L82 34C88 40 84 46 76 46C68 62 48 66 36 58C32 64 26 64 22 60z',
    'leaf',
  ),
  line(
    'M22 56L10 64L21 61',
    'M46 40C54 40 66 36 72 30M50 48C58 50 68 44 74 38',
    'M50 62L48 80M60 58L60 80',
    'M48 80l-6 4M48 80l4 4M60 80l-6 4M60 80l4 4',
  ),
  dots([[28, 52]]),
];
const beetle = (x: number, y: number, r: number, stripes: boolean): Parts => [
  line(
    `M${x - r} ${y - 4}l-8-6M${x - r} ${y + 4}l-9 1M${x - r * 0.8} ${y + 12}l-7 7M${x + r} ${y - 4}l8-6M${x + r} ${y + 4}l9 1M${x + r * 0.8} ${y + 12}l7 7`,
    `M${x - 4} ${y - 21}q-3-8-10-9M${x + 4} ${y - 21}q3-8 10-9`,
  ),
  over(oval(x, y + 3, r, r * 1.3), 'yellow'),
  over(oval(x, y - 16, r * 0.62, r * 0.42), 'leaf'),
  line(
    `M${x} ${y - 13}V${y + r * 1.3 + 3}`,
    stripes
      ? `M${x - 6} ${y - 10}V${y + 18}M${x + 6} ${y - 10}V${y + 18}M${x - 11} ${y - 2}V${y + 10}M${x + 11} ${y - 2}V${y + 10}`
      : '',
  ),
];
export const pellets = (at: readonly Point[], r = 4): Parts =>
  at.map(([x, y]) => [wash('ground', circle(x, y, r)), shape('dead', circle(x, y, r))]);
export const paw = (x: number, y: number, size: number): Parts => [
  ink(
    oval(x, y + size * 0.3, size * 0.6, size * 0.48),
    ...(
      [
        [-0.75, -0.3],
        [-0.28, -0.75],
        [0.28, -0.75],
        [0.75, -0.3],
      ] as const
    ).map(([dx, dy]) => oval(x + dx * size, y + dy * size, size * 0.2, size * 0.3)),
  ),
];

export const CREATURE_DRAWINGS: Readonly<Record<CreatureSignId, () => Parts>> = {
  aphids: () => [
    line('M86 92C66 74 60 46 62 4', 'M62 30Q72 26 84 12'),
    sound(blade([84, 12], 40, 14)),
    greenfly(34, 46, 30, 19),
    greenfly(60, 14, -10, 7),
    greenfly(68, 60, 12, 8),
    greenfly(73, 80, -20, 7),
  ],
  'sticky-sooty': () => {
    const film = (
      [
        [32, 42, 13, 3],
        [58, 27, 10, 8],
        [60, 56, 9, 5],
      ] as const
    ).map(([x, y, r, seed]) => lump(x, y, r, seed, 0.5, 11));
    return [
      leaf(),
      blackened(any(...film.map(insideOf)), ...film.map((corners) => smooth(corners, true))),
      [
        [80, 70, 5.5],
        [68, 82, 4.5],
        [20, 76, 5],
      ].map(([x, y, size]) => shape('pale', drop(x ?? 0, y ?? 0, size ?? 0))),
    ];
  },
  'cast-skins': () => [
    leaf(),
    (
      [
        [34, 44, -20, 12],
        [62, 34, 30, 11],
        [55, 62, 100, 9],
      ] as const
    ).map(([x, y, degrees, size]) => {
      const p = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
      const skin = smooth(
        [p(1, 0), p(0.3, 0.5), p(-0.6, 0.66), p(-1.1, 0), p(-0.6, -0.66), p(0.3, -0.5)],
        true,
      );
      return [
        wash('ground', skin),
        shape('pale', skin),
        line(
          polyline([p(0.9, 0), p(0.3, 0.14), p(-0.3, -0.1), p(-0.7, 0)]),
          polyline([p(0.2, 0.5), p(0, 1)]),
          polyline([p(0.2, -0.5), p(0, -1)]),
          polyline([p(-0.4, 0.6), p(-0.8, 1.05)]),
          polyline([p(-0.4, -0.6), p(-0.8, -1.05)]),
        ),
      ];
    }),
  ],
  ants: () => [
    shape('leaf', 'M40 92C42 60 42 30 40 4H54C56 30 56 60 54 92'),
    ant(47, 26, 0, 11),
    ant(47, 68, 0, 11),
    line('M56 46Q68 44 78 36'),
    sound(blade([78, 36], 40, 18)),
  ],
  'aphid-hunters': () => [
    ladybird(32, 34, 30, 20),
    line('M58 66l-7-5M58 74l-8 0M60 82l-7 5M72 58l4-6M80 60l6-4M86 66l7-1'),
    over('M50 86C46 78 54 66 64 60C74 54 86 54 88 60C90 68 82 78 72 84C62 90 54 92 50 86z', 'leaf'),
    line('M58 66L66 88M66 60L76 82M76 56L84 72'),
    dots([
      [84, 60],
      [64, 72],
      [72, 67],
    ]),
  ],
  'fine-webbing': () => [
    line('M48 92V20'),
    sound(blade([48, 70], -58, 44)),
    sound(blade([48, 70], 58, 44)),
    sound(blade([48, 22], -24, 18)),
    sound(blade([48, 22], 24, 18)),
    line(
      'M42 8L12 47M44 16L24 56M54 8L84 47M52 16L72 56M31 22Q40 34 48 30Q56 34 65 22M22 34Q36 52 48 44Q60 52 74 34M16 42Q34 66 48 58Q62 66 80 42',
    ),
    dots([
      [30, 44],
      [62, 46],
      [38, 56],
      [56, 30],
      [70, 34],
    ]),
  ],
  whitefly: () => [
    shape('leaf', 'M6 84C24 62 62 60 90 74C70 92 34 96 6 84z'),
    line('M6 84Q44 76 76 78'),
    paleFly(30, 50, -30, 10),
    paleFly(60, 38, 20, 10),
    paleFly(36, 18, 0, 9),
    paleFly(78, 16, 35, 8),
    missing('M34 66Q33 62 32 60M60 62Q61 56 60 52'),
  ],
  thrips: () => [
    line(
      'M42 30l-12-4M42 44l-13 2M44 58l-11 8M56 30l12-4M56 44l13 2M54 58l11 8',
      'M46 14q-2-8-8-10M52 14q2-8 8-10',
    ),
    over(
      'M44 18C44 10 54 10 54 18C58 30 58 48 56 60C54 74 52 82 49 90C46 82 44 74 42 60C40 48 40 30 44 18z',
      'yellow',
    ),
    line(
      'M42 34H56M42 48H56M43 60H55M45 72H53',
      'M41 32C32 48 30 64 34 80M57 32C66 48 68 64 64 80',
      'M34 56l-6 2M33 64l-6 3M33 72l-6 4M64 56l6 2M65 64l6 3M65 72l6 4',
    ),
    dots([
      [14, 30],
      [20, 44],
      [12, 60],
      [80, 24],
      [86, 44],
      [82, 78],
      [18, 82],
    ]),
  ],
  caterpillars: () => [
    shape('leaf', 'M4 70C22 52 66 50 92 64C72 88 30 92 4 70z'),
    line('M4 70Q46 66 76 70'),
    ringedGrub(
      [
        [76, 46],
        [67, 40],
        [57, 44],
        [48, 50],
        [38, 50],
        [30, 43],
        [21, 41],
      ],
      7.5,
      'yellow',
    ),
    line('M78 40l3-7M80 42l7-4', 'M64 48l-1 5M50 58v4M40 58v4'),
    [
      [36, 76],
      [42, 74],
      [48, 77],
      [39, 81],
      [45, 82],
    ].map(([x, y]) => over(oval(x ?? 0, y ?? 0, 2.2, 3.4), 'pale')),
  ],
  'droppings-pellets': () => [
    bareLeaf(),
    veins(onLeaf((u) => Math.abs(u) < 0.02)),
    (
      [
        [30, 40, 30],
        [38, 47, 100],
        [33, 54, 60],
        [58, 26, 140],
        [62, 56, 20],
        [55, 63, 80],
        [66, 66, 120],
        [44, 30, 10],
      ] as const
    ).map(([x, y, degrees]) => shape('black', oval(x, y, 3, 4.2, degrees))),
    shape('black', oval(70, 86, 3, 4.2, 70), oval(62, 90, 3, 4.2, 20)),
  ],
  'jumping-beetles': () => [
    leafWithHoles(
      [
        [-0.5, 0.4],
        [-0.3, 0.24],
        [0.3, 0.3],
        [-0.34, 0.6],
        [0.5, 0.4],
      ].map(([u, t]) => roundHole(...place(u ?? 0, t ?? 0), 2.6)),
    ),
    missing('M32 40C34 2 66 -4 80 22'),

    over(oval(81, 34, 8, 11, -20), 'black'),
    line('M78 24L84 44'),
    line('M75 41l-9 4 3 9M85 44l-3 9 8 5M76 25l-7-4M85 24l5-8'),
  ],
  'other-beetles': () => [
    beetle(34, 38, 16, true),
    ringedGrub(
      [
        [60, 70],
        [64, 79],
        [73, 83],
        [82, 79],
        [86, 70],
        [83, 61],
      ],
      6.5,
      'pale',
    ),
    line('M66 68l-6-6M70 76l-4-8M76 76l-1-8'),
  ],
  slime: () => [
    bareLeaf(),
    shape(
      'pale',
      'M22 92C30 80 18 70 26 60C34 50 54 56 58 44C60 34 40 34 44 22C46 14 56 12 62 6L68 10C62 18 54 18 52 24C50 32 68 32 66 46C62 62 42 58 34 66C28 72 38 82 32 92z',
    ),
    line('M27 84q3-4 1-8M36 60q6-3 12-4M60 42q0-5-5-7M51 20q4-5 8-7'),
  ],
  'slugs-seen': () => [
    slug(32, 84),
    line('M4 84H92'),
    over(
      'M10 46C14 40 20 44 26 46H50C54 40 54 30 60 28C68 28 70 36 66 42C64 48 58 50 54 50H14C10 50 8 48 10 46z',
      'dead',
    ),
    line('M62 28l0-9M67 31l6-7'),
    dots([
      [62, 18],
      [74, 23],
    ]),
    over(circle(32, 32, 17), 'pale'),
    line('M32 49C22 48 18 38 21 30C24 22 36 20 41 28C44 36 38 41 32 39C28 37 29 32 33 32', 'M4 50H92'),
  ],
  'birds-seen': () => [
    line('M4 84H92', 'M10 84Q9 78 8 74'),
    sound(blade([9, 76], -30, 14)),
    sound(blade([9, 80], 60, 14)),
    bird(),
  ],
  'bird-droppings': () => [
    leaf(),
    over(
      'M34 24C46 18 62 26 60 38C72 40 70 54 60 54C58 58 58 66 55 74C52 68 52 62 50 58C46 62 44 62 42 58C41 66 40 74 37 80C34 72 36 62 35 56C24 56 22 44 32 42C26 36 28 28 34 24z',
      'pale',
    ),
    shape('black', 'M38 36C46 30 56 36 52 42C52 48 48 50 47 60C44 52 42 48 38 46C34 42 34 38 38 36z'),
    shape('pale', circle(70, 24, 3), circle(74, 70, 3), circle(24, 68, 2.4)),
  ],
  'mammal-signs': () => [
    pellets(
      [
        [14, 76],
        [25, 80],
        [19, 69],
        [33, 74],
        [28, 66],
        [38, 82],
      ],
      5,
    ),
    paw(26, 28, 14),
    ink(
      'M58 24C58 14 64 8 67 8C69 14 69 26 66 34C60 34 58 30 58 24z',
      'M80 24C80 14 74 8 71 8C69 14 69 26 72 34C78 34 80 30 80 24z',
    ),
    line('M56 60q8 12 6 28M66 56q8 14 6 32M76 54q8 14 7 32'),
  ],
  'maggots-at-root': () => [
    line('M6 26H30M66 26H90'),
    shape('leaf', 'M30 26C30 50 38 76 48 92C58 76 66 50 66 26z'),
    [-36, -12, 12, 36].map((degrees) => sound(blade([48, 26], degrees, 22, 0.34))),
    (
      [
        [36, 44, 60],
        [58, 50, -50],
        [46, 64, 30],
        [72, 70, 80],
        [22, 62, -40],
      ] as const
    ).map(([x, y, degrees]) => {
      const p = (up: number, across: number): string => pair(along([x, y], degrees, up, across));
      return [
        over(`M${p(-8, 0)}C${p(-7, 5)} ${p(4, 4)} ${p(9, 0)}C${p(4, -4)} ${p(-7, -5)} ${p(-8, 0)}z`, 'pale'),
        line(`M${p(-3, -3)}L${p(-3, 3)}M${p(1, -2.6)}L${p(1, 2.6)}`),
      ];
    }),
  ],
  'grubs-in-soil': () => [
    soil(22),
    line('M48 22V10M48 22q-6 8-12 10M48 22q6 10 14 12'),
    sound(blade([48, 12], -60, 16)),
    sound(blade([48, 12], 60, 16)),
    ringedGrub(
      [
        [34, 58],
        [30, 68],
        [35, 79],
        [46, 84],
        [57, 81],
        [64, 73],
        [65, 62],
      ],
      8.5,
      'pale',
    ),
    line('M42 60l6 2M41 67l7-1M46 72l5-5'),
    line('M10 50h5M78 44h5M82 74h4M12 80h4'),
  ],
};
