import { describe, expect, it } from 'vitest';
import { readPotTest } from '../../src/compare/pot-test/read-pot-test.ts';
import type { BatchRecord, PotTestRecord } from '../../src/garden/ground-records.ts';
import { potScoreId } from '../../src/garden/ground-records.ts';
import { heapNow } from '../../src/garden/heap-now.ts';
import { listToday } from '../../src/garden/list-today.ts';
import { conflictsIn, mergeRecords } from '../../src/garden/merge-records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import {
  batchAfterPotTest,
  injuryRatioOf,
  potTestsOfBed,
  sownIn,
  testedLoadsUnder,
} from '../../src/garden/settle-pot-test.ts';
import { stampChanges } from '../../src/garden/stamp-changes.ts';
import { batchesToSpread, isSuspected } from '../../src/garden/trace-batches.ts';
import { settingsFromRecords, withoutOverruled } from '../../src/signs/settings-from-records.ts';
import { garden, record } from './small-garden.ts';

const NOW = '2026-05-01T08:00:00.000Z';
const pots = [0, 1, 2, 3, 4, 5].map((at) => ({
  id: `p${at}`,
  label: 'ABCDEF'[at],
  role: at % 2 ? 'control' : 'test',
  seeds: 3,
}));
const score = (potId: string, date: string, more: object = {}) => ({
  id: potScoreId(date, potId),
  date,
  potId,
  emerged: 3,
  photos: [],
  ...more,
});
const potTest = (id: string, more: object = {}): PotTestRecord =>
  record('pot-test', id, {
    batchId: 'm',
    question: 'residue',
    crop: 'pea',
    sownOn: '2026-04-01',
    pots,
    ...more,
  });
const said = (verdict: string, injuryRatio?: number, on = '2026-04-25') => ({
  said: { verdict, on, why: ['injury'], ...(injuryRatio === undefined ? {} : { injuryRatio }) },
});
const load = (more: object = {}): BatchRecord =>
  record('batch', 'm', {
    name: 'Stable heap',
    what: 'horse-manure',
    given: [{ id: 'g', date: '2026-04-02', bedId: 'long' }],
    ...more,
  });
const suspected = { suspicion: { state: 'suspected', on: '2026-03-30', why: 'curled beans', caseId: 'c' } };

describe('a pot test as a record', () => {
  it('is what the reading takes, without another step', () => {
    const date = '2026-04-25';
    const scores = pots.map(({ id, role }, at) =>
      score(id, date, {
        injury: role === 'test' ? 40 : 0,
        heightMm: 120 + at,
        leafSets: 3,
        photos: [`ph${at}`],
      }),
    );
    const read = readPotTest(potTest('t', { scores }));
    expect(read.verdict).toBe('do-not-spread');
  });

  it('is made whole, and left out where batch or day are missing', () => {
    expect(repairRecord({ kind: 'pot-test', id: 't', sownOn: '2026-04-01' })).toBeUndefined();
    expect(repairRecord({ kind: 'pot-test', id: 't', batchId: 'm', sownOn: '2026-02-30' })).toBeUndefined();
    const found = potTest('t', {
      question: 'why',
      pots: [...pots, pots[0], { id: 'x', seeds: 3 }, { id: 'y', role: 'test', seeds: 0 }, 7],
      scores: [
        score('p1', '2026-04-20', { injury: 140, heightMm: -3 }),
        score('p0', '2026-04-12'),
        { id: 'z', date: '2026-04-12', potId: 'p0' },
        null,
      ],
      said: { verdict: 'perhaps', on: '2026-04-20' },
    });
    expect(found.question).toBe('residue');
    expect(found.pots).toEqual(pots);
    expect(found.scores.map(({ id }) => id)).toEqual(['2026-04-12 p0', '2026-04-20 p1']);
    expect(found.scores[1]).toEqual({
      id: '2026-04-20 p1',
      date: '2026-04-20',
      potId: 'p1',
      emerged: 3,
      photos: [],
    });
    expect(found.said).toBeUndefined();
    expect(repairRecord(JSON.parse(JSON.stringify(found)))).toEqual(found);
  });

  it('takes two devices’ scores together, and shows where they scored one pot differently', () => {
    const made = stampChanges(undefined, potTest('t'), '2026-04-01T08:00:00.000Z', 'phone');
    const on = (device: string, ...scores: ReturnType<typeof score>[]) =>
      stampChanges(made, { ...made, scores }, '2026-04-20T08:00:00.000Z', device);
    const phone = on('phone', score('p0', '2026-04-20', { injury: 20 }), score('p2', '2026-04-20'));
    const desk = on('desk', score('p0', '2026-04-20', { injury: 40 }), score('p3', '2026-04-20'));
    const merged = mergeRecords(phone, desk) as PotTestRecord;
    expect(merged.scores.map(({ potId }) => potId).sort()).toEqual(['p0', 'p2', 'p3']);
    expect(conflictsIn(merged).map(({ path }) => path)).toEqual(['scores/2026-04-20 p0']);
    expect(mergeRecords(desk, phone)).toEqual(merged);
  });
});

