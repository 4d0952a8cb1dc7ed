import { describe, expect, it } from 'vitest';
import { lessonsOf, teachingCases } from '../../src/app/state/learning.ts';
import { describeOutcomeDetails, LOST, OUTCOME_WORDS, sayEnd } from '../../src/app/words/outcome.ts';
import { describeReason } from '../../src/app/words/reasons.ts';
import {
  describeScore,
  perThousand,
  sayBin,
  sayCameTrue,
  sayGardenRate,
  TAUGHT_WORDS,
} from '../../src/app/words/taught.ts';
import type { Zone } from '../../src/days/growing-year.ts';
import { type Outcome, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import type { Settled } from '../../src/garden/settle-case.ts';
import type { GardenScore } from '../../src/ranker/learn-score.ts';

const outcome: Outcome = {
  settledOn: '2026-07-02',
  settledAt: '2026-07-02T09:00:00.000Z',
  causes: ['clubroot'],
  sureness: 'seen',
  lost: 'tenth',
  done: '',
  first: { date: '2026-06-01', chances: { clubroot: 0.4 } },
};
const settled = (more: Partial<Settled> = {}): Settled => ({
  kind: 'case',
  id: 'a',
  schema: RECORDS_SCHEMA,
  changedAt: outcome.settledAt,
  bed: 'Long bed',
  plant: 'third kale',
  crop: 'kale',
  openedOn: '2026-06-01',
  closedOn: '2026-07-02',
  looks: [],
  outcome,
  ...more,
});

describe('what goes from the book to the ranker', () => {
  it('is the end, how sure, when it began, and what was shown', () => {
    expect(lessonsOf([settled()], 'north')[0]).toMatchObject({
      id: 'a',
      causes: ['clubroot'],
      sureness: 0.9,
      date: '2026-06-01',
      crop: 'kale',
      first: { clubroot: 0.4 },
    });
    expect(lessonsOf([settled()], 'north')[0]).not.toHaveProperty('last');
  });

  it('is one outbreak over New Year in the south and where no winter comes, as the place has it', () => {
    const days = ['2025-12-28', '2026-01-03'];
    const outbreaks = (zone: Zone): number => {
      const lessons = lessonsOf(
        days.map((openedOn) => settled({ id: openedOn, openedOn })),
        zone,
      );
      return new Set(lessons.map(({ outbreak }) => outbreak)).size;
    };
    expect([outbreaks('north'), outbreaks('south'), outbreaks('tropics')]).toEqual([2, 1, 1]);
  });

  it('weighs a guess and an unknown word nothing, and leaves causes of another version out', () => {
    for (const sureness of ['guess', '', 'sworn', 'toString'])
      expect(lessonsOf([settled({ outcome: { ...outcome, sureness } })], 'north')[0]!.sureness).toBe(0);
    const odd = settled({ outcome: { ...outcome, causes: ['clubroot', 'moon-phase'] } });
    expect(lessonsOf([odd], 'north')[0]!.causes).toEqual(['clubroot']);
  });

  it('is only what was said after the last reset', () => {
    const cases = [
      settled(),
      settled({ id: 'b', outcome: { ...outcome, settledAt: '2026-08-01T09:00:00.000Z' } }),
    ];
    const ids = (since: string | undefined): string =>
      teachingCases(cases, since)
        .map(({ id }) => id)
        .join('');
    expect(ids(undefined)).toBe('ab');
    expect(ids(outcome.settledAt)).toBe('b');
    expect(ids('2026-08-02T00:00:00.000Z')).toBe('');
  });
});

describe('an end in words', () => {
  it('names what it was, how that is known and what was lost', () => {
    expect(sayEnd(outcome)).toBe('Clubroot');
    expect(sayEnd({ ...outcome, causes: ['aphids', 'virus'] })).toBe('Aphids and virus');
    expect(sayEnd({ ...outcome, causes: [] })).toBe('Never found out');
    expect(sayEnd({ ...outcome, causes: ['unlisted'] })).toBe('Something not in this list');
    expect(describeOutcomeDetails(outcome)).toBe('I saw it myself. Lost of the crop: up to a tenth.');
    expect(describeOutcomeDetails({ ...outcome, sureness: '', lost: '' })).toBe('');
    for (const lost of LOST) expect(OUTCOME_WORDS.lostWords[lost]).not.toBe('');
  });

  it('is a reason among the others', () => {
    const reported = { answers: { signs: {} }, findings: [] };
    const says = (decibans: number): string =>
      describeReason({ sign: 'garden=settled', decibans, from: ['eye'] }, reported).says;
    expect(says(3)).toBe('met in this garden more often than usual');
    expect(says(-1)).toBe('met in this garden less often than usual');
    expect(describeReason({ sign: 'garden=settled', decibans: 3, from: ['eye'] }, reported)).toMatchObject({
      by: 'your settled cases',
      kind: 'circumstance',
    });
  });
});

describe('what a garden has taught, in words', () => {
  const score = (more: Partial<GardenScore> = {}): GardenScore => ({
    cases: 7,
    first: 5,
    inFirstThree: 6,
    shown: { brier: 0.4, logLoss: 1.25 },
    tableAlone: { brier: 0.9, logLoss: 4.5 },
    reliability: [],
    ...more,
  });

  it('gives rates in plants of a thousand', () => {
    expect(perThousand(0.012)).toBe('12');
    expect(perThousand(0.003)).toBe('3');
    expect(perThousand(0.0031)).toBe('3.1');
    expect(perThousand(0.0999)).toBe('100');
  });

  it('gives the range of a rate, and none where it would say one number twice', () => {
    expect(sayGardenRate({ garden: 0.02, low: 0.008, high: 0.034 })).toBe('20 (8 to 34)');
    expect(sayGardenRate({ garden: 0.0031, low: 0.0031, high: 0.0031 })).toBe('3.1');
  });

  it('counts in whole sentences', () => {
    expect(TAUGHT_WORDS.lead(1)).toMatch(/^1 settled case counts /);
    expect(TAUGHT_WORDS.lead(3)).toMatch(/^3 settled cases count /);
    expect(TAUGHT_WORDS.tooFew(0)).toContain('none of at least 5');
    const bin = { from: 0.2, to: 0.4, count: 4, meanProbability: 0.3, cameTrue: 0.25 };
    expect(sayBin(bin)).toBe('2 to 4 in 10');
    expect(sayBin({ ...bin, from: 0, to: 0.2 })).toBe('up to 2 in 10');
    expect(sayCameTrue(bin)).toBe('1 of 4');
  });

  it('says how well it did, also when that is badly', () => {
    const [led, numbers] = describeScore(score(), undefined);
    expect(led).toContain('led the weighing in 5 of 7 cases');
    expect(led).toContain('among the first three in 6 of 7');
    expect(numbers).toContain('Brier score 0.40, log loss 1.25');
    expect(numbers).toContain('the looks were worth it');
    const bad = score({ shown: { brier: 1, logLoss: 5 } });
    expect(describeScore(bad, undefined).at(-1)).toContain('told less than that');
    const mixed = score({ shown: { brier: 1, logLoss: 4 } });
    expect(describeScore(mixed, undefined).at(-1)).toContain('about as much');
    expect(describeScore(score(), score({ cases: 1, first: 1 }))[1]).toContain(
      '1 case; at the last look it led in 1 of 1',
    );
  });
});
