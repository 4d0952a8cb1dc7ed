/** Drawings of the state, heat and age of what was put on, and of the time since. */
import { plant } from '../plant.ts';
import { head, line, over, type Parts, type Point, specks } from '../strokes.ts';
import { chip, heap, steam, thermometer, yearDial } from '../things.ts';
import type { SettingDrawings } from './ids.ts';

const lumps = line('M18 80h6M32 74h5M46 82h6M60 76h6M74 82h4M40 66h5M56 66h5');
/** A heap with a thermometer in it. */
const heapHeat = (level: number, wisps: readonly Point[]): Parts => [
  heap(50),
  lumps,
  thermometer(48, 6, 74, level),
  steam(wisps),
];
/** How old, as a share of the year, over a heap that has sunk since. */
const aged = (share: number, top: number, inside: Parts): Parts => [
  yearDial(48, 22, 18, 0, share),
  heap(top, 8, 88, 90),
  inside,
];
/** Since when, as a share of the year, over a bed in which the chips rot away. */
const mixedIn = (from: number, to: number, chips: Parts): Parts => [
  yearDial(68, 24, 20, from, to),
  plant({ x: 24, ground: 54, height: 34, pairs: 1, size: 0.5 }),
  line('M4 54H92', 'M24 54q-6 10-12 16M24 54v22M24 54q6 10 14 16'),
  chips,
];

export const COMPOST_DRAWINGS = {
  'setting-compost-state-still-warm': () => [
    heap(50),
    lumps,
    steam(
      [
        [36, 46],
        [58, 46],
      ],
      22,
    ),
  ],
  'setting-compost-state-hot': () => [
    heap(50),
    lumps,
    steam(
      [
        [22, 56],
        [34, 46],
        [46, 42],
        [58, 42],
        [70, 48],
        [82, 60],
      ],
      36,
    ),
  ],
  'setting-compost-celsius-below-30': () => heapHeat(64, []),
  'setting-compost-celsius-30-45': () => heapHeat(38, [[26, 50]]),
  'setting-compost-celsius-45+': () =>
    heapHeat(14, [
      [14, 58],
      [28, 46],
      [72, 46],
      [84, 58],
    ]),
  'setting-compost-age-0-2': () =>
    aged(
      1 / 6,
      46,
      line('M20 84L32 70M36 86L42 64M50 56L60 70M58 86L76 80M40 60l8-4M30 78l10 4M62 64l10 10M46 76l8 6'),
    ),
  'setting-compost-age-3-11': () =>
    aged(0.6, 58, line('M22 84h7M36 76h6M54 84h7M60 74h6M46 68h5M74 84h5M40 84h4')),
  'setting-compost-age-12+': () => [
    aged(
      1,
      70,
      specks([
        [24, 86],
        [32, 82],
        [40, 78],
        [40, 86],
        [48, 82],
        [48, 75],
        [56, 78],
        [56, 86],
        [64, 82],
        [72, 86],
      ]),
    ),
    line('M70 8C80 12 84 24 78 34', head(77, 36, 210)),
  ],
  'setting-weeks-since-mixed-in-0-3': () =>
    mixedIn(
      0,
      1 / 13,
      (
        [
          [12, 84, 20],
          [38, 66, -30],
          [34, 84, 40],
          [56, 64, 10],
          [56, 84, -20],
          [74, 68, 50],
          [78, 86, 0],
          [88, 62, -40],
        ] as const
      ).map(([x, y, degrees]) => chip(x, y, degrees)),
    ),
  'setting-weeks-since-mixed-in-4-11': () =>
    mixedIn(
      1 / 13,
      1 / 4,
      (
        [
          [12, 84, 20],
          [38, 84, 40],
          [56, 66, 10],
          [66, 84, -20],
          [80, 66, 50],
        ] as const
      ).map(([x, y, degrees]) => chip(x, y, degrees, 0.9)),
    ),
  'setting-weeks-since-mixed-in-12-25': () =>
    mixedIn(1 / 4, 1 / 2, [
      chip(46, 80, 30, 0.7),
      chip(66, 66, -20, 0.7),
      chip(80, 82, 50, 0.6),
      specks([
        [12, 84],
        [34, 86],
        [56, 68],
        [62, 84],
        [84, 66],
      ]),
    ]),
  'setting-weeks-since-mixed-in-26+': () =>
    mixedIn(
      1 / 2,
      1,
      specks(
        [
          [12, 84],
          [22, 86],
          [34, 84],
          [44, 68],
          [50, 80],
          [58, 66],
          [64, 84],
          [72, 70],
          [80, 82],
          [86, 64],
        ].map(([x = 0, y = 0]): Point => [x, y]),
      ),
    ),
  'setting-compost-ammonia': () => [
    heap(66, 4, 70, 90),
    line('M20 84h6M34 78h5M46 84h6'),
    steam(
      [
        [24, 66],
        [38, 60],
        [52, 62],
      ],
      30,
    ),
    // A nose over it, wrinkled.
    over(
      'M94 3C82 3 76 10 76 20C74 28 62 38 60 44C60 49 66 50 73 50C70 54 69 57 73 59C70 62 71 65 74 67C73 74 80 80 94 78',
      'pale',
    ),
    line('M68 49C66 43 73 40 76 45', 'M73 59h8', 'M82 22l8 3-8 4', 'M80 13q6-3 12 0'),
  ],
} as const satisfies SettingDrawings;