describe('what a pot test does to its batch', () => {
  const test = (id: string, more: object): PotTestRecord => potTest(id, more);
  it('puts it aside, and names the test', () => {
    const bad = test('t', said('do-not-spread', 400));
    const after = batchAfterPotTest(load(), bad, [bad], 'pots twisted', NOW);
    expect(after.suspicion).toEqual({
      state: 'suspected',
      on: '2026-04-25',
      why: '',
      potTestId: 't',
      potTestSays: 'pots twisted',
    });
    expect(batchesToSpread(garden(after))).toEqual([]);
    expect(repairRecord(JSON.parse(JSON.stringify(after)))).toEqual(after);
  });
  it('adds to what the grower held against it: the earlier day, the words and the case stay', () => {
    const bad = test('t', said('do-not-spread', 400));
    const after = batchAfterPotTest(load(suspected), bad, [bad], 'pots twisted', NOW);
    expect(after.suspicion).toEqual({
      ...suspected.suspicion,
      potTestId: 't',
      potTestSays: 'pots twisted',
    });
    // Read again after a correction, the test's new sentence takes the place of its old one, and of nothing else.
    const again = batchAfterPotTest(after, bad, [bad], 'pots twisted and small', NOW);
    expect(again.suspicion).toEqual({ ...after.suspicion, potTestSays: 'pots twisted and small' });
    // A day after the test's, or none, gives way to it.
    for (const on of ['2026-05-02', '']) {
      const later = load({ suspicion: { ...suspected.suspicion, on } });
      expect(batchAfterPotTest(later, bad, [bad], 'x', NOW).suspicion?.on).toBe('2026-04-25');
    }
    // What was released before and is stopped now is suspected since the test.
    const released = load({ suspicion: { ...suspected.suspicion, state: 'released' } });
    expect(batchAfterPotTest(released, bad, [bad], 'x', NOW).suspicion).toEqual({
      state: 'suspected',
      on: '2026-04-25',
      why: '',
      caseId: 'c',
      potTestId: 't',
      potTestSays: 'x',
    });
    // As earlier versions kept it, the sentence stood as the reason.
    const old = load({ suspicion: { state: 'suspected', on: '2026-04-25', why: 'x', potTestId: 't' } });
    expect(batchAfterPotTest(old, bad, [bad], 'x', NOW).suspicion).toMatchObject({
      why: '',
      potTestSays: 'x',
    });
  });
  it('frees it where the test clears it, and only then', () => {
    const good = test('t', said('safe-enough', 0.005));
    const after = batchAfterPotTest(load(suspected), good, [good], 'pots clean', NOW);
    expect(after.suspicion).toEqual({
      state: 'released',
      on: '2026-04-25',
      why: 'pots clean',
      caseId: 'c',
      potTestId: 't',
    });
    expect(batchAfterPotTest(load(), good, [good], 'x', NOW)).toEqual(load());
    for (const verdict of ['go-on', 'invalid']) {
      const open = test('t', said(verdict, 0.001));
      expect(isSuspected(batchAfterPotTest(load(suspected), open, [open], 'x', NOW))).toBe(true);
    }
    const other = test('t', { ...said('safe-enough', 0.005), batchId: 'other' });
    expect(isSuspected(batchAfterPotTest(load(suspected), other, [other], 'x', NOW))).toBe(true);
  });
  it('weighs a new test against an older one that stopped the load; void ones count for nothing', () => {
    const bad = test('old', said('do-not-spread', 400, '2026-03-20'));
    const good = test('new', said('safe-enough', 0.005));
    const clean = test('newer', said('safe-enough', 0.005, '2026-05-25'));
    const spoilt = test('void', said('invalid', 1e6));
    expect(injuryRatioOf([bad, good, spoilt], 'm')).toBeCloseTo(2, 10);
    expect(isSuspected(batchAfterPotTest(load(suspected), good, [bad, good], 'x', NOW))).toBe(true);
    expect(isSuspected(batchAfterPotTest(load(suspected), clean, [bad, good, clean], 'x', NOW))).toBe(false);
  });
  it('of ripeness holds the heap back, but does not put it aside', () => {
    const raw = test('r', { question: 'ripeness', ...said('do-not-spread') });
    expect(batchAfterPotTest(load(), raw, [raw], 'x', NOW)).toEqual(load());
    const cool = [
      { id: 'a', date: '2026-02-01', celsius: 60 },
      { id: 'b', date: '2026-04-10', celsius: 14, airCelsius: 12 },
      { id: 'c', date: '2026-04-20', celsius: 14, airCelsius: 12 },
    ];
    const heap = load({ readings: cool });
    expect(heapNow(garden(heap), heap, '2026-04-25').state).toBe('finished');
    expect(heapNow(garden(heap, raw), heap, '2026-04-25')).toMatchObject({
      state: 'ripening',
      why: 'seeds-fared-badly',
    });
    expect(heapNow(garden(heap, raw), heap, '2026-04-24').state).toBe('finished');
    const ripe = test('s', { question: 'ripeness', ...said('safe-enough', undefined, '2026-06-01') });
    expect(sownIn(garden(raw, ripe), 'm', '2026-06-02')).toBe('passed');
    expect(heapNow(garden(heap, raw, ripe), heap, '2026-06-02').state).toBe('finished');
  });
});

