/** Drawings of what went on the bed and where it came from. */
import { blade, board, drop, sound } from '../plant.ts';
import {
  along,
  blackened,
  circle,
  dots,
  ink,
  line,
  missing,
  oval,
  over,
  type Parts,
  polyline,
  shape,
  specks,
  wash,
} from '../strokes.ts';
import { asking, chip, heap, heapEdge, lobedLeaf, seedling } from '../things.ts';
import type { SettingDrawings } from './ids.ts';

const mirrored = (draw: (side: (x: number) => number) => string): string =>
  draw((x) => x) + draw((x) => 96 - x);
/** Tall grass across the sheet, its feet at `y`. */
const meadow = (y: number): Parts =>
  line(
    ...[10, 24, 38, 52, 66, 80].map(
      (x, i) =>
        `M${x} ${y}C${x} ${y - 14} ${x - 3} ${y - 22} ${x - 6} ${y - 28 + (i % 2) * 5}M${x + 2} ${y}C${x + 3} ${y - 12} ${x + 6} ${y - 18} ${x + 10} ${y - 22 - (i % 3) * 4}`,
    ),
    `M4 ${y}H92`,
  );
const dungBalls = (at: readonly (readonly [x: number, y: number])[], r = 7): Parts =>
  at.map(([x, y]) => [over(circle(x, y, r), 'dead'), line(`M${x - 3} ${y - 1}l4-2M${x - 1} ${y + 3}l3-1`)]);

