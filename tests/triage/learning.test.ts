import { describe, expect, it } from 'vitest';
import type { LessonCase } from '../../src/ranker/learn-lessons.ts';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';
import { learn, type TriageInput, type TriageResult, triage } from '../../src/triage.ts';

const TODAY = '2026-08-01';
const settled = (
  causes: CauseId[],
  date: string,
  crop: CropId = 'kale',
  more: Partial<LessonCase> = {},
): LessonCase => ({ id: `${causes.join()} ${date}`, causes, sureness: 0.9, date, crop, ...more });

const look: TriageInput = {
  photos: [],
  answers: { crop: 'kale', date: TODAY, setting: {}, signs: { stunted: 'seen', 'yellow-even@old': 'seen' } },
  today: TODAY,
  zone: 'north',
  draws: 40,
};
const chance = (result: TriageResult, id: CauseId): number =>
  result.causes.find((cause) => cause.id === id)!.probability;
const odds = (p: number): number => p / (1 - p);

const everyYear = [2023, 2024, 2025, 2026].map((year) => settled(['clubroot'], `${year}-06-10`));

describe('what a garden’s settled cases teach', () => {
  it('changes nothing while nothing is settled, or nothing but guesses', () => {
    const brief = { ...look, draws: 10 };
    const plain = triage(brief);
    expect(triage({ ...brief, garden: learn({ cases: [], today: TODAY, zone: 'north' }).counts })).toEqual(
      plain,
    );
    const guesses = [settled(['clubroot'], '2026-06-10', 'kale', { sureness: 0 })];
    expect(
      triage({ ...brief, garden: learn({ cases: guesses, today: TODAY, zone: 'north' }).counts }),
    ).toEqual(plain);
  });

  it('lets a cause that comes back every year rise visibly, and says so among the reasons', () => {
    const { counts } = learn({ cases: everyYear, today: TODAY, zone: 'north' });
    const plain = triage(look);
    const taught = triage({ ...look, garden: counts });
    expect(odds(chance(taught, 'clubroot')) / odds(chance(plain, 'clubroot'))).toBeGreaterThan(2);
    const clubroot = taught.causes.find(({ id }) => id === 'clubroot')!;
    const reason = clubroot.for.find(({ sign }) => sign === 'garden=settled')!;
    expect(reason.decibans).toBeGreaterThan(3);
    // The reasons still add up to the odds.
    const sum = [...clubroot.for, ...clubroot.against].reduce(
      (total, { decibans }) => total + decibans,
      clubroot.priorDecibans,
    );
    expect(sum).toBeCloseTo(10 * Math.log10(odds(clubroot.probability)), 6);
    expect(clubroot.low).toBeLessThanOrEqual(clubroot.probability);
    expect(clubroot.high).toBeGreaterThanOrEqual(clubroot.probability);
  });

  it('cannot overturn clear signs, however often another cause was met', () => {
    const cases = Array.from({ length: 30 }, (_, i) =>
      settled(['drought'], `2026-0${(i % 6) + 1}-1${i % 9}`),
    );
    const garden = learn({ cases, today: TODAY, zone: 'north' }).counts;
    const clear: TriageInput = {
      ...look,
      answers: {
        crop: 'kale',
        date: TODAY,
        setting: {},
        signs: { 'roots-swollen': 'seen', stunted: 'seen', 'recovers-overnight': 'seen' },
      },
      garden,
      draws: 1,
    };
    expect(triage({ ...clear, garden: {} }).causes[0]!.id).toBe('clubroot');
    expect(triage(clear).causes[0]!.id).toBe('clubroot');
  });

  it('forgets over the seasons', () => {
    const then = learn({ cases: everyYear, today: '2026-08-01', zone: 'north' });
    const later = learn({ cases: everyYear, today: '2036-08-01', zone: 'north' });
    const rate = (lessons: typeof then): number =>
      lessons.rates.find(({ cause }) => cause === 'clubroot')!.garden;
    const { table } = then.rates.find(({ cause }) => cause === 'clubroot')!;
    expect(rate(later) - table).toBeGreaterThan(0);
    expect(rate(later) - table).toBeLessThan((rate(then) - table) / 4);
  });

  it('lists each cause with its two rates and its cases, those met here first', () => {
    const lessons = learn({
      cases: [...everyYear, settled(['slugs-snails'], '2026-05-01')],
      today: TODAY,
      zone: 'north',
    });
    expect(lessons.teaching).toBe(5);
    expect(lessons.rates).toHaveLength(53);
    expect(lessons.rates.slice(0, 2).map(({ cause, cases }) => [cause, cases.length])).toEqual([
      ['clubroot', 4],
      ['slugs-snails', 1],
    ]);
    for (const { table, garden, cases } of lessons.rates) {
      if (cases.length === 0) expect(garden).toBeLessThanOrEqual(table * (1 + 1e-9));
    }
  });

  it('keeps score of first and last looks, against the table alone', () => {
    const judged = [
      settled(['aphids'], '2026-06-10', 'kale', {
        first: { aphids: 0.6, virus: 0.2 },
        last: { aphids: 0.9 },
      }),
      settled(['frost'], '2026-05-10', 'kale', { first: { frost: 0.5 } }),
      settled(['rust'], '2026-05-11', 'leek'),
    ];
    const { score } = learn({ cases: judged, today: TODAY, zone: 'north' });
    expect(score.first).toMatchObject({ cases: 2, first: 2 });
    expect(score.last).toMatchObject({ cases: 1, first: 1 });
    expect(score.first!.shown.logLoss).toBeLessThan(score.first!.tableAlone.logLoss);
  });

  it('turns the seasons with the zone', () => {
    const cases = [settled(['frost'], '2026-01-10')];
    const north = learn({ cases, today: TODAY, zone: 'north' }).counts.frost!;
    const south = learn({ cases, today: TODAY, zone: 'south' }).counts.frost!;
    // In midwinter frost is expected more, so meeting it says less of the garden.
    expect(north.outOf).toBeGreaterThan(south.outOf);
  });
});
