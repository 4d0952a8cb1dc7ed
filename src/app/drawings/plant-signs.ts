/** Drawings of what a whole plant, its stem, roots, flowers or fruit can show. */
import type { PlantSignId } from '../../signs/vocabulary.ts';
import { blade, deadened, drop, earth, limpPlant, moon, plant, soil, sound, sun, yellowed } from './plant.ts';
import {
  along,
  arrow,
  blackened,
  blob,
  circle,
  crosses,
  line,
  missing,
  oval,
  over,
  type Parts,
  polyline,
  shape,
  wash,
} from './strokes.ts';
import { seedling } from './things.ts';

const flower = (x: number, y: number, r: number): Parts => [
  [0, 72, 144, 216, 288].map((degrees) => shape('pale', blade([x, y], degrees, r, 0.7).edge)),
  shape('yellow', circle(x, y, r * 0.28)),
];
export const PLANT_DRAWINGS: Readonly<Record<PlantSignId, () => Parts>> = {
  stunted: () => [
    soil(84),
    plant({ x: 20, ground: 84, height: 60, pairs: 3, size: 0.3 }),
    plant({ x: 76, ground: 84, height: 60, pairs: 3, size: 0.3 }),
    plant({ x: 48, ground: 84, height: 18, pairs: 1, size: 0.5 }),
    missing('M48 58V28'),
  ],
  'new-growth-clean': () => [
    soil(88),
    plant({
      x: 46,
      ground: 88,
      height: 62,
      pairs: 3,
      size: 0.42,
      dress: (level, _, top) => (top ? sound : level < 2 ? deadened : yellowed),
    }),
    line('M68 14l6 7 12-15'),
  ],
  'tip-eaten': () => [
    soil(88),
    plant({
      x: 48,
      ground: 88,
      height: 54,
      pairs: 3,
      size: 0.5,
      dress: (_, __, top) => (top ? () => [] : sound),
    }),
    line('M48 35l-3-4M48 35l3-5'),
    missing(blade([46, 30], -28, 24).edge, blade([50, 30], 28, 24).edge),
  ],
  'clean-cut': () => [
    shape('leaf', 'M34 92V50L62 26V92'),
    over(oval(48, 38, 18.4, 7, -41), 'pale'),
    line(oval(48, 38, 8, 2.6, -41)),
    line('M34 74C24 74 16 68 12 58'),
    sound(blade([12, 58], -12, 26)),
  ],
  'torn-cut': () => [
    shape('leaf', 'M34 92V46L38 52L39 30L44 44L47 24L51 42L56 28L57 46L62 38V92'),
    line('M39 30L33 22M47 24L48 14M56 28L63 22', 'M43 60V50M51 62V50M56 58V52', 'M34 74C24 74 16 68 12 58'),
    sound(blade([12, 58], -12, 26)),
  ],
  felled: () => [
    soil(78),
    shape('leaf', 'M20 78V68L23 71L25 66L27 70L29 67V78'),
    line('M34 74C50 72 60 70 80 62'),
    sound(blade([52, 72], 20, 28)),
    sound(blade([64, 69], 150, 18)),
    sound(blade([66, 67], 30, 24)),
    sound(blade([80, 62], 60, 16)),
    sound(blade([80, 62], 100, 15)),
    line('M34 74l-3-2M34 74l-2 3'),
  ],
  'seedlings-gone': () => [
    soil(78),
    seedling(15, 78),
    [36, 57].map((x) => [
      missing(`M${x} 74v-12`, blade([x, 60], -55, 11, 0.6).edge, blade([x, 60], 55, 11, 0.6).edge),
      line(`M${x} 78v-3`),
    ]),
    seedling(79, 78),
    moon(44, 24, 12),
  ],
  'wilts-dry-soil': () => [
    limpPlant(44, 70, 62),
    line(
      'M4 70H92',
      'M14 70l4 8-3 6 5 8M34 70l-2 7 6 6-1 9M58 70l-3 9 5 5-3 8M78 70l3 7-5 7 4 8',
      'M18 78l8 3M38 83l9-2M60 84l9-3',
    ),
  ],
  'wilts-wet-soil': () => [
    limpPlant(44, 66, 60),
    line('M4 66H92'),
    [
      [14, 78],
      [32, 84],
      [50, 77],
      [68, 84],
      [84, 77],
    ].map(([x, y]) => shape('pale', drop(x ?? 0, y ?? 0, 5))),
  ],
  'wilts-one-side': () => [
    soil(88),
    line(
      'M48 88V46',
      'M48 62C40 56 36 50 34 42M48 46C44 36 40 30 38 24',
      'M48 62C58 54 66 54 70 60M48 46C54 34 64 32 68 38',
    ),
    sound(blade([34, 42], -38, 26)),
    sound(blade([38, 24], -30, 20)),
    sound(blade([38, 24], 24, 18)),
    yellowed(blade([70, 60], 168, 24)),
    yellowed(blade([68, 38], 150, 22)),
  ],
  'recovers-overnight': () => [
    soil(84),
    limpPlant(20, 84, 44),
    plant({ x: 74, ground: 84, height: 42, pairs: 2 }),
    sun(20, 18, 7, false, 4),
    moon(70, 18, 9),
    arrow([43, 66], [55, 66]),
  ],
  'stem-base-rot': () => [
    line('M6 66H34M62 66H90'),
    earth(66, 6, 34),
    earth(66, 62, 90),
    shape(
      'leaf',
      'M36 6C38 24 38 36 36 48L42 52C44 56 44 60 44 66H52C52 60 52 56 54 52L60 48C58 36 58 24 60 6',
    ),
    shape(
      'black',
      'M36 46C40 52 44 58 42 66C40 72 38 78 40 84L48 92L56 84C58 78 56 72 54 66C52 58 56 52 60 46L56 50L52 44L47 50L42 44z',
    ),
    line('M42 54l10 9M42 63l9 9M41 73l13 11M42 84l6 5'),
    line('M36 24C26 22 20 16 16 8M60 32C70 28 76 22 80 14'),
  ],
  'stem-twisted': () => [
    soil(88),
    shape(
      'leaf',
      'M44 88C46 76 26 74 28 60C30 48 58 54 58 42C58 32 36 34 38 20L44 20C44 28 68 28 66 44C64 58 40 56 38 62C38 70 56 74 52 88',
    ),
    line('M32 54l8 6M58 50l7-4M40 32l6-6M36 70l6-6M48 84l-5-5'),
    sound(blade([41, 20], -50, 20)),
    sound(blade([41, 20], 10, 16)),
    sound(blade([28, 60], -100, 20)),
    sound(blade([66, 42], 70, 22)),
  ],
  'roots-few-brown': () => [
    plant({ x: 48, ground: 46, height: 31, pairs: 1, size: 0.6, dress: () => yellowed }),
    line('M6 46H42M54 46H90'),
    shape(
      'dead',
      'M45 46C44 58 40 66 34 72C42 68 44 66 46 66C46 76 46 82 48 90C50 80 50 72 51 62C54 64 58 68 64 70C58 64 52 58 51 46z',
    ),
    missing('M42 54Q28 58 18 66M54 54Q70 58 80 68M42 72Q32 80 28 90M54 72Q64 80 68 90'),
    crosses(
      [
        [40, 62],
        [57, 60],
        [48, 74],
      ],
      2.2,
    ),
  ],
  'roots-swollen': () => [
    plant({ x: 48, ground: 34, height: 21, pairs: 1, size: 0.7 }),
    line('M6 34H42M54 34H90'),
    (
      [
        [26, 50, 60, 15, 7],
        [70, 52, -58, 15, 7.5],
        [35, 70, 24, 15, 8.5],
        [60, 72, -20, 14, 7.5],
      ] as const
    ).map(([x, y, degrees, long, half]) => {
      const tip = along([x, y], degrees + 180, long + 10);
      return [
        line(
          polyline([[48, 34], along([x, y], degrees, long)]),
          polyline([along([x, y], degrees + 180, long), tip]),
        ),
        over(oval(x, y, half, long, degrees), 'leaf'),
        line(
          polyline([along([x, y], degrees, 5, -2.5), along([x, y], degrees, 4, 2.5)]),
          polyline([along([x, y], degrees, -5, -2.5), along([x, y], degrees, -4, 2.5)]),
        ),
      ];
    }),
    over(oval(48, 48, 6, 11), 'leaf'),
  ],
  'roots-eaten': () => [
    line('M6 30H34M62 30H90'),
    shape('leaf', 'M34 30C32 52 40 76 48 92C52 84 54 78 56 72C50 70 50 62 57 60C60 50 62 40 62 30z'),
    over(blob(43, 44, 6, 4)),
    over(circle(53, 46, 3)),
    line('M43 50C48 56 40 60 46 68C50 74 46 78 48 82'),
    [-40, -14, 14, 40].map((degrees) => sound(blade([48, 30], degrees, 24, 0.34))),
  ],
  'root-bound': () => [
    [-50, 0, 50].map((degrees) => sound(blade([48, 26], degrees, 22))),
    shape('dead', 'M22 26H74L66 84Q65 88 60 88H36Q31 88 30 84z'),
    line(
      'M24 38C40 46 60 44 72 36M26 50C44 58 60 54 70 48M27 60C42 70 58 66 69 58M29 72C44 80 58 76 67 70M24 32C40 34 64 32 72 44M26 46C36 64 62 62 70 54M28 66C40 56 60 72 67 64M30 78C46 68 56 84 66 78',
    ),
  ],
  'pith-brown': () => [
    shape('leaf', 'M26 92V30H70V92'),
    wash('ground', 'M36 30H60V92H36z'),
    shape('pale', 'M36 92V36H60V92'),
    over(oval(48, 28, 22, 11), 'leaf'),
    over(oval(48, 28, 13, 6), 'pale'),
    shape('dead', oval(43, 28, 2.6, 2), oval(50, 26, 2.6, 1.8), oval(54, 29.5, 2.2, 1.8)),
    shape(
      'dead',
      'M41 42C44 50 41 60 43 70L41 82L40 66C41 58 39 50 41 42z',
      'M48 46C51 56 48 66 50 76L48 92L46 76C48 64 46 56 48 46z',
      'M55 42C57 50 55 56 56 62L54 74L53 60C54 54 53 48 55 42z',
    ),
  ],
  'early-flowering': () => [
    soil(84),
    line('M48 84V46'),
    sound(blade([48, 72], -72, 20)),
    sound(blade([48, 72], 72, 20)),
    flower(48, 32, 18),
    line('M80 84V34M76 84h8M76 34h8M78 59h4'),
  ],
  'flowers-dropping': () => [
    soil(88),
    line('M16 88C18 60 22 34 36 16M27 38C40 28 54 30 60 38M21 60C32 54 42 56 46 62'),
    sound(blade([19, 70], -60, 20)),
    sound(blade([29, 30], -64, 20)),
    sound(blade([36, 16], 40, 15)),
    flower(72, 60, 14),
    flower(48, 79, 11),
    line('M66 40v4M78 38v6M42 66v1'),
  ],
  'fruit-end-black': () => [
    shape('pale', 'M34 24C52 8 80 16 87 42C95 68 74 92 48 90C24 88 8 68 11 46C13 32 24 24 34 24z'),
    blackened(
      (x, y) => x + y > 132 && Math.hypot(x - 50, y - 52) < 36,
      'M88 46C82 46 82 54 76 54C70 56 72 62 65 64C58 64 60 72 54 73C48 74 50 82 44 82C40 84 38 86 39 89C66 96 94 72 88 46z',
    ),
    line(
      'M34 24L22 6M34 24C24 22 16 28 12 34M34 24C28 34 28 42 32 48M34 24C44 24 52 28 56 34M34 24C38 16 46 10 54 10',
    ),
  ],
  'fruit-misshapen': () => [
    shape(
      'pale',
      'M40 26C26 20 12 28 14 42C4 50 12 64 22 62C20 78 36 84 44 76C52 92 70 86 68 72C84 74 90 58 80 50C88 38 74 24 62 30C58 22 46 22 40 26z',
    ),
    line(
      'M48 30V12M48 30C42 20 34 20 30 24M48 30C54 20 62 20 66 24',
      'M48 32C40 44 40 60 44 76M46 36C30 40 24 50 22 62M52 36C60 48 66 58 68 72M54 34C66 36 74 42 80 50',
    ),
  ],
  'heart-blackened': () => [
    [0, 60, 120, 180, 240, 300].map((degrees) => sound(blade([48, 48], degrees, 43, 0.54))),
    over(circle(48, 48, 14)),
    [20, 92, 164, 236, 308].map((degrees) => [
      shape('black', blade([48, 48], degrees, 17, 0.6).edge),
      line(blade([48, 48], degrees, 17).rib),
    ]),
  ],
  'leaf-drop': () => [
    soil(86),
    line('M48 86V17M48 54L38 46M48 36L60 28M48 64L58 58'),
    sound(blade([48, 17], -24, 15)),
    sound(blade([48, 17], 28, 15)),
    yellowed(blade([16, 46], 130, 22)),
    yellowed(blade([78, 40], 200, 22)),
    yellowed(blade([10, 80], 80, 22)),
    yellowed(blade([64, 82], 84, 22)),
    line('M18 30q4 4 0 9M76 22q-4 4 0 9M30 60q4 4 0 9'),
  ],
};