describe('where a pot test shows', () => {
  const bed = record('bed', 'long', { name: 'Long bed', order: 1 });
  it('on today’s path while it runs', () => {
    const due = (more: object) =>
      listToday(
        garden(bed, load(), potTest('t', { lookOn: '2026-04-13', ...more })),
        '2026-04-14',
        () => undefined,
      );
    expect(due({})).toMatchObject([
      { what: 'pot-test', id: 'pots-t', due: '2026-04-13', batch: { id: 'm' } },
    ]);
    expect(due({ lookOn: '2026-04-20' })).toEqual([]);
    expect(due({ endedOn: '2026-04-14' })).toEqual([]);
    expect(due({ deletedAt: NOW })).toEqual([]);
  });
  it('in the year of each bed that got the load, and in what a look there knows', () => {
    const all = garden(
      bed,
      record('bed', 'other', { name: 'Other' }),
      load(),
      potTest('t', said('do-not-spread', 50)),
    );
    expect(potTestsOfBed(all, 'long').map(({ what, date }) => [what, date])).toEqual([
      ['pots-sown', '2026-04-01'],
      ['pots-told', '2026-04-25'],
    ]);
    expect(potTestsOfBed(all, 'other')).toEqual([]);
    expect(testedLoadsUnder(all, { bedId: 'long' }, '2026-04-30')).toMatchObject([
      { batch: { id: 'm' }, ratio: 50 },
    ]);
    expect(testedLoadsUnder(all, { bedId: 'long' }, '2026-04-20')).toEqual([]);
    expect(testedLoadsUnder(all, { bedId: 'other' })).toEqual([]);
    const found = settingsFromRecords(all, { bedId: 'long', date: '2026-04-30', zone: 'north' });
    expect(found.potTests).toEqual([50]);
    expect(
      settingsFromRecords(all, { bedId: 'other', date: '2026-04-30', zone: 'north' }).potTests,
    ).toBeUndefined();
    // Who denies the load denies what its pots said.
    expect(withoutOverruled(found, ['compost-kinds']).potTests).toBeUndefined();
    expect(withoutOverruled(found, ['netted']).potTests).toEqual([50]);
  });
});
