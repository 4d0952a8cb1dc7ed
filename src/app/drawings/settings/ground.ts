/** Drawings of the soil, of what lies on and in it, and of what is done around the plant. */
import { drop, earth, finger, plant, rosette, soil } from '../plant.ts';
import {
  blob,
  circle,
  dots,
  line,
  missing,
  over,
  type Parts,
  type Point,
  scatter,
  shape,
  specks,
} from '../strokes.ts';
import { chip } from '../things.ts';
import type { SettingDrawings } from './ids.ts';

/** A finger pushed into the soil, whose surface lies at 46, the hand above it. */
const pushed: Parts = [
  finger([48, 76], 0, 50, 8.5),
  line(
    'M39.5 30C30 28 24 20 24 6M56.5 30C58 33 64 33 66 28C68 32 75 31 76 25C80 22 80 14 80 6',
    'M66 28V18M76 25V16M41 40h6M41 36h5',
  ),
];
const fingerIn = (around: Parts): Parts => [around, pushed];
/** A line from acid to limy with a mark on it, under what tells such ground. */
const reaction = (at: number, ground: Parts): Parts => [
  ground,
  line('M10 86H86M10 82v8M48 82v8M86 82v8'),
  shape('mark', `M${at} 84l-6-10h12z`),
];
const ROOTS = 'C34 56 28 66 20 80M48 44C50 58 56 68 74 80M48 48q-10 6-24 8M48 52q10 4 24 4M48 44v42';

