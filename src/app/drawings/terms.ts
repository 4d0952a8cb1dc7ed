/** Drawings of terms that no question asks about. */
import { board, drop, plant, soil, sun, yellowed } from './plant.ts';
import { arrow, dots, head, line, over, type Parts, shape } from './strokes.ts';

export const TERM_DRAWINGS = {
  // Crumbs of food in the soil go to the chips; the plant above is pale.
  'term-lock-up': () => [
    plant({ x: 48, ground: 44, height: 30, pairs: 1, size: 0.5, dress: () => yellowed }),
    line('M4 44H92'),
    [
      [12, 60],
      [42, 72],
      [70, 58],
    ].map(([x = 0, y = 0]) => shape('dead', board(x, y, 18, 9))),
    line('M18 63v3M48 75v3M76 61v3'),
    dots([
      [40, 56],
      [58, 54],
      [64, 78],
      [34, 84],
      [86, 80],
      [8, 80],
    ]),
    arrow([38, 58], [31, 62]),
    arrow([60, 56], [68, 60]),
    arrow([64, 80], [62, 76]),
    arrow([36, 82], [42, 78]),
    arrow([86, 78], [84, 69]),
    arrow([10, 78], [15, 71]),
  ],
  // Sprayed grass, the heap made from it, a crippled plant.
  'term-residue': () => [
    line('M4 40C6 30 6 24 4 16M10 40C10 28 12 22 16 14M16 40C18 32 22 26 28 24'),
    line(drop(10, 6, 3), drop(22, 8, 3), drop(30, 16, 3)),
    line('M2 40H32'),
    arrow([36, 32], [48, 32]),
    shape('dead', 'M52 44C56 22 66 14 72 14C80 14 88 24 92 44z'),
    line('M64 26l6 4M74 22l5 6M60 36l7 2M78 34l6 3'),
    arrow([86, 48], [80, 56]),
    soil(86, 34, 92),
    line('M62 86C58 78 70 74 66 64C64 58 56 58 55 64M66 74C74 72 78 76 76 82'),
    over('M55 64C46 62 46 52 54 52C53 58 58 60 60 58C62 62 60 66 55 64z', 'leaf'),
    over('M76 82C84 82 86 74 80 71C80 76 76 75 74 73C71 77 71 82 76 82z', 'leaf'),
    over('M66 64C68 56 74 56 78 58C73 60 74 66 69 68z', 'leaf'),
  ],
  // A tray of young plants under a propped pane, the sun on it.
  'term-hardening-off': () => [
    sun(76, 20, 7, false, 5),
    line('M6 84H90'),
    shape('pale', 'M14 84V62H82V84z'),
    over('M14 62L84 36L86 41L16 67z', 'pale'),
    line('M80 62V42'),
    [28, 48, 68].map((x) => plant({ x, ground: 84, height: 13, pairs: 0, size: 0.85 })),
    line('M40 24C30 24 22 28 18 36', head(17, 38, 200)),
  ],
} as const satisfies Readonly<Record<string, () => Parts>>;
