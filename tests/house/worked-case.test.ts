import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from '../../src/causes/leaks.ts';
import { compileKnowledge } from '../../src/ranker/knowledge-model.ts';
import { SETTINGS } from '../../src/signs/settings.ts';
import type { Answers } from '../../src/signs/types.ts';
import { workOutLeanings } from '../../src/signs/work-out-leanings.ts';
import { triage } from '../../src/triage.ts';

const README = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');

/** "+13.3", "−1.8": as the table writes it. */
const inTable = (decibans: number): string => `${decibans < 0 ? '−' : '+'}${Math.abs(decibans).toFixed(1)}`;

const ANSWERS: Answers = {
  crop: 'kale',
  date: '2026-06-18',
  setting: { 'wood-in-root-zone': true },
  signs: { 'yellow-even@old': 'seen', stunted: 'seen', aphids: 'absent' },
};

it('the case by hand in the README is what the code computes, reason by reason', () => {
  const { causes, verdict } = triage({
    photos: [],
    answers: ANSWERS,
    today: '2026-06-18',
    zone: 'north',
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

it('the row that is worked out there comes from the share of beds with wood in them, by hand', () => {
  const leanings = workOutLeanings(ANSWERS, { zone: 'north' }).get('wood-in-root-zone')!;
  const [yes, no] = leanings.find(({ cause }) => cause === 'nitrogen-locked')!.odds;
  const atLarge = SETTINGS['wood-in-root-zone'].rate;
  // By the odds as they stand, made a share again.
  const locked = (yes! * atLarge) / (yes! * atLarge + no! * (1 - atLarge));
  const ratio = locked / atLarge;
  const decibans = 10 * Math.log10(ratio);
  const power = compileKnowledge(KNOWLEDGE, leakOf, UNLISTED_Q).network.evidenceWeight.setting;
  expect(README).toContain(
    `into ${(atLarge * 100).toFixed(0)} of 100 beds at large, and into ${(locked * 100).toFixed(0)} of 100`,
  );
  expect(README).toContain(`is ${ratio.toFixed(1)} to 1, or ${decibans.toFixed(1)} decibans`);
  expect(README).toContain(`power of ${power}`);
  expect(README).toContain(`| wood in the root zone | ${inTable(decibans * power)} |`);
});

it('and without the wood it is as rare as the README says, and plain hunger leads', () => {
  const { causes } = triage({
    photos: [],
    answers: { ...ANSWERS, setting: {} },
    today: '2026-06-18',
    zone: 'north',
  });
  expect(causes[0]?.id).toBe('nitrogen-short');
  const locked = causes.find(({ id }) => id === 'nitrogen-locked')!.probability;
  expect(README).toContain(`Without the wood it would be ${Math.round(locked * 10)} in 10`);
});
