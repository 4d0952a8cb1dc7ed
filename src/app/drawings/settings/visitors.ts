/** Drawings of the animals that visit a plot. */

import { blade } from '../plant.ts';
import { circle, dots, ink, line, oval, over, shape } from '../strokes.ts';
import type { SettingDrawings } from './ids.ts';

const mirrored = (draw: (side: (x: number) => number) => string): string =>
  draw((x) => x) + draw((x) => 96 - x);

export const VISITOR_DRAWINGS = {
  'setting-pests-about-pigeons': () => [
    line('M4 88H92'),
    over(
      'M26 36C22 24 30 12 40 15C49 18 48 30 52 38C66 42 78 56 94 72L84 76L76 73C64 80 42 78 34 64C28 54 28 46 26 36z',
      'leaf',
    ),
    line(
      'M25 24L16 28L26 31',
      'M48 46C60 50 72 60 82 72C66 72 50 66 48 46z',
      'M56 54q8 8 16 12',
      'M50 77V88M60 77V88M50 88l-7 3M50 88l4 3M60 88l-6 3M60 88l5 3',
    ),
    over('M40 36C45 35 49 37 51 42C45 44 40 42 40 36z', 'pale'),
    dots([[34, 23]]),
  ],
  'setting-pests-about-rabbits': () => [
    line('M4 88H92'),
    over(oval(82, 70, 7, 6), 'pale'),
    over(oval(58, 66, 27, 21), 'leaf'),
    over(oval(44, 20, 5, 17, 22), 'leaf'),
    over(oval(33, 19, 5, 17, 4), 'leaf'),
    over(oval(30, 47, 16, 13, -14), 'leaf'),
    over(oval(62, 84, 15, 4.5), 'leaf'),
    over(oval(38, 84, 8, 4), 'leaf'),
    line('M60 80C52 66 66 54 78 62'),
    dots([[27, 43]]),
    line('M15 50l4 1M18 56l-9 4M19 53l-12 0'),
  ],
  'setting-pests-about-deer': () => [
    line(
      mirrored(
        (s) =>
          `M${s(44)} 36C${s(36)} 30 ${s(26)} 22 ${s(28)} 4M${s(31)} 21C${s(22)} 19 ${s(16)} 14 ${s(15)} 6M${s(37)} 29C${s(42)} 22 ${s(42)} 14 ${s(40)} 8`,
      ),
    ),
    over(
      mirrored(
        (s) => `M${s(39)} 44C${s(32)} 34 ${s(22)} 34 ${s(15)} 40C${s(20)} 50 ${s(30)} 53 ${s(39)} 51z`,
      ),
      'leaf',
    ),
    line(mirrored((s) => `M${s(41)} 74C${s(36)} 82 ${s(32)} 86 ${s(29)} 92`)),
    over('M37 42C35 56 40 72 44 80C46 83 50 83 52 80C56 72 61 56 59 42C55 34 41 34 37 42z', 'leaf'),
    ink(oval(48, 78, 5, 3.6)),
    dots([
      [42, 53],
      [54, 53],
    ]),
  ],
  'setting-pests-about-slugs': () => [
    // A slug below a leaf that it has been at.
    shape('leaf', blade([4, 52], 62, 60, 0.6).edge),
    over(circle(26, 40, 5)),
    over(circle(36, 28, 3.4)),
    over(circle(38, 42, 3)),
    over('M2 86C12 81 20 70 38 68C52 66 62 68 70 61C75 54 84 52 90 58C95 64 93 78 86 86z', 'dead'),
    line(
      'M47 67C43 75 50 81 62 80C72 79 76 72 72 60',
      'M82 54l-2-18M90 58l2-14',
      'M12 83q8-8 18-10M22 83q6-6 14-8M34 83q3-4 8-5',
    ),
    dots([
      [80, 34],
      [92, 42],
      [62, 73],
    ]),
    line('M2 90H92'),
  ],
  'setting-pests-about-mice-or-voles': () => [
    line('M4 84H92'),
    line('M78 74C94 74 94 54 82 52C70 50 72 34 90 34'),
    over('M8 76C14 62 28 50 50 50C70 50 84 62 82 76C82 80 78 82 72 82H16C10 82 8 80 8 76z', 'dead'),
    over(oval(38, 48, 10, 11), 'rust'),
    line(
      'M20 72l-12 6M20 75l-8 8M18 69l-12 1',
      'M60 82C54 74 60 64 72 66',
      'M26 82v4M34 82v4M62 82v4M70 82v4',
    ),
    dots([[25, 65]]),
    ink(oval(9, 75, 3, 2.4)),
  ],
} as const satisfies SettingDrawings;