export const GROUND_DRAWINGS = {
  'setting-soil-water-dry': () =>
    fingerIn([
      line(
        'M4 46H39M57 46H92',
        'M12 46l4 10-4 8 6 12M26 46l-3 8 5 8M72 46l-4 10 6 8-3 10M86 46l2 9-5 9 4 12',
        'M16 56l8 3M70 58l-6 3',
      ),
      specks(scatter((x, y) => y > 80 && y < 92 && x > 8 && x < 88, 8)),
    ]),
  'setting-soil-water-moist': () => [
    line('M4 46H39M57 46H92'),
    earth(48, 4, 34),
    earth(50, 62, 92),
    earth(84, 8, 92),
    [
      [14, 66],
      [80, 66],
    ].map(([x = 0, y = 0]) => shape('pale', drop(x, y, 5))),
    pushed,
    [
      [38, 66, 4, 2],
      [55, 72, 4.5, 3],
      [44, 79, 4, 5],
      [60, 62, 3.4, 6],
    ].map(([x = 0, y = 0, r = 0, seed = 0]) => over(blob(x, y, r, seed), 'dead')),
  ],
  'setting-soil-water-waterlogged': () => [
    pushed,
    line(
      'M4 46q6-5 11 0t11 0 11 0M59 46q6-5 11 0t11 0 11 0',
      'M8 58q6-5 11 0t11 0M66 58q6-5 11 0t11 0M4 71q6-5 11 0t11 0M62 71q6-5 11 0t11 0M14 85q6-5 11 0t11 0 11 0 11 0 11 0 11 0',
    ),
    [
      [10, 26],
      [90, 34],
    ].map(([x = 0, y = 0]) => shape('pale', drop(x, y, 5))),
  ],
  'setting-soil-ph-acid': () =>
    reaction(12, [
      line('M4 64H92'),
      // A conifer, at home on sour ground.
      over('M46 64V56H52V64z', 'dead'),
      shape('leaf', 'M49 6L62 22H56L70 40H62L76 56H22L36 40H28L42 22H36z'),
    ]),
  'setting-soil-ph-about-neutral': () =>
    reaction(48, [line('M4 64H92'), plant({ x: 48, ground: 64, height: 48, pairs: 2, size: 0.44 })]),
  'setting-soil-ph-chalky-or-limed': () =>
    reaction(84, [
      line('M4 34H92'),
      plant({ x: 22, ground: 34, height: 22, pairs: 1, size: 0.56 }),
      // White lumps of chalk.
      (
        [
          [18, 52, 9, 2],
          [42, 46, 7, 4],
          [58, 60, 9, 7],
          [80, 50, 9, 3],
          [36, 64, 5, 8],
        ] as const
      ).map(([x, y, r, seed]) => [over(blob(x, y, r, seed, 0.5), 'pale'), line(`M${x - 3} ${y}l4-2`)]),
    ]),
  'setting-soil-kind-sandy': () => [
    // Grains run out of the hand into a cone.
    line('M4 88H92', 'M10 88L48 50L86 88'),
    specks(scatter((x, y) => y < 86 && y > 54 && Math.abs(x - 48) < y - 52, 6)),
    specks([
      [48, 30],
      [46, 35],
      [49, 40],
      [47, 45],
      [51, 34],
    ]),
    over('M22 3C18 14 22 24 32 22C36 27 44 27 48 22C52 27 60 26 63 22C72 23 78 14 74 3', 'pale'),
    line('M32 22V13M48 22V13M63 22V13'),
  ],
  'setting-soil-kind-loam': () => [
    line('M4 34H92'),
    plant({ x: 26, ground: 34, height: 24, pairs: 1, size: 0.56 }),
    (
      [
        [14, 48, 7, 2],
        [32, 50, 9, 3],
        [54, 46, 8, 4],
        [76, 50, 9, 5],
        [20, 68, 9, 6],
        [80, 70, 8, 9],
        [14, 84, 6, 11],
        [84, 86, 5, 12],
      ] as const
    ).map(([x, y, r, seed]) => over(blob(x, y, r, seed), 'dead')),
    // A worm.
    over(
      'M34 84C36 70 48 66 54 74C60 80 66 74 64 66C64 62 70 62 70 66C70 80 60 88 50 80C44 76 40 80 39 86C38 89 34 88 34 84z',
      'rust',
    ),
    line('M43 74l4 5M57 80l2-5'),
  ],
  'setting-soil-kind-clay': () => [
    // A smooth heavy block, and a roll of it that bends without breaking.
    shape('dead', 'M10 20L28 6H88V28L70 44H10z'),
    line('M10 20H70V44M70 20L88 6', 'M20 28h26M26 36h34'),
    over(
      'M16 92V82C16 64 30 54 48 54C66 54 80 64 80 82V92H66V82C66 72 58 68 48 68C38 68 30 72 30 82V92z',
      'dead',
    ),
    line('M24 74l4 2M36 60l2 4M60 60l-2 4M72 74l-4 2'),
  ],
  'setting-soil-kind-potting-mix': () => [
    shape('pale', 'M10 20H86L76 88H20z'),
    line('M4 20H92'),
    shape('dead', 'M12 30Q30 24 48 30T84 30L76 88H20z'),
    (
      [
        [28, 46, 30],
        [60, 44, -40],
        [46, 66, 70],
        [66, 70, 10],
        [32, 80, -20],
      ] as const
    ).map(([x, y, degrees]) => chip(x, y, degrees)),
    [
      [44, 46],
      [72, 56],
      [28, 62],
      [56, 82],
      [58, 58],
      [40, 56],
    ].map(([x = 0, y = 0]) => over(circle(x, y, 3.6), 'pale')),
  ],
  'setting-bed-disturbed': () => [
    line('M4 66H26M84 66H92'),
    (
      [
        [20, 58, 9, 2],
        [34, 50, 8, 3],
        [30, 72, 10, 5],
        [18, 84, 7, 6],
        [40, 88, 5, 9],
        [86, 58, 6, 8],
        [88, 82, 6, 4],
      ] as const
    ).map(([x, y, r, seed]) => over(blob(x, y, r, seed, 0.5), 'dead')),
    // A digging fork.
    line('M52 5H74M63 5V44', 'M47 88V54Q47 46 55 46H71Q79 46 79 54V88M58 46V90M68 46V90'),
  ],
  'setting-wood-in-root-zone': () => [
    plant({ x: 48, ground: 44, height: 29, pairs: 1, size: 0.56 }),
    line('M4 44H92', `M48 44${ROOTS}`),
    (
      [
        [16, 58, 20],
        [36, 66, -30],
        [62, 60, 40],
        [82, 64, -20],
        [14, 82, 60],
        [40, 84, 10],
        [62, 84, -50],
        [84, 84, 30],
      ] as const
    ).map(([x, y, degrees]) => chip(x, y, degrees)),
  ],
  'setting-wood-on-surface': () => [
    plant({ x: 48, ground: 56, height: 40, pairs: 2, size: 0.42 }),
    (
      [
        [12, 50, 6],
        [27, 52, -18],
        [40, 50, 24],
        [58, 51, -8],
        [72, 51, 16],
        [86, 50, -22],
        [20, 43, -10],
        [66, 43, 10],
        [34, 43, 30],
        [79, 43, -14],
      ] as const
    ).map(([x, y, degrees]) => chip(x, y, degrees, 0.9)),
    line('M4 56H92', 'M48 56q-10 12-24 18M48 56q10 12 24 18M48 56v30M48 64q-6 10-16 20M48 66q8 10 16 18'),
  ],
  'setting-sprayed-nearby': () => [
    line('M4 88H92'),
    // A hand sprayer on weeds.
    shape('leaf', 'M62 46H84V88H62z'),
    line('M62 58H84M62 70H84'),
    over('M62 26H80V34H86L80 46H66L62 36H56V26z', 'pale'),
    missing('M52 28L10 14M52 31L8 44M52 33L18 66'),
    specks([
      [40, 28],
      [30, 24],
      [30, 32],
      [20, 26],
      [22, 36],
      [12, 30],
      [34, 38],
      [24, 48],
      [38, 44],
    ]),
    line(
      'M14 88C12 80 8 76 4 74M14 88C14 78 16 74 14 68M14 88C16 80 22 76 26 76M36 88C34 80 32 78 28 78M36 88C38 80 42 78 46 78',
    ),
  ],
  'setting-netted': () => [
    soil(88),
    [28, 48, 68].map((x) => rosette(x, 76, 9)),
    line(
      'M6 88C6 28 28 14 48 14C68 14 90 28 90 88',
      ...[18, 28, 38, 48, 58, 68, 78].map((x) => {
        const top = 88 - 74 * Math.sqrt(Math.max(0, 1 - ((x - 48) / 42) ** 2)) ** 1.1;
        return `M${x} ${Math.round(top)}V${x > 18 && x < 78 ? 64 : 88}`;
      }),
      'M28 24H68M16 34H80M11 44H85M9 54H87M8 64H88M7 76H18M78 76H89',
    ),
  ],
  'setting-feed-none': () => [
    soil(88),
    plant({ x: 48, ground: 88, height: 36, pairs: 2, size: 0.42 }),
    scoopGone(),
  ],
  'setting-feed-light': () => [
    soil(88),
    plant({ x: 34, ground: 88, height: 36, pairs: 2, size: 0.42 }),
    scoop([]),
    dots([
      [57, 50],
      [60, 62],
      [56, 74],
      [64, 84],
    ]),
  ],
  'setting-feed-heavy': () => [
    line('M4 88H92'),
    plant({ x: 34, ground: 88, height: 36, pairs: 2, size: 0.42 }),
    scoop(over('M52 30C54 14 78 8 88 20z', 'yellow')),
    dots(scatter((x, y) => x > 48 && x < 66 && y > 44 && y < 70, 7, 5)),
    shape('yellow', 'M34 88C44 84 52 72 62 72C72 72 80 84 90 88z'),
    dots(
      [
        [50, 83],
        [58, 78],
        [66, 78],
        [58, 84],
        [66, 84],
        [74, 84],
      ].map(([x = 0, y = 0]): Point => [x, y]),
    ),
  ],
} as const satisfies SettingDrawings;

const SCOOP = 'M50 32L88 20C90 32 82 42 70 44C60 45 52 40 50 32z';
function scoop(load: Parts): Parts {
  return [load, over(SCOOP, 'pale'), line('M88 24L95 16')];
}
function scoopGone(): Parts {
  return missing('M26 32L64 20C66 32 58 42 46 44C36 45 28 40 26 32z', 'M64 24L76 10');
}
