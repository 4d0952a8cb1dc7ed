import { describe, expect, it } from 'vitest';
import { MARK_SCALES, NETWORK_MARKS, STRANGE } from '../../src/classifier/calibration.ts';
import { findingsFromNetwork, reportsOf } from '../../src/classifier/findings-from-network.ts';
import type { MarkScale } from '../../src/classifier/mark-scale.ts';
import type { NetworkAnswer } from '../../src/classifier/types.ts';

const SCALES: readonly MarkScale[] = [
  { mark: 'white-powder', on: true, slope: 0.5, most: 6 },
  { mark: 'mottled', on: false, slope: 1, most: 6 },
];
const answerWith = (z: number, changes: Partial<NetworkAnswer> = {}): NetworkAnswer => ({
  logits: NETWORK_MARKS.map(() => z),
  strangeness: 0.5 * STRANGE,
  features: [],
  ...changes,
});

describe('what the network reports', () => {
  it('turns log odds into a ratio by their temperature, held to its most', () => {
    expect(reportsOf(answerWith(2), SCALES)).toEqual([
      { mark: 'white-powder', ratio: Math.E, chance: Math.E / (1 + Math.E) },
    ]);
    expect(reportsOf(answerWith(40), SCALES)[0]!.ratio).toBe(6);
    expect(reportsOf(answerWith(-40), SCALES)[0]!.ratio).toBeCloseTo(1 / 6);
  });

  it('keeps silent on what is unlike all that was taught and on numbers that are none', () => {
    expect(reportsOf(answerWith(4, { strangeness: 1.01 * STRANGE }), SCALES)).toEqual([]);
    expect(reportsOf(answerWith(4, { strangeness: Number.NaN }), SCALES)).toEqual([]);
    expect(reportsOf(answerWith(Number.NaN), SCALES)).toEqual([]);
  });

  it('reports nothing of a leaf that was taken for comparison', () => {
    expect(findingsFromNetwork(answerWith(9), 'normal')).toEqual([]);
  });

  it('makes findings of the marks that the scales handed in switch on', () => {
    const [finding, ...more] = findingsFromNetwork(answerWith(2), 'whole', SCALES);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ sign: 'white-powder@some', from: 'network' });
    expect(finding!.ifPresent / finding!.ifAbsent).toBeCloseTo(Math.E, 9);
  });

  it('speaks of the position that the leaf was taken at, and only of marks that are switched on', () => {
    const on = MARK_SCALES.filter((scale) => scale.on).map(({ mark }) => mark);
    const signsAt = (role: 'new' | 'whole') =>
      findingsFromNetwork(answerWith(9), role).map(({ sign }) => sign);
    expect(signsAt('new')).toEqual(on.map((mark) => `${mark}@new`));
    expect(signsAt('whole')).toEqual(on.map((mark) => `${mark}@some`));
  });
});
