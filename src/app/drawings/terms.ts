/** Drawings of terms that no question asks about. */
import { greenfly } from './creatures.ts';
import { bareLeaf, place } from './leaf.ts';
import { blade, board, drop, plant, pot, soil, sound, sun, washed, yellowed } from './plant.ts';
import {
  along,
  arrow,
  blob,
  circle,
  dots,
  head,
  ink,
  line,
  oval,
  over,
  type Parts,
  type Point,
  polyline,
  shape,
  smooth,
  specks,
} from './strokes.ts';

/** A stalk with a head of spores. */
const mould = (x: number, y: number, height: number): Parts => [
  line(`M${x} ${y}q2 ${-height / 2} 0 ${-height}`),
  over(circle(x, y - height - 4, 4), 'dead'),
];

const mottledBlade = ({ edge, at }: ReturnType<typeof blade>): Parts => [
  shape('leaf', edge),
  shape(
    'yellow',
    circle(...at(0.35, 0.2), 2.4),
    circle(...at(0.6, -0.2), 2.4),
    circle(...at(0.22, -0.22), 2),
  ),
];
const burntBlade = ({ edge, at }: ReturnType<typeof blade>): Parts => [
  shape('leaf', edge),
  shape('dead', `M${at(0.68, 0.45).join(' ')}L${at(1).join(' ')}L${at(0.68, -0.45).join(' ')}z`),
];
/** A swollen shell, head first; open where the wasp has left through a round lid. */
function mummy(x: number, y: number, degrees: number, size: number, open: boolean): Parts {
  const p = (up: number, across: number): Point => along([x, y], degrees, up * size, across * size);
  const legs = [0.5, 0, -0.4].flatMap((up) =>
    [1, -1].map((side) => polyline([p(up, side * 0.7), p(up - 0.1, side * 1.15)])),
  );
  return [
    line(...legs),
    over(
      smooth([p(1, 0), p(0.5, 0.7), p(-0.5, 0.85), p(-1.05, 0), p(-0.5, -0.85), p(0.5, -0.7)], true),
      'dead',
    ),
    line(polyline([p(0.75, -0.3), p(0.75, 0.3)])),
    open ? ink(circle(...p(-0.45, 0), size * 0.32)) : [],
  ];
}
/** The middle vein as broad as `width` at its foot. */
const rib = (width: number): string =>
  smooth(
    [-1, 1].flatMap((side) => {
      const edge = [0, 0.25, 0.5, 0.75, 0.95].map((t): Point => {
        const [x, y] = place(0, t);
        return [x + side * width * (1 - 0.8 * t), y];
      });
      return side < 0 ? edge : edge.reverse();
    }),
    true,
  );
