import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { runBothRuntimes } from '../../src/command/bench/both-runtimes.ts';
import { makeUpInput } from '../classifier/made-up-input.ts';

/** What PyTorch made of the made-up inputs, written by `training/signs-network/learn.py`. */
const CHECK = JSON.parse(
  readFileSync(new URL('../classifier/network-check.json', import.meta.url), 'utf8'),
) as { readonly logits: readonly number[]; readonly strangeness: number }[];

/** Largest difference over the largest value, or over 1 where all are smaller. */
function furthest(a: readonly number[], b: readonly number[]): number {
  expect(a.length).toBe(b.length);
  return Math.max(...a.map((value, k) => Math.abs(value - b[k]!))) / Math.max(1, ...b.map(Math.abs));
}

it('runs the network in Chromium on both runtimes as PyTorch ran it, to 1e-4', async () => {
  const ran = await runBothRuntimes(
    4804,
    CHECK.map((_, k) => makeUpInput(k)),
    0,
  );
  expect(ran.length).toBe(CHECK.length);
  ran.forEach(({ app, other }, k) => {
    const { logits, strangeness } = CHECK[k]!;
    for (const { outputs } of [app, other]) {
      expect(furthest(outputs[0]!, logits)).toBeLessThan(1e-4);
      expect(furthest(outputs[2]!, [strangeness])).toBeLessThan(1e-3);
    }
    expect(furthest(app.outputs[0]!, other.outputs[0]!)).toBeLessThan(1e-4);
    expect(furthest(app.outputs[1]!, other.outputs[1]!)).toBeLessThan(1e-4);
  });
});
