import { describe, expect, it } from 'vitest';
import { convertLinearToLab } from '../../../src/photo/convert-srgb-to-lab.ts';
import { measureHue } from '../../../src/photo/measure-hue.ts';
import {
  chooseMarks,
  RENDERED_MARKS,
  type RenderedMark,
} from '../../../training/rendered-leaves/choose-marks.ts';
import { LEAF_KINDS } from '../../../training/rendered-leaves/crops.ts';
import { rollDice } from '../../../training/rendered-leaves/dice.ts';
import { colourOfPigments } from '../../../training/rendered-leaves/pigments.ts';
import { type Example, renderExample } from '../../../training/rendered-leaves/render-example.ts';

const SIZE = 112;

/** What each mark must leave behind in the measures; of the others a measure says nothing exact. */
const LEAVES_BEHIND: { readonly [Mark in RenderedMark]?: keyof Example['measures'] } = {
  'yellow-even': 'chlorotic-fraction',
  'purple-tint': 'purple-fraction',
  'brown-edges': 'necrotic-fraction',
  'brown-spots': 'spot-count',
  'haloed-spots': 'spot-count',
  'ringed-spots': 'spot-count',
  'brown-patches': 'necrotic-fraction',
  'leaf-dead': 'necrotic-fraction',
  'white-powder': 'white-fraction',
  'shot-holes': 'hole-count',
  'ragged-holes': 'lost-fraction',
  'edge-bites': 'edge-loss-fraction',
  'veins-left': 'lost-fraction',
};

/** Rows and columns that the mask reaches, as shares of the picture. */
function boxOf({ mask, size }: Example): { left: number; right: number; top: number; bottom: number } {
  let [left, right, top, bottom] = [size, -1, size, -1];
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    left = Math.min(left, i % size);
    right = Math.max(right, i % size);
    top = Math.min(top, Math.floor(i / size));
    bottom = Math.max(bottom, Math.floor(i / size));
  }
  return { left: left / size, right: (right + 1) / size, top: top / size, bottom: (bottom + 1) / size };
}

describe('a rendered example', () => {
  it('is the same for the same seed, whatever was rendered before', () => {
    const first = renderExample(41, SIZE);
    renderExample(42, 64);
    expect(renderExample(41, SIZE)).toEqual(first);
    expect(renderExample(43, SIZE).rgb).not.toEqual(first.rgb);
  });

  it.each(LEAF_KINDS)('shows a whole %s in its box, with nothing wrong where nothing was put on', (leaf) => {
    for (const seed of [3, 4]) {
      const example = renderExample(seed, SIZE, { leaf, marks: [] });
      expect(Object.values(example.marks)).not.toContain(1);
      const { left, right, top, bottom } = boxOf(example);
      const longer = Math.max(right - left, bottom - top);
      // Grown by 10 to 25 %; some are cut by the frame, as outlines are.
      expect(longer).toBeGreaterThan(0.7);
      expect(example.measures['frame-share']).toBeGreaterThan(0.01);
      expect(example.measures['lost-fraction']).toBe(0);
      expect(example.measures['white-fraction']).toBe(0);
      // No more than the specks that every leaf has.
      expect(example.measures['necrotic-fraction']).toBeLessThan(0.01);
    }
  });

  it.each(RENDERED_MARKS)('puts %s on, and says so', (mark) => {
    const leaf = mark === 'silver-pattern' ? 'squash' : 'pepper';
    const [bare, marked] = [[], [mark]].map((marks) => renderExample(7, SIZE, { leaf, marks }));
    expect(Object.entries(marked!.marks).filter(([, is]) => is === 1)).toEqual([[mark, 1]]);
    expect(marked!.rgb).not.toEqual(bare!.rgb);
    const left = LEAVES_BEHIND[mark];
    if (left) expect(marked!.measures[left]).toBeGreaterThan(0);
    const { measures } = marked!;
    expect(measures['lost-fraction']).toBeCloseTo(
      measures['hole-fraction']! + measures['edge-loss-fraction']!,
      10,
    );
    for (const id of ['chlorotic', 'necrotic', 'white', 'purple', 'lost'] as const) {
      expect(measures[`${id}-fraction`]).toBeGreaterThanOrEqual(0);
      expect(measures[`${id}-fraction`]).toBeLessThanOrEqual(1);
    }
  });

  it('leaves a quarter healthy and gives half of all one mark', () => {
    const counts = [0, 0, 0, 0];
    const seen = new Set<RenderedMark>();
    for (let seed = 0; seed < 4000; seed++) {
      const marks = chooseMarks(LEAF_KINDS[seed % LEAF_KINDS.length]!, rollDice(seed));
      counts[marks.length]!++;
      for (const mark of marks) seen.add(mark);
    }
    // 0.25 and 0.5 of 4,000 draws; four standard errors are 0.03.
    expect(Math.abs(counts[0]! / 4000 - 0.25)).toBeLessThan(0.03);
    expect(Math.abs(counts[1]! / 4000 - 0.5)).toBeLessThan(0.032);
    expect(seen.size).toBe(RENDERED_MARKS.length);
  });
});

describe('pigments', () => {
  const hueOf = (chlorophyll: number): number => {
    const [, a, b] = convertLinearToLab(
      ...colourOfPigments({ chlorophyll, carotenoid: 1, anthocyanin: 0, brown: 0 }),
    );
    return measureHue(a, b);
  };

  it('go from leaf green to yellow without a step back as chlorophyll wanes', () => {
    const hues = [1.5, 1, 0.6, 0.3, 0.15, 0.08, 0.04, 0.02, 0].map(hueOf);
    expect(hues).toEqual([...hues].sort((a, b) => b - a));
    // Sound leaves of bean, chilli and papaya lie at 124 to 138, blackgram yellowed by mosaic at 91 to 109 (`../shared/photos`).
    expect(hueOf(1)).toBeGreaterThan(124);
    expect(hueOf(1)).toBeLessThan(138);
    expect(hueOf(0.02)).toBeLessThan(109);
    expect(hueOf(0)).toBeGreaterThan(88);
  });
});
