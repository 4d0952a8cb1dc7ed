/** Drawings of warmth, rain, light and wind. */
import { blade, deadened, drop, earth, plant, soil, sound, sun } from '../plant.ts';
import { along, hatch, line, oval, over, type Parts, polyline, shape, wash } from '../strokes.ts';
import { bulbThermometer, cloud, frostStar, seedling, thermometer, threeWeeks } from '../things.ts';
import type { SettingDrawings } from './ids.ts';

/** The weather thermometer at the left, what that weather is like at the right. */
const warmth = (share: number, like: Parts): Parts => [bulbThermometer(20, 6, 90, share), like];

const COLD_BOX = 12.5;
/** Three weeks, the cold days of which carry a star. */
const coldDays = (days: readonly number[]): Parts => [
  threeWeeks(50, COLD_BOX, (x, y, day) =>
    days.includes(day)
      ? line(
          polyline([along([x, y], 30, 4), along([x, y], 210, 4)]),
          polyline([along([x, y], 90, 4), along([x, y], 270, 4)]),
          polyline([along([x, y], 150, 4), along([x, y], 330, 4)]),
        )
      : [],
  ),
  line('M16 50V42M80 50V42'),
];
const cracks = (y: number): Parts =>
  line(
    `M4 ${y}H92`,
    `M14 ${y}l4 8-3 6 5 8M36 ${y}l-2 7 6 6-1 9M60 ${y}l-3 9 5 5-3 8M80 ${y}l3 7-5 7 4 8`,
    `M18 ${y + 8}l8 3M40 ${y + 13}l9-2M62 ${y + 14}l9-3`,
  );
const rain = (feet: readonly (readonly [x: number, y: number, length: number])[]): Parts =>
  line(...feet.map(([x, y, length]) => `M${x} ${y}l${-length * 0.3} ${length}`));

/** A thermometer in the soil, its point where roots are; what the warmth lets grow stands beside it. */
const soilWarmth = (level: number, beside: Parts): Parts => [
  line('M4 50H20M44 50H92'),
  earth(54, 4, 22),
  earth(56, 46, 92),
  thermometer(32, 4, 80, level),
  line('M4 74h12M52 76h6M70 84h6M84 72h5'),
  beside,
];

