import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { triage } from '../../src/triage.ts';

const README = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');

/** "+13.3", "−1.8": as the table writes it. */
const inTable = (decibans: number): string => `${decibans < 0 ? '−' : '+'}${Math.abs(decibans).toFixed(1)}`;

it('the case by hand in the README is what the code computes, reason by reason', () => {
  const { causes, verdict } = triage({
    photos: [],
    answers: {
      crop: 'kale',
      date: '2026-06-18',
      setting: { 'wood-in-root-zone': true },
      signs: { 'yellow-even@old': 'seen', stunted: 'seen', aphids: 'absent' },
    },
    today: '2026-06-18',
  });
  const [first] = causes;
  expect(first?.id).toBe('nitrogen-locked');
  const reasons = new Map([...first!.for, ...first!.against].map(({ sign, decibans }) => [sign, decibans]));
  const rows: readonly [string, number][] = [
    ['how often it is met at all', first!.priorDecibans],
    ['wood in the root zone', reasons.get('wood-in-root-zone=yes')!],
    ['old leaves yellow all over', reasons.get('yellow-even@old')!],
    ['much smaller than its neighbours', reasons.get('stunted')!],
    ['no aphids', reasons.get('aphids')!],
    ['the crop is kale', reasons.get('crop=kale')!],
    ['it is summer', reasons.get('season=summer')!],
  ];
  expect(rows.length).toBe(reasons.size + 1);
  for (const [name, decibans] of rows) expect(README).toContain(`| ${name} | ${inTable(decibans)} |`);
  const sum = rows.reduce((all, [, decibans]) => all + decibans, 0);
  expect(README).toContain(`| sum | ${inTable(sum)} |`);
  expect(first!.probability).toBeCloseTo(1 / (1 + 10 ** (-sum / 10)), 9);
  expect(README).toContain(
    `about ${Math.round(first!.probability * 10)} in 10 gardens with these signs. Drawing the tables anew gives ${Math.round(first!.low * 10)} to ${Math.round(first!.high * 10)}.`,
  );
  expect(verdict).toMatchObject({ id: 'watch', lookAgain: '2026-07-02' });
});
