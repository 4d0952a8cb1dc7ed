import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addLookToCase } from '../../src/garden/add-look-to-case.ts';
import { dueCases } from '../../src/garden/due-cases.ts';
import { bedKey, groupByBed } from '../../src/garden/group-by-bed.ts';
import type { CaseRecord, LookSummary } from '../../src/garden/records.ts';
import { RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import { plainWords, searchOver } from '../../src/garden/search-cases.ts';

const look = (id: string, date: string, lookAgain?: string): LookSummary => ({
  id,
  date,
  verdict: 'watch',
  leading: ['aphids'],
  photos: [],
  ...(lookAgain ? { lookAgain } : {}),
});
const kept = (id: string, more: Partial<CaseRecord> = {}): CaseRecord => ({
  kind: 'case',
  id,
  schema: RECORDS_SCHEMA,
  changedAt: '2026-06-01T00:00:00.000Z',
  bed: 'Long bed',
  plant: `plant ${id}`,
  openedOn: '2026-06-01',
  looks: [look(`${id}1`, '2026-06-01', '2026-06-15')],
  ...more,
});

describe('the path of today', () => {
  it('orders open cases by the day of their last look’s wish, and leaves closed and deleted ones out', () => {
    const all = [
      kept('late', { looks: [look('x', '2026-06-01', '2026-06-20')] }),
      kept('today', {
        looks: [look('old', '2026-05-01', '2026-05-10'), look('y', '2026-06-10', '2026-06-18')],
      }),
      kept('over', { looks: [look('z', '2026-06-01', '2026-06-12')] }),
      kept('closed', { closedOn: '2026-06-02' }),
      kept('deleted', { deletedAt: '2026-06-02T00:00:00.000Z' }),
      kept('wishless', { looks: [look('w', '2026-06-01')] }),
      kept('empty', { looks: [] }),
    ];
    expect(dueCases(all, '2026-06-18').map(({ kept: { id }, when }) => `${id} ${when}`)).toEqual([
      'over overdue',
      'today today',
      'late coming',
    ]);
  });
});

describe('beds as the cases name them', () => {
  it('counts spellings of one name as one bed and shows the one written last', () => {
    const beds = groupByBed([
      kept('a', { bed: 'long  bed', looks: [look('a1', '2026-05-01')] }),
      kept('b', { bed: 'Long Bed ', looks: [look('b1', '2026-06-01')] }),
      kept('c', { bed: 'Bed 10' }),
      kept('d', { bed: 'bed 2' }),
      kept('e', { bed: ' ' }),
      kept('f', { bed: 'gone', deletedAt: '2026-06-02T00:00:00.000Z' }),
    ]);
    expect(beds.map(({ name, cases }) => [name, cases.map(({ id }) => id).join('')])).toEqual([
      ['bed 2', 'd'],
      ['Bed 10', 'c'],
      ['Long Bed', 'ba'],
      ['', 'e'],
    ]);
    expect(bedKey(' Long   BED')).toBe('long bed');
  });
});

describe('finding a case', () => {
  const all = [
    kept('a', { plant: 'Café chilli', looks: [look('a1', '2026-05-01')] }),
    kept('b', { plant: 'third kale', looks: [look('b1', '2026-06-01')] }),
    kept('c', { plant: 'kale by the gate', looks: [look('c1', '2026-04-01')] }),
  ];
  const search = searchOver(all, ({ plant, bed }) => plainWords(`${plant} ${bed}`));
  const find = (query: string): string =>
    search(query)
      .map(({ id }) => id)
      .join('');

  it('wants every word, in any order, whatever the case and accents; newest first', () => {
    expect(find('')).toBe('bac');
    expect(find('KALE')).toBe('bc');
    expect(find('bed gate')).toBe('c');
    expect(find('cafe')).toBe('a');
    expect(find('kale chilli')).toBe('');
  });
});

describe('adding a look', () => {
  it('keeps looks in order of date and renews a look that is there already', () => {
    const once = addLookToCase(kept('a'), look('early', '2026-05-20'), '2026-06-02T00:00:00.000Z');
    expect(once.looks.map(({ id }) => id)).toEqual(['early', 'a1']);
    expect(once.changedAt).toBe('2026-06-02T00:00:00.000Z');
    const twice = addLookToCase(once, look('early', '2026-06-30'), '2026-06-03T00:00:00.000Z');
    expect(twice.looks.map(({ id, date }) => `${id} ${date}`)).toEqual(['a1 2026-06-01', 'early 2026-06-30']);
  });
});

describe('repairing what comes out of the store', () => {
  it('leaves a whole record as it is', () => {
    const whole = kept('a', { crop: 'kale', variety: 'curly', closedOn: '2026-06-30' });
    expect(repairRecord(structuredClone(whole))).toEqual(whole);
  });

  it('brings a record without schema up to the present one, and fills what is missing', () => {
    expect(
      repairRecord({ kind: 'case', id: 'a', looks: [look('x', '2026-05-02'), { id: 7 }, null] }),
    ).toEqual({
      kind: 'case',
      id: 'a',
      schema: RECORDS_SCHEMA,
      changedAt: '1970-01-01T00:00:00.000Z',
      bed: '',
      plant: '',
      openedOn: '2026-05-02',
      looks: [look('x', '2026-05-02')],
    });
  });

  it('keeps a look with its readings, answers and ranking unopened', () => {
    const found = {
      kind: 'look',
      id: 'l',
      schema: RECORDS_SCHEMA,
      changedAt: '2026-06-01T00:00:00.000Z',
      caseId: 'a',
      date: '2026-06-01',
      photos: [
        { id: 'p', role: 'old', taps: { leaf: { x: 0.1, y: 0.2 } }, reading: { any: 'thing' } },
        'junk',
      ],
      answers: { crop: 'kale', setting: {}, signs: { aphids: 'seen' } },
      cannotSay: ['x', 5],
      note: 'windy',
      ranking: { causes: [] },
      knowledge: '7',
    };
    expect(repairRecord(structuredClone(found))).toEqual({
      ...found,
      photos: [found.photos[0]],
      cannotSay: ['x'],
    });
  });

  it('keeps what the network saw of a photo, without reports that are none, and drops rows with gaps', () => {
    const saw = {
      network: '0123456789abcdef',
      reports: [{ sign: 'white-powder@old', ratio: 3.5 }],
      logits: [0.5, -1],
      features: [0, 2],
      strangeness: 0.9,
    };
    const keptOf = (network: unknown): unknown => {
      const repaired = repairRecord({ kind: 'normal-leaf', id: 'n', photoId: 'p', network });
      return repaired?.kind === 'normal-leaf' ? repaired.network : 'no record';
    };
    expect(keptOf(saw)).toEqual(saw);
    const junk = [{ sign: '', ratio: 2 }, { sign: 'holes@new', ratio: 0 }, { sign: 'holes@new' }, 7];
    expect(keptOf({ ...saw, reports: [...junk, ...saw.reports], more: 1 })).toEqual(saw);
    expect(keptOf({ ...saw, reports: 'none' })).toEqual({ ...saw, reports: [] });
    for (const change of [
      { network: '' },
      { logits: [] },
      { features: [1, Number.NaN] },
      { features: [1, 'x'] },
      { strangeness: Number.POSITIVE_INFINITY },
    ])
      expect(keptOf({ ...saw, ...change })).toBeUndefined();
  });

  it('leaves a record of a newer version, and what is none of ours, alone', () => {
    expect(repairRecord({ ...kept('a'), schema: RECORDS_SCHEMA + 1 })).toBeUndefined();
    for (const junk of [
      undefined,
      null,
      7,
      'case',
      [],
      {},
      { kind: 'case' },
      { id: 'a', kind: 'plan' },
      { kind: 'look', id: 'l' },
    ])
      expect(repairRecord(junk)).toBeUndefined();
  });

  it('never throws, gives a record of the present schema or none, and changes nothing the second time', () => {
    fc.assert(
      fc.property(
        fc.record(
          {
            kind: fc.constantFrom(
              'case',
              'look',
              'draft',
              'lessons',
              'bed',
              'batch',
              'event',
              'planting',
              'weather',
              'normal-leaf',
              'trial',
              'other',
            ),
            id: fc.oneof(fc.string(), fc.integer()),
            schema: fc.anything(),
            changedAt: fc.anything(),
            caseId: fc.anything(),
            looks: fc.anything(),
            photos: fc.array(fc.anything()),
            answers: fc.anything(),
            body: fc.anything(),
            outcome: fc.anything(),
            forgetUntil: fc.anything(),
            date: fc.oneof(fc.anything(), fc.constant('2026-05-01')),
            readings: fc.array(fc.anything()),
            given: fc.array(fc.anything()),
            suspicion: fc.anything(),
            ways: fc.array(fc.anything()),
            layouts: fc.array(fc.anything()),
            losses: fc.array(fc.anything()),
            measure: fc.anything(),
            plan: fc.anything(),
            ended: fc.anything(),
            edited: fc.anything(),
            rivals: fc.anything(),
            what: fc.constantFrom('fed', 'horse-manure', 7),
            bedId: fc.constantFrom('b', 7),
            photoId: fc.constantFrom('p', 7),
            minCelsius: fc.anything(),
          },
          { requiredKeys: ['kind'] },
        ),
        (found) => {
          const once = repairRecord(found);
          if (!once) return;
          expect(once.schema).toBe(RECORDS_SCHEMA);
          expect(repairRecord(once)).toEqual(once);
        },
      ),
      { seed: 1789 },
    );
  });
});
