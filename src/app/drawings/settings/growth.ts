/** Drawings of how far on a plant is, where it grows, and what was sown. */
import {
  blade,
  type Dress,
  deadened,
  gone,
  plant,
  pot,
  rosette,
  soil,
  sound,
  sun,
  yellowed,
} from '../plant.ts';
import {
  blob,
  circle,
  dots,
  head,
  line,
  missing,
  over,
  type Parts,
  type Point,
  polyline,
  shape,
  wash,
} from '../strokes.ts';
import { fullDay, seedling, threeWeeks } from '../things.ts';
import type { SettingDrawings } from './ids.ts';

const WEEK_BOX = 11;
/** So many of three weeks' boxes full, under a plant that grew meanwhile. */
const daysSince = (days: number, grown: Parts): Parts => [
  line('M22 54H74'),
  grown,
  threeWeeks(60, WEEK_BOX, (x, y, day) => (day < days ? fullDay(x, y, WEEK_BOX) : [])),
];

/** The large leaf on a seed packet, as the packet's picture shows it. */
const packet = (picture: Parts): Parts => [
  shape('pale', 'M18 14H78V92H18z'),
  line('M18 14L24 5H72L78 14M18 23H78'),
  picture,
];
const onPacket = (dress: Dress): Parts => packet(dress(blade([48, 88], 0, 60, 0.82)));
const veined = (b: ReturnType<typeof blade>): Parts =>
  line(
    polyline([b.at(0), b.at(0.86)]),
    ...[0.2, 0.4, 0.58].flatMap((up) =>
      [1, -1].map((side) => polyline([b.at(up), b.at(up + 0.16, side * 0.42)])),
    ),
  );

