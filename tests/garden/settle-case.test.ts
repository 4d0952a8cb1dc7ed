import { describe, expect, it } from 'vitest';
import type { Zone } from '../../src/days/growing-year.ts';
import { type CaseRecord, type LookRecord, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import {
  outbreaksOf,
  type Settled,
  settleCase,
  settledCases,
  shownAtLooks,
} from '../../src/garden/settle-case.ts';

const NOW = '2026-07-02T09:00:00.000Z';
const LATER = '2026-07-09T09:00:00.000Z';
const kept: CaseRecord = {
  kind: 'case',
  id: 'a',
  schema: RECORDS_SCHEMA,
  changedAt: '2026-06-01T00:00:00.000Z',
  bed: 'Long bed',
  plant: 'third kale',
  crop: 'kale',
  openedOn: '2026-06-01',
  looks: [],
};
const shown = { first: { date: '2026-06-01', chances: { clubroot: 0.4 }, knowledge: '7' } };
const said = { causes: ['clubroot'], sureness: 'seen', lost: 'some', done: ' pulled it up ' };
const look = (date: string, ranking?: unknown): LookRecord => ({
  kind: 'look',
  id: date,
  schema: RECORDS_SCHEMA,
  changedAt: NOW,
  caseId: 'a',
  date,
  photos: [],
  answers: {},
  cannotSay: [],
  note: '',
  ...(ranking ? { ranking, knowledge: '7' } : {}),
});

describe('saying how a case ended', () => {
  it('closes it and keeps what was said and shown', () => {
    expect(settleCase(kept, said, shown, NOW, '2026-07-02')).toEqual({
      ...kept,
      closedOn: '2026-07-02',
      changedAt: NOW,
      outcome: {
        ...shown,
        causes: ['clubroot'],
        sureness: 'seen',
        lost: 'some',
        done: 'pulled it up',
        settledOn: '2026-07-02',
        settledAt: NOW,
      },
    });
  });

  it('can be put right later; the day of settling stays', () => {
    const once = settleCase(kept, said, shown, NOW, '2026-07-02');
    const again = settleCase(once, { ...said, causes: ['root-feeders'] }, shown, LATER, '2026-07-09');
    expect(again.closedOn).toBe('2026-07-02');
    expect(again.outcome).toMatchObject({
      causes: ['root-feeders'],
      settledOn: '2026-07-02',
      settledAt: LATER,
    });
  });

  it('needs no sureness where nothing was found out', () => {
    expect(settleCase(kept, { ...said, causes: [] }, {}, NOW, '2026-07-02').outcome).toMatchObject({
      causes: [],
      sureness: '',
    });
  });

  it('counts only while the case is closed and not deleted', () => {
    const whole = settleCase(kept, said, shown, NOW, '2026-07-02');
    const { closedOn: _closedOn, ...reopened } = whole;
    const cases = [whole, kept, reopened, { ...whole, deletedAt: NOW }, { ...kept, closedOn: '2026-07-01' }];
    expect(settledCases(cases)).toEqual([whole]);
  });
});

describe('one outbreak', () => {
  const settled = (more: Partial<CaseRecord>): Settled =>
    settleCase({ ...kept, ...more }, said, {}, NOW, '2026-07-02') as Settled;
  const isOne = (zone: Zone, one: Partial<CaseRecord>, other: Partial<CaseRecord>): boolean => {
    const pair = [settled({ ...one, id: 'one' }), settled({ ...other, id: 'other' })];
    return new Set(outbreaksOf(pair, zone).values()).size === 1;
  };

  it('is one end on one crop in one bed in one year, however the bed is spelt', () => {
    expect(isOne('north', {}, { bed: ' long  BED ' })).toBe(true);
    for (const other of [{ bed: 'Short bed' }, { crop: 'leek' }, { openedOn: '2025-06-01' }])
      for (const zone of ['north', 'south', 'tropics'] as const)
        expect(isOne(zone, {}, other), `${zone} ${JSON.stringify(other)}`).toBe(false);
  });

  it('is not parted by New Year in the south, but by the middle of its winter', () => {
    const newYear = [{ openedOn: '2025-12-28' }, { openedOn: '2026-01-03' }] as const;
    expect(isOne('south', ...newYear)).toBe(true);
    expect(isOne('north', ...newYear)).toBe(false);
    expect(isOne('south', { openedOn: '2026-06-28' }, { openedOn: '2026-07-03' })).toBe(false);
  });

  it('is parted by no day of the calendar where no winter comes, but by a year since it began', () => {
    const days = ['2026-01-03', '2025-12-28', '2026-12-27', '2026-12-28', '2027-02-01'];
    const keys = outbreaksOf(
      days.map((openedOn) => settled({ id: openedOn, openedOn })),
      'tropics',
    );
    const [first, , , second] = days.map((day) => keys.get(day));
    expect(first).not.toBe(second);
    expect(days.map((day) => keys.get(day))).toEqual([first, first, first, second, second]);
  });
});

describe('what was shown', () => {
  const chancesOf = (ranking: unknown) => ranking as Record<string, number>;

  it('is that of the first and the last weighed look', () => {
    const looks = [look('2026-06-01'), look('2026-06-02', { rust: 0.1 }), look('2026-06-08', { rust: 0.6 })];
    expect(shownAtLooks(looks, chancesOf)).toEqual({
      first: { date: '2026-06-02', chances: { rust: 0.1 }, knowledge: '7' },
      last: { date: '2026-06-08', chances: { rust: 0.6 }, knowledge: '7' },
    });
    expect(shownAtLooks(looks.slice(0, 2), chancesOf)).not.toHaveProperty('last');
    expect(shownAtLooks([look('2026-06-01')], chancesOf)).toEqual({});
  });
});

describe('records of the first version', () => {
  it('come up to the present one unchanged: closed is not settled', () => {
    const old = { ...kept, schema: 1, closedOn: '2026-06-30' };
    expect(repairRecord(structuredClone(old))).toEqual({ ...old, schema: RECORDS_SCHEMA });
    expect(settledCases([repairRecord(old) as CaseRecord])).toEqual([]);
  });
});

describe('repairing how a case ended', () => {
  it('leaves a whole one as it is', () => {
    const whole = settleCase(kept, said, shown, NOW, '2026-07-02');
    expect(repairRecord(structuredClone(whole))).toEqual(whole);
    const lessons = {
      kind: 'lessons' as const,
      id: 'lessons',
      schema: RECORDS_SCHEMA,
      changedAt: NOW,
      forgetUntil: NOW,
    };
    expect(repairRecord(structuredClone(lessons))).toEqual(lessons);
  });

  it('keeps what can be told of a damaged one', () => {
    const damaged = {
      ...kept,
      outcome: {
        causes: ['rust', 7],
        first: { date: '2026-06-01', chances: { rust: 0.3, frost: 'much', aphids: 7 } },
        last: { chances: {} },
      },
    };
    expect(repairRecord(damaged)).toMatchObject({
      outcome: {
        causes: ['rust'],
        sureness: '',
        lost: '',
        done: '',
        settledOn: '2026-06-01',
        settledAt: kept.changedAt,
        first: { date: '2026-06-01', chances: { rust: 0.3 } },
      },
    });
    expect(repairRecord({ ...kept, outcome: 'dead' })).not.toHaveProperty('outcome');
  });
});