export const BROUGHT_DRAWINGS = {
  'setting-compost-kinds-none': () => [
    line('M4 66H92'),
    line('M10 74h4M24 78h4M40 74h4M56 78h4M72 74h4M84 78h3'),
    missing(heapEdge(30, 22, 74, 64)),
  ],
  'setting-compost-kinds-own-compost': () => [
    heap(20, 16, 80, 52),
    sound(blade([34, 32], -30, 14)),
    line('M52 30l8 4M44 26l4 5M64 38l6-2'),
    // A bin of boards.
    [44, 58, 72].map((y) => over(`M10 ${y}H86v10H10z`, 'yellow')),
    over('M10 34h9V90h-9z', 'yellow'),
    over('M77 34h9V90h-9z', 'yellow'),
    line('M4 90H92'),
  ],
  'setting-compost-kinds-green-waste': () => [
    // A barrow of prunings.
    (
      [
        [24, 50, -26, 36],
        [36, 48, -8, 40],
        [52, 50, 14, 42],
        [62, 52, 38, 36],
      ] as const
    ).map(([x, y, degrees, length]) => {
      const at = (up: number) => along([x, y], degrees, up * length);
      return [
        line(polyline([at(0), at(0.7)])),
        sound(blade(at(0.4), degrees - 55, 15)),
        sound(blade(at(0.4), degrees + 55, 15)),
        sound(blade(at(0.68), degrees, 16)),
      ];
    }),
    over('M8 46H74L62 70H26z', 'pale'),
    line('M70 54L93 46', 'M58 70L66 90M26 70L36 80L54 70', 'M4 90H92'),
    over(circle(28, 80, 10)),
    line(circle(28, 80, 1)),
  ],
  'setting-compost-kinds-cattle-manure': () => [
    over(oval(48, 87, 30, 5.5), 'dead'),
    over(oval(47, 81, 20, 4.6), 'dead'),
    over(
      mirrored(
        (s) => `M${s(36)} 22C${s(28)} 16 ${s(18)} 18 ${s(14)} 25C${s(22)} 32 ${s(30)} 32 ${s(36)} 28z`,
      ),
      'leaf',
    ),
    line(mirrored((s) => `M${s(40)} 16C${s(32)} 14 ${s(28)} 8 ${s(30)} 2C${s(35)} 7 ${s(40)} 9 ${s(45)} 13`)),
    over('M34 20C30 34 36 48 38 56C40 64 56 64 58 56C60 48 66 34 62 20C56 13 40 13 34 20z'),
    wash('black', 'M34 20C31 34 34 42 40 42C46 38 44 24 42 15z'),
    over(oval(48, 58, 14, 10), 'rust'),
    dots([
      [43, 58],
      [53, 58],
      [57, 32],
    ]),
    wash('ground', circle(39.5, 32, 2.4)),
    line('M43 64q5 3 10 0'),
  ],
  'setting-compost-kinds-horse-manure': () => [
    over(
      'M90 76C88 44 76 20 56 13L50 3L46 13C38 19 28 32 17 42C12 47 12 54 18 57C25 60 36 55 46 50C52 54 56 62 56 76z',
      'dead',
    ),
    line(
      'M58 14C66 12 74 18 76 26C84 30 88 40 86 48C92 54 93 64 90 74',
      'M60 24l6 4M68 34l6 4M74 48l7 3M76 62l8 2',
      'M24 50l-9 2',
    ),
    dots([
      [41, 26],
      [18, 46],
    ]),
    dungBalls([
      [14, 84],
      [28, 86],
      [42, 84],
      [21, 73],
      [35, 74],
    ]),
  ],
  'setting-compost-kinds-poultry-manure': () => [
    line('M4 84H92'),
    over(
      'M22 38C20 28 26 20 34 24C40 28 38 38 46 42C58 44 62 34 66 22C74 16 86 18 90 26C90 46 78 68 56 68C36 68 26 56 22 38z',
      'rust',
    ),
    line('M44 52C56 52 66 46 72 38C72 54 60 62 48 58'),
    over('M25 25C22 18 26 14 29 18C30 12 35 12 36 17C40 14 43 19 38 25C34 21 29 21 25 25z', 'mark'),
    line('M22 33L12 36L22 40M24 42q-1 6 3 8', 'M48 68V84M60 67V84M48 84l-6 4M48 84l4 4M60 84l-6 4M60 84l4 4'),
    dots([[28, 31]]),
    ink(oval(80, 82, 4, 2.4), oval(88, 80, 3, 2), oval(76, 77, 3, 2)),
  ],
  'setting-compost-kinds-manure-unknown': () => [
    heap(46),
    line('M20 78h6M34 70h6M62 74h6M48 60h5M74 82h5M44 82h6M30 84l4-2M56 84l5 1'),
    asking(48, 22, 17),
  ],
  'setting-compost-kinds-mushroom-compost': () => [
    heap(62),
    over('M40 70C44 58 44 50 43 42H59C58 52 58 60 62 70C56 74 46 74 40 70z', 'pale'),
    over('M24 44C24 22 38 8 52 8C66 8 80 22 78 44C66 50 36 50 24 44z', 'pale'),
    line('M34 40q2-14 12-20'),
    over('M17 80C19 72 19 68 18 66H28C27 70 27 74 30 80z', 'pale'),
    over('M9 66C9 56 16 50 23 50C30 50 37 56 36 66C30 70 16 70 9 66z', 'pale'),
    line('M66 80h6M46 82h6M76 74h4'),
  ],
  'setting-compost-kinds-bagged-compost': () => [
    shape('pale', 'M20 14C32 10 64 10 76 14C72 34 74 66 80 90C60 94 36 94 16 90C22 66 24 34 20 14z'),
    line('M21 22C34 19 62 19 75 22', 'M18 82C36 86 60 86 78 82'),
    over(oval(48, 52, 18, 20)),
    seedling(48, 66, 18, 16),
    line('M36 66H60'),
  ],
  'setting-compost-kinds-straw-or-hay': () => [
    shape('yellow', 'M6 46L26 28H90L70 46z', 'M6 46H70V86H6z', 'M70 46L90 28V66L70 86z'),
    line('M22 46V86M54 46V86M22 46L42 28M54 46L74 28'),
    line(
      'M10 54h8M12 64h6M10 76h9M28 52h10M34 60h14M28 68h8M40 74h10M30 80h12M58 54h8M60 66h6M58 78h8',
      'M6 58L1 54M6 72L1 76M90 40l5-5M34 28l-4-8M58 28l3-9M76 28l5-7',
    ),
  ],
  'setting-compost-kinds-grass-clippings': () => [
    line('M2 88H94'),
    line(...[5, 10, 15, 20, 25].map((x, i) => `M${x} 88q-1-14 ${i % 2 ? 3 : -3}-24`)),
    // A mower and what flies from it.
    over('M34 64H76L82 78H32z', 'mark'),
    over('M44 50H64V64H44z', 'pale'),
    line('M74 64L90 26H82', 'M50 50V44H58'),
    over(circle(40, 80, 8)),
    over(circle(74, 80, 8)),
    line('M32 54l-6-5M28 44l-2-8M38 46l-3-7M20 50l-6-4M36 32l-4-6M18 36l-5-4M46 34l-1-7M26 24l-4-5'),
  ],
  'setting-compost-kinds-leaf-mould': () => [
    lobedLeaf([66, 40], 20, 36),
    lobedLeaf([46, 84], -62, 44),
    lobedLeaf([58, 86], 58, 44),
    lobedLeaf([48, 84], -4, 42),
    line('M2 92H94', 'M26 20q6 4 2 12M40 10q5 4 1 11'),
  ],
  'setting-compost-kinds-wood': () => [
    heap(8, 34, 88, 84),
    (
      [
        [48, 44, 10],
        [36, 54, -30],
        [60, 55, 36],
        [26, 68, 20],
        [46, 66, -12],
        [68, 68, -34],
        [20, 80, -20],
        [38, 80, 34],
        [58, 79, 8],
        [78, 80, 26],
      ] as const
    ).map(([x, y, degrees]) => chip(x, y, degrees)),
    // A strip of bark leans on it.
    over('M72 20l10-4 8 34-9 5z', 'dead'),
    line('M76 24l7 26M82 22l6 24', 'M4 86H92'),
  ],
  'setting-compost-kinds-biochar-or-ash': () => [
    shape(
      'yellow',
      'M48 6C58 20 70 28 67 44C66 52 60 56 48 56C36 56 29 52 28 44C27 34 35 28 36 20C41 24 43 30 43 34C49 26 49 16 48 6z',
    ),
    line('M48 54C42 50 42 44 48 38C54 44 54 50 48 54'),
    (
      [
        [14, 60, 30, 13],
        [50, 58, 34, 14],
        [30, 75, 36, 13],
      ] as const
    ).map(([x, y, w, h]) => [
      wash('ground', board(x, y, w, h)),
      blackened((px, py) => px > x + 2 && px < x + w - 2 && py > y + 2 && py < y + h - 2, board(x, y, w, h)),
    ]),
    specks([
      [8, 84],
      [16, 80],
      [22, 87],
      [72, 80],
      [78, 86],
      [86, 82],
      [12, 91],
      [84, 91],
    ]),
  ],
  'setting-hay-source-no': () => [
    meadow(86),
    // Meadow flowers: nobody sprayed them away.
    [
      [22, 34],
      [54, 22],
      [80, 40],
    ].map(([x = 0, y = 0]) => [
      line(`M${x} ${y}C${x - 2} ${y + 20} ${x + 2} 70 ${x} 86`),
      [0, 60, 120, 180, 240, 300].map((degrees) => over(blade([x, y], degrees, 12, 0.6).edge, 'pale')),
      shape('yellow', circle(x, y, 3.4)),
    ]),
  ],
  'setting-hay-source-unknown': () => [meadow(88), asking(48, 28, 19)],
  'setting-hay-source-yes': () => [
    meadow(90),
    // The boom of a sprayer.
    shape('leaf', board(34, 2, 28, 16)),
    line('M4 24H92M48 18V24'),
    [12, 36, 60, 84].map((x) => [
      line(`M${x} 24v5`),
      missing(`M${x - 2} 31l-7 22M${x + 2} 31l7 22`),
      shape('pale', drop(x, 44, 3.6)),
    ]),
  ],
  'setting-compost-state-finished': () => [
    // Fine crumbs through a sieve.
    over('M12 8H84L78 30H18z', 'yellow'),
    line('M18 30H78M26 18h44M24 24h48M30 12v18M42 12v18M54 12v18M66 12v18'),
    specks([
      [30, 38],
      [40, 36],
      [52, 40],
      [62, 36],
      [36, 46],
      [58, 48],
      [48, 44],
      [68, 42],
    ]),
    heap(54),
    specks([
      [22, 82],
      [30, 76],
      [30, 84],
      [40, 66],
      [38, 80],
      [46, 74],
      [48, 62],
      [48, 83],
      [56, 68],
      [56, 78],
      [64, 74],
      [66, 83],
      [74, 82],
      [40, 73],
    ]),
  ],
  'setting-compost-state-fresh': () => [
    heap(28),
    // One still sees what it was: leaf, straw, apple core, eggshell.
    sound(blade([26, 84], -4, 26)),
    sound(blade([64, 36], 66, 16)),
    line('M34 50L42 32M30 58L36 52M42 84L58 76M40 78L50 74M62 58L70 52'),
    over('M42 44C48 42 56 42 62 44C57 50 57 58 62 64C56 67 48 67 42 64C47 58 47 50 42 44z', 'pale'),
    line('M52 43q1-6 5-8M52 52v4'),
    over('M60 74L64 70L68 74L72 70L76 74L80 70C82 80 76 85 70 85C64 85 60 80 60 74z', 'pale'),
  ],
} as const satisfies SettingDrawings;
