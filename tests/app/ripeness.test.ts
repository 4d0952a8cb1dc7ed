import { describe, expect, it } from 'vitest';
import { putRipeness, ripenessFrom, withoutRipeness } from '../../src/app/state/ripeness.ts';
import { sayRipeness, sayTest } from '../../src/app/words/ripeness.ts';
import { verdictOfExtract } from '../../src/compare/pot-test/judge-maturity.ts';
import { heapNow } from '../../src/garden/heap-now.ts';
import { conflictsIn, mergeRecords } from '../../src/garden/merge-records.ts';
import type { RipenessTest } from '../../src/garden/ripeness-test.ts';
import { sownIn } from '../../src/garden/settle-pot-test.ts';
import { stampChanges } from '../../src/garden/stamp-changes.ts';
import { garden, record } from '../garden/small-garden.ts';

const TODAY = '2026-06-01';
const made = (how: RipenessTest['how'], typed: Record<string, string>): RipenessTest => {
  const test = ripenessFrom(how, { date: TODAY, ...typed }, TODAY, how);
  if (typeof test === 'string') throw new Error(test);
  return test;
};
/** Cool twice, after its heat: finished by its thermometer. */
const heap = record('batch', 'heap', {
  name: 'Heap',
  what: 'own-compost',
  readings: [
    { id: '1', date: '2026-04-01', celsius: 60, airCelsius: 10 },
    { id: '2', date: '2026-05-10', celsius: 16, airCelsius: 12 },
    { id: '3', date: '2026-05-25', celsius: 17, airCelsius: 14 },
  ],
});

describe('home tests of ripeness', () => {
  it('are judged by the published limits: 15 of 20 radishes (UF-SARASOTA), 10 and 20 degrees (CCQC-2001), 70 % in water (OECD-208)', () => {
    expect(made('radish-pots', { sown: '20', grown: '15' }).said).toBe('passed');
    expect(made('radish-pots', { sown: '20', grown: '14' }).said).toBe('failed');
    expect(made('self-heating', { riseCelsius: '20' }).said).toBe('passed');
    expect(made('self-heating', { riseCelsius: '20,5' }).said).toBe('failed');
    const extract = (grown: string, waterGrown: string, roots = {}) =>
      made('water-extract', { sown: '15', grown, waterSown: '15', waterGrown, ...roots }).said;
    expect(extract('14', '14')).toBe('passed');
    expect(extract('3', '14')).toBe('failed');
    expect(extract('14', '10')).toBe('invalid');
    // Zucconi: 80 % by 60 % is 48, poisonous; as many sprout, but with half the root it lies between.
    expect(extract('12', '15', { rootMm: '12', waterRootMm: '20' })).toBe('failed');
    expect(extract('15', '15', { rootMm: '13', waterRootMm: '20' })).toBe('unclear');
    expect(verdictOfExtract({ share: 0.75, harmed: 0.4 })).toBe('unclear');
  });

  it('say what is missing or cannot be', () => {
    expect(ripenessFrom('radish-pots', { sown: '20' }, TODAY)).toBe('missing');
    expect(ripenessFrom('radish-pots', { sown: '5', grown: '9' }, TODAY)).toBe('more-up');
    expect(ripenessFrom('radish-pots', { sown: '0', grown: '0' }, TODAY)).toBe('bad-count');
    expect(ripenessFrom('self-heating', {}, TODAY)).toBe('missing');
  });

  it('hold the word for the heap back where seeds fare badly, and free nothing where they fare well', () => {
    expect(heapNow(garden(heap), heap, TODAY).state).toBe('finished');
    const failed = putRipeness(heap, made('radish-pots', { sown: '20', grown: '6' }));
    expect(sownIn(garden(failed), 'heap', TODAY)).toBe('failed');
    expect(heapNow(garden(failed), failed, TODAY)).toMatchObject({
      state: 'ripening',
      why: 'seeds-fared-badly',
    });
    // Before that day nothing was known; a flask says nothing of seeds; the newest sowing counts.
    expect(sownIn(garden(failed), 'heap', '2026-05-31')).toBeUndefined();
    const flask = putRipeness(heap, made('self-heating', { riseCelsius: '30' }));
    expect(sownIn(garden(flask), 'heap', TODAY)).toBeUndefined();
    const since = putRipeness(failed, {
      ...made('water-extract', { sown: '15', grown: '15', waterSown: '15', waterGrown: '15' }),
      date: '2026-06-20',
    });
    expect(sownIn(garden(since), 'heap', '2026-06-21')).toBe('passed');
    expect(withoutRipeness(since, 'water-extract').ripeness?.length).toBe(1);
  });

  it('are merged one by one: two devices can each add one', () => {
    const first = stampChanges(undefined, heap, '2026-06-01T00:00:00.000Z', 'phone');
    const add = (test: RipenessTest, device: string) =>
      stampChanges(first, putRipeness(first, test), '2026-06-02T00:00:00.000Z', device);
    const one = add(made('radish-pots', { sown: '20', grown: '6' }), 'phone');
    const other = add(made('self-heating', { riseCelsius: '4' }), 'desk');
    const merged = mergeRecords(one, other);
    expect(merged).toMatchObject({ ripeness: [{ how: 'radish-pots' }, { how: 'self-heating' }] });
    expect(conflictsIn(merged)).toEqual([]);
    expect(mergeRecords(other, one)).toEqual(merged);
  });

  it('say what came out, how sure that is, and what is known against such tests (GERM-COMP)', () => {
    const radish = made('radish-pots', { sown: '20', grown: '14' });
    expect(sayTest(radish)).toBe('Radishes in it, Monday 1 June 2026: 14 of 20 up and growing');
    expect(sayRipeness(radish)[0]).toBe('Fewer than three in four grew on: not ready yet.');
    for (const test of [
      radish,
      made('water-extract', { sown: '15', grown: '12', waterSown: '15', waterGrown: '15' }),
    ])
      expect(sayRipeness(test).join(' ')).toMatch(/not sensitive enough/);
    expect(sayRipeness(made('self-heating', { riseCelsius: '12' })).join(' ')).toMatch(/too dry/);
  });
});