export const GROWTH_DRAWINGS = {
  'setting-crop-stage-seedling': () => [soil(76), seedling(48, 76, 34, 28)],
  'setting-crop-stage-just-planted': () => [
    line('M4 56H28M68 56H92', 'M28 56L34 88H62L68 56'),
    shape('dead', 'M36 56H60L56 80H40z'),
    line('M42 62L46 76M54 62L50 76M48 60V78', 'M12 62h4M78 62h4M14 74h4M80 74h4'),
    plant({ x: 48, ground: 56, height: 36, pairs: 1, size: 0.5 }),
  ],
  'setting-crop-stage-growing': () => [
    soil(88),
    plant({ x: 48, ground: 88, height: 62, pairs: 3, size: 0.44 }),
  ],
  'setting-crop-stage-fruiting': () => [
    soil(88),
    line('M48 88C46 66 50 40 48 16'),
    (
      [
        [70, -72, 26],
        [52, 70, 24],
        [34, -60, 22],
        [20, 54, 20],
      ] as const
    ).map(([y, degrees, length]) => sound(blade([48, y], degrees, length))),
    line('M48 64Q60 62 66 66M48 44Q36 42 30 46'),
    [
      [70, 75],
      [26, 55],
    ].map(([x = 0, y = 0]) => [
      over(circle(x, y, 10), 'rust'),
      line(`M${x} ${y - 10}l-5 4M${x} ${y - 10}l5 4M${x} ${y - 10}v5`),
    ]),
    [0, 72, 144, 216, 288].map((degrees) => over(blade([48, 16], degrees, 12, 0.7).edge, 'pale')),
    shape('yellow', circle(48, 16, 3)),
  ],
  'setting-crop-stage-old': () => [
    soil(88),
    line('M40 88C40 62 44 36 60 18', 'M41 66L30 60M43 50L54 48M48 36L38 30'),
    deadened(blade([30, 60], 196, 24)),
    deadened(blade([54, 48], 160, 24)),
    deadened(blade([38, 30], 200, 22)),
    yellowed(blade([60, 18], 124, 22)),
    deadened(blade([60, 84], 84, 24)),
    deadened(blade([26, 86], -92, 20)),
  ],
  'setting-days-since-planting-0-9': () =>
    daysSince(7, plant({ x: 48, ground: 54, height: 20, pairs: 0, size: 0.8 })),
  'setting-days-since-planting-10-20': () =>
    daysSince(15, plant({ x: 48, ground: 54, height: 32, pairs: 1, size: 0.6 })),
  'setting-days-since-planting-21+': () =>
    daysSince(21, plant({ x: 48, ground: 54, height: 38, pairs: 2, size: 0.5 })),
  'setting-hardened-off': () => [
    // A house, and the tray that goes out for the day and in for the night.
    line('M6 86V44L26 26L46 44V86', 'M20 86V64H32V86', 'M4 86H92'),
    sun(78, 20, 8, false, 5),
    shape('pale', 'M56 86V76H90V86z'),
    [64, 73, 82].map((x) => seedling(x, 76, 10, 9)),
    line('M38 50H66', head(68, 50, 90), head(36, 50, -90)),
  ],
  'setting-place-open-ground': () => [
    sun(20, 20, 8, false, 5),
    line('M4 56C24 46 40 52 56 48S84 46 92 50'),
    line('M4 90L40 56M48 90V54M92 90L58 54'),
    [
      [26, 84, 9],
      [70, 84, 9],
      [35, 68, 6],
      [62, 68, 6],
    ].map(([x = 0, y = 0, r = 0]) => rosette(x, y, r)),
  ],
  'setting-place-under-cover': () => [
    shape('pale', 'M6 84V52C6 22 28 8 48 8C68 8 90 22 90 52V84'),
    line('M2 84H94', 'M14 84V52C14 28 32 16 48 16C64 16 82 28 82 52V84', 'M48 8V16M18 20l6 6M78 20l-6 6'),
    plant({ x: 32, ground: 84, height: 36, pairs: 2, size: 0.4 }),
    plant({ x: 64, ground: 84, height: 36, pairs: 2, size: 0.4 }),
  ],
  'setting-place-container': () => [
    line('M6 90H90'),
    plant({ x: 48, ground: 50, height: 34, pairs: 2, size: 0.46 }),
    pot(48, 48, 48, 42),
  ],
  'setting-place-windowsill': () => [
    shape('pale', 'M14 6H82V74H14z'),
    line('M48 6V74M14 38H82'),
    sun(30, 22, 5, false, 3),
    shape('dead', 'M6 74H90V82H6z'),
    line('M18 82V90M78 82V90'),
    wash('ground', 'M52 36H78V60H52z'),
    plant({ x: 64, ground: 56, height: 26, pairs: 1, size: 0.56 }),
    pot(64, 54, 24, 20),
  ],
  'setting-variety-colour-ordinary-green': () => onPacket((b) => [shape('leaf', b.edge), veined(b)]),
  'setting-variety-colour-yellow-or-golden': () =>
    onPacket((b) => [
      shape('yellow', b.edge),
      line(polyline([b.at(0), b.at(0.86)])),
      dots(
        [0.18, 0.32, 0.46, 0.6, 0.74].flatMap((up, i): Point[] =>
          i === 4
            ? [b.at(up, 0.16), b.at(up, -0.16)]
            : [b.at(up, 0.16), b.at(up, -0.16), ...(i > 0 ? [b.at(up, 0.36), b.at(up, -0.36)] : [])],
        ),
      ),
    ]),
  'setting-variety-colour-pale-or-self-blanching': () =>
    // A bunch of blanched stalks.
    packet([
      [-15, -5, 5, 15].map((dx) => over(`M${44 + dx} 86V48h8V86z`, 'pale')),
      [-22, -8, 8, 22].map((degrees, i) => sound(blade([33 + i * 10, 49], degrees, 22, 0.6))),
      over('M28 84C36 92 60 92 68 84C68 80 64 80 64 80H32C28 80 28 84 28 84z', 'pale'),
    ]),
  'setting-variety-colour-red-or-purple': () =>
    onPacket((b) => [
      shape('purple', b.edge),
      veined(b),
      line(
        ...[0.12, 0.26, 0.34, 0.46, 0.54, 0.66].flatMap((up) =>
          [1, -1].map((side) => polyline([b.at(up, side * 0.06), b.at(up + 0.12, side * 0.32)])),
        ),
      ),
    ]),
  'setting-variety-colour-variegated-or-silver': () =>
    onPacket((b) => [
      shape('leaf', b.edge),
      over(blob(42, 46, 7, 3, 0.5), 'pale'),
      over(blob(56, 58, 8, 5, 0.5), 'pale'),
      over(blob(40, 68, 7, 9, 0.5), 'pale'),
      over(blob(53, 77, 4, 4, 0.4), 'pale'),
      line(polyline([b.at(0), b.at(0.12)])),
    ]),
  'setting-rotation-same-family': () => [
    // What stood here last year is dashed; the same kind stands here again.
    soil(88),
    missing('M22 86V56'),
    [-1, 1].map((side) => [
      gone(blade([22, 74], side * 66, 20)),
      gone(blade([22, 56], side * 32, 17)),
      sound(blade([72, 74], side * 66, 20)),
      sound(blade([72, 56], side * 32, 17)),
    ]),
    line('M72 88V56'),
    line('M22 34C28 10 66 10 72 32', head(72.5, 34, 172)),
  ],
} as const satisfies SettingDrawings;
