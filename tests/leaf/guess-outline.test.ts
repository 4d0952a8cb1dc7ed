import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runNetwork } from '../../src/leaf/guess-outline.ts';

describe('the outline network', () => {
  it('gives what the trained network gave', () => {
    const check = JSON.parse(
      readFileSync(new URL('./outline-network-check.json', import.meta.url), 'utf8'),
    ) as { width: number; height: number; input: number[]; output: number[] };
    const found = runNetwork({
      width: check.width,
      height: check.height,
      channels: 5,
      data: Float32Array.from(check.input),
    });
    expect(found.length).toBe(check.output.length);
    const off = found.map((v, i) => Math.abs(v - check.output[i]!));
    const largest = Math.max(...check.output.map(Math.abs));
    expect(largest).toBeGreaterThan(1);
    // PyTorch multiplies in TF32 on the card, with ten bits of mantissa.
    expect(Math.max(...off)).toBeLessThan(0.03 * largest);
  });
});
