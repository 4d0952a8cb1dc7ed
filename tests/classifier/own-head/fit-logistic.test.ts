import { memory } from '@tensorflow/tfjs-core';
import { describe, expect, it } from 'vitest';
import type { LogisticFits } from '../../../src/classifier/own-head/logistic-fits.ts';
import { fitLogistic } from '../../../src/classifier/session/fit-logistic.ts';
import asked from './references/logistic-fits.json' with { type: 'json' };

const PROBLEM: LogisticFits = {
  fits: asked.inputs.length,
  rows: asked.labels.length,
  columns: asked.inputs[0]![0]!.length,
  inputs: Float32Array.from(asked.inputs.flat(2)),
  offsets: Float32Array.from(asked.offsets.flat()),
  labels: Float32Array.from(asked.labels),
  counts: Float32Array.from(asked.counts.flat()),
};

const quiet = (): void => {};

describe('fitting logistic regressions', () => {
  it('finds what general libraries find, to 1e-3, several at once', async () => {
    const found = [...(await fitLogistic(PROBLEM, quiet))];
    const wanted = asked.coefficients.flat();
    expect(found.length).toBe(wanted.length);
    expect(Math.max(...wanted.map((value, k) => Math.abs(value - found[k]!)))).toBeLessThan(1e-3);
    expect(Math.max(...wanted.map(Math.abs))).toBeGreaterThan(0.5);
  });

  it('gives the same numbers every time and leaves no memory behind', async () => {
    const once = await fitLogistic(PROBLEM, quiet);
    const before = memory().numTensors;
    expect([...(await fitLogistic(PROBLEM, quiet))]).toEqual([...once]);
    expect(memory().numTensors).toBe(before);
  });

  it('tells how far it has come, from little to all', async () => {
    const shares: number[] = [];
    await fitLogistic(PROBLEM, (share) => void shares.push(share));
    expect(shares.length).toBeGreaterThan(2);
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });

  it('stops where the one who hears of its progress wants no more, and leaves no memory behind', async () => {
    const before = memory().numTensors;
    const shares: number[] = [];
    const fitting = fitLogistic(PROBLEM, (share) => {
      shares.push(share);
      if (shares.length === 2) throw new Error('enough');
    });
    await expect(fitting).rejects.toThrow('enough');
    expect(shares.length).toBe(2);
    expect(memory().numTensors).toBe(before);
  });

  it('throws on numbers that are none instead of giving some back', async () => {
    const broken = { ...PROBLEM, inputs: PROBLEM.inputs.map(() => Number.NaN) };
    await expect(fitLogistic(broken, quiet)).rejects.toThrow();
  });
});