export const WEATHER_DRAWINGS = {
  'setting-recent-temperature-frost': () => warmth(0.05, line(frostStar(62, 34, 26), frostStar(74, 78, 12))),
  'setting-recent-temperature-cold-for-crop': () =>
    warmth(0.3, [
      shape('pale', cloud(62, 24, 50)),
      line('M44 84H92'),
      plant({ x: 68, ground: 84, height: 22, pairs: 1, size: 0.6, stand: () => 30 }),
      line('M44 50h10M62 46h12M80 50h8'),
    ]),
  'setting-recent-temperature-about-right': () =>
    warmth(0.6, [line('M42 88H92'), plant({ x: 66, ground: 88, height: 62, pairs: 3, size: 0.36 })]),
  'setting-recent-temperature-hot': () =>
    warmth(1, [
      sun(64, 34, 14, false, 9),
      line('M44 82q6-6 12 0t12 0 12 0 10 0M44 70q6-6 12 0t12 0 12 0 10 0'),
    ]),
  'setting-cold-days-0-3': () => [shape('pale', cloud(48, 22, 34)), coldDays([9, 10])],
  'setting-cold-days-4-9': () => [line(frostStar(48, 22, 15)), coldDays([1, 2, 9, 10, 11, 16])],
  'setting-cold-days-10+': () => [
    line(frostStar(26, 22, 15), frostStar(70, 22, 15)),
    coldDays([0, 1, 2, 3, 5, 7, 8, 9, 10, 11, 13, 14, 15, 16, 18, 19]),
  ],
  'setting-recent-rain-dry': () => [
    cracks(64),
    sun(74, 20, 9, false, 5),
    shape('pale', drop(26, 28, 7)),
    plant({ x: 44, ground: 64, height: 24, pairs: 1, size: 0.56 }),
  ],
  'setting-recent-rain-about-right': () => [
    soil(86),
    shape('pale', cloud(48, 20, 52)),
    [
      [28, 44],
      [48, 40],
      [68, 44],
    ].map(([x = 0, y = 0]) => shape('pale', drop(x, y, 4.5))),
    plant({ x: 48, ground: 86, height: 32, pairs: 1, size: 0.6 }),
  ],
  'setting-recent-rain-wet': () => [
    shape('black', cloud(48, 22, 66)),
    rain([
      [20, 38, 22],
      [32, 36, 30],
      [44, 38, 14],
      [58, 36, 14],
      [70, 38, 30],
      [82, 36, 24],
      [26, 62, 10],
      [76, 64, 8],
    ]),
    plant({ x: 48, ground: 80, height: 22, pairs: 1, size: 0.6 }),
    shape('pale', 'M4 80q8-6 16 0t16 0 16 0 16 0 16 0 8-2V92H4z'),
    line('M10 87h10M34 88h12M62 87h14'),
  ],
  'setting-light-dull': () => [
    soil(88),
    wash('black', cloud(48, 25, 78)),
    line(cloud(48, 25, 78)),
    hatch((x, y) => y > 46 && y < 84 && Math.abs(x - 48) < 40 && Math.abs(x - 48) > 20, 9, 1.6),
    plant({ x: 48, ground: 88, height: 32, pairs: 1, size: 0.54 }),
  ],
  'setting-light-about-right': () => [
    soil(88),
    sun(34, 24, 10, false, 6),
    over(cloud(66, 26, 34), 'pale'),
    plant({ x: 48, ground: 88, height: 38, pairs: 2, size: 0.44 }),
  ],
  'setting-light-scorching': () => [
    soil(88),
    sun(48, 28, 15, false, 7),
    line('M48 88V66', 'M12 46L6 56M24 54L18 64M84 46L90 56M72 54L78 64'),
    deadened(blade([48, 66], -116, 28, 0.5)),
    deadened(blade([48, 66], 116, 28, 0.5)),
  ],
  'setting-wind-sheltered': () => [
    soil(88),
    // A board fence between the wind and the plant.
    [6, 17, 28].map((x) => over(`M${x} 88V30l5.5-7 5.5 7V88z`, 'dead')),
    line('M2 44H42M2 70H42'),
    plant({ x: 66, ground: 88, height: 50, pairs: 2, size: 0.42 }),
  ],
  'setting-wind-windy': () => [
    line('M4 88H92'),
    plant({
      x: 28,
      ground: 88,
      height: 46,
      pairs: 2,
      size: 0.5,
      lean: 34,
      stand: (level, side) => (side < 0 ? 26 : 92 - level * 6),
    }),
    line('M4 14H46C58 14 58 2 48 4', 'M4 26H70C86 26 86 8 74 8C68 8 66 13 69 17', 'M4 38H34'),
    sound(blade([76, 44], 100, 14)),
    sound(blade([70, 64], 130, 12)),
  ],
  'setting-soil-celsius-below-8': () => soilWarmth(74, line(frostStar(68, 28, 18))),
  'setting-soil-celsius-8-11': () =>
    soilWarmth(58, [over(oval(70, 68, 8, 5.5, 20), 'dead'), line('M77 71q5 4 2 12', 'M66 66l5 1')]),
  'setting-soil-celsius-12-15': () =>
    soilWarmth(40, [seedling(68, 50, 20, 17), line('M68 50q-4 8-8 10M68 50q2 8 6 12')]),
  'setting-soil-celsius-16+': () =>
    soilWarmth(18, [
      sun(84, 12, 4, false, 3),
      plant({ x: 66, ground: 50, height: 32, pairs: 2, size: 0.44 }),
      line('M66 50q-6 10-12 14M66 50v20M66 50q6 10 12 12'),
    ]),
} as const satisfies SettingDrawings;