/** Drawn in the colour of the page over what is black. */
const lightCracks = (): Parts => ({
  look: 'crack',
  d: 'M24 60L34 66L32 76M44 52L38 62M64 60L72 66L70 76M78 58L74 64M46 26L52 36L60 38M44 40L50 34',
});

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
  // Threads in the leaf, stalks above it, dust on its way.
  'term-fungus': () => [
    shape('leaf', 'M4 62C28 54 66 54 92 62V78C66 70 28 70 4 78z'),
    line('M16 66q8 6 16 0t16 0 16 0 16 2M28 66q4 6 12 4M60 66q6 6 14 3'),
    mould(24, 58, 22),
    mould(46, 56, 30),
    mould(68, 58, 20),
    dots([
      [40, 10],
      [56, 8],
      [66, 16],
      [80, 12],
      [88, 24],
      [82, 34],
    ]),
  ],
  // A mottled plant, a greenfly that goes from it to the next.
  'term-virus': () => [
    soil(88),
    plant({ x: 20, ground: 88, height: 44, pairs: 2, size: 0.46, dress: () => mottledBlade }),
    plant({ x: 76, ground: 88, height: 44, pairs: 2, size: 0.46 }),
    greenfly(48, 30, 90, 9),
    line('M22 34C26 26 30 24 34 24M62 24C68 24 72 28 74 34', head(74, 35, 165)),
  ],
  // Wedge-shaped, seen from above, and the way it jumps.
  'term-leafhopper': () => [
    line(
      'M38 46l-12-6M38 56l-14 2M40 66l-10 10M58 46l12-6M58 56l14 2M56 66l10 10M44 32q-4-8-10-10M52 32q4-8 10-10',
    ),
    over('M36 40C36 30 60 30 60 40L52 88Q48 92 44 88z', 'yellow'),
    line('M37 46H59M48 46V90M42 36h.1M54 36h.1'),
    line('M70 84C84 72 88 52 84 36', head(84, 35, -8)),
  ],
  'term-mummies': () => [
    bareLeaf(),
    mummy(34, 40, -20, 10, false),
    mummy(60, 34, 25, 10, true),
    mummy(52, 64, 80, 9, false),
  ],
  // A root with a round knot cut open, a grub in it.
  'term-gall': () => [
    soil(16),
    line('M48 6V34M48 62V90M48 70q-12 6-18 16M48 74q12 4 20 14M44 30q-14 2-22 12'),
    over(circle(48, 48, 19), 'dead'),
    over(circle(48, 48, 11)),
    over('M42 52C40 44 50 40 55 45C57 48 54 50 51 48C49 48 48 54 45 54z', 'pale'),
  ],
  // One stands; one lies, its stem thin and dark at the soil.
  'term-damping-off': () => [
    soil(78),
    line('M20 78V50'),
    sound(blade([20, 50], -55, 20, 0.6)),
    sound(blade([20, 50], 55, 20, 0.6)),
    line('M50 78V73'),
    ink('M48.500 73L51.500 73L52 66L49 66z'),
    line('M50.500 66C52 54 62 56 70 64'),
    sound(blade([70, 64], 70, 20, 0.6)),
    sound(blade([70, 64], 150, 16, 0.6)),
    arrow([38, 54], [46, 66]),
  ],
  // A leaf that is little but its rib, beside a whole one.
  'term-strap-leaf': () => [
    sound(blade([26, 90], 0, 78, 0.5)),
    line('M70 90C72 66 66 40 72 10'),
    shape(
      'leaf',
      'M69 62C62 56 66 48 64 42C68 40 66 30 68 24C70 18 71 14 72 10C75 16 74 24 76 30C74 36 80 44 76 48C78 56 74 60 71 62z',
    ),
    line('M70.500 64C71 48 68 30 72 12'),
  ],
  'term-midrib': () => [bareLeaf(), shape('mark', rib(4)), arrow([78, 78], [56, 52])],
  'term-growing-point': () => [
    soil(88),
    plant({
      x: 48,
      ground: 88,
      height: 54,
      pairs: 2,
      size: 0.5,
      dress: (_, __, top) => (top ? washed('mark') : sound),
    }),
    line(circle(48, 26, 19)),
  ],
  // Two round leaves low on the stem, a notched one above.
  'term-seed-leaves': () => [
    soil(88),
    line('M48 88V30'),
    shape('mark', oval(30, 62, 17, 9, 12), oval(66, 62, 17, 9, -12)),
    over(
      'M48 34C42 30 36 30 34 24C38 22 36 16 42 14C44 8 52 8 54 14C60 16 58 22 62 24C60 30 54 30 48 34z',
      'leaf',
    ),
    line('M48 34V18'),
    arrow([14, 84], [22, 70]),
  ],
  // A cabbage from the side.
  'term-brassica': () => [
    soil(88),
    over('M46 88C20 88 4 70 6 46C18 44 30 54 40 68z', 'leaf'),
    over('M50 88C76 88 92 70 90 46C78 44 66 54 56 68z', 'leaf'),
    over(circle(48, 52, 28), 'leaf'),
    over('M26 70C14 52 20 28 40 24C46 40 44 62 36 78z', 'leaf'),
    over('M70 70C82 52 76 28 56 24C50 40 52 62 60 78z', 'leaf'),
    line('M34 70C30 54 32 40 38 30M62 70C66 54 64 40 58 30'),
  ],
  // Soil cut open: what fell on top, the dark layer, the pale earth below.
  'term-humus': () => [
    line('M8 34V88H88V34'),
    shape('black', 'M8 34C26 30 40 36 56 33C70 31 80 35 88 33V56C70 60 54 54 38 58C26 60 16 56 8 58z'),
    line('M20 66h5M40 72h6M64 68h5M28 80h5M54 82h6M76 78h4'),
    sound(blade([22, 30], 70, 18)),
    sound(blade([62, 28], -70, 18)),
    line('M40 28l12-6M72 28q6-8 12-6'),
  ],
  // Cracked lumps of charcoal.
  'term-biochar': () => [
    soil(84),
    shape(
      'black',
      'M14 80L20 52L40 46L50 60L46 80zM54 80L58 54L76 50L86 66L82 80zM34 42L40 22L58 18L68 34L60 46L50 54z',
    ),
    lightCracks(),
  ],
  // A cloth over hoops, plants under it, stones on its edge.
  'term-fleece': () => [
    soil(84),
    [26, 48, 70].map((x) => plant({ x, ground: 84, height: 20, pairs: 1, size: 0.6 })),
    shape('pale', 'M8 84C8 34 26 28 48 28C70 28 88 34 88 84z'),
    line('M28 32C24 46 22 66 22 84M68 32C72 46 74 66 74 84'),
    over(oval(8, 82, 6, 5), 'dead'),
    over(oval(88, 82, 6, 5), 'dead'),
    [20, 48, 76].map((x) => line(drop(x, 14, 4))),
  ],
  // A glass bell with a knob over one plant.
  'term-cloche': () => [
    soil(84),
    plant({ x: 48, ground: 84, height: 34, pairs: 2, size: 0.5 }),
    shape('pale', 'M20 84V52C20 28 34 20 48 20C62 20 76 28 76 52V84z'),
    over(circle(48, 14, 6), 'pale'),
    line('M30 62V52C30 42 34 36 40 33'),
    sun(82, 18, 5, false, 3),
  ],
  // A pot with a crust on its soil, a plant with brown leaf edges.
  'term-salts': () => [
    plant({ x: 48, ground: 56, height: 42, pairs: 2, size: 0.46, dress: () => burntBlade }),
    pot(48, 56, 52, 36),
    over(blob(34, 55, 4, 3), 'pale'),
    over(blob(46, 54, 5, 5), 'pale'),
    over(blob(60, 55, 4, 9), 'pale'),
    specks([
      [28, 50],
      [40, 48],
      [54, 49],
      [67, 51],
    ]),
  ],
  // Poured through a cloth into a jar.
  'term-extract': () => [
    shape('dead', 'M58 6L88 14L80 38L54 26z'),
    line('M54 26C48 26 46 30 46 36'),
    shape('pale', 'M22 40H70L50 58H42z'),
    line('M22 40Q46 48 70 40'),
    line('M28 54V86q0 4 4 4H60q4 0 4-4V54'),
    shape('yellow', 'M28 74H64V86q0 4-4 4H32q-4 0-4-4z'),
    line(drop(46, 66, 4)),
  ],
  // Slips out of a hat, a letter for each plot.
  'term-lots': () => [
    line(board(6, 62, 84, 28), 'M34 62V90M62 62V90'),
    line(
      'M15 83l5-13 5 13M17 79h6M44 70v13h5q4 0 4-3.500t-4-3h-5h4.500q3.500 0 3.500-3.200t-3.500-3.300zM71 83l5-13 5 13M73 79h6',
    ),
    shape('dead', 'M28 30H68L62 52H34z'),
    over(oval(48, 30, 20, 5), 'black'),
    over('M40 32L34 8L46 6L50 30z', 'pale'),
    over('M52 31L60 12L70 18L58 32z', 'pale'),
    arrow([74, 30], [78, 56]),
  ],
} as const satisfies Readonly<Record<string, () => Parts>>;
