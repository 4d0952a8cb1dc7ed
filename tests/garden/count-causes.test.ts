import { describe, expect, it } from 'vitest';
import { sayMet, sayReturns } from '../../src/app/words/recurring.ts';
import { bedsOfReturn, countCauses, NEVER_FOUND } from '../../src/garden/count-causes.ts';
import type { BedRecord } from '../../src/garden/ground-records.ts';
import { type CaseState, type Narrowing, narrowCases } from '../../src/garden/narrow-cases.ts';
import { placesOf } from '../../src/garden/place-cases.ts';
import type { CaseRecord } from '../../src/garden/records.ts';

const STAMP = { schema: 3, changedAt: '2026-06-01T00:00:00.000Z' } as const;
const bed = (id: string, name: string): BedRecord => ({ kind: 'bed', id, ...STAMP, name, note: '' });
const BEDS = [bed('bed-long', 'Long bed'), bed('bed-short', 'Short bed')];
const placeOf = placesOf(BEDS);

const settled = (
  id: string,
  openedOn: string,
  causes: readonly string[],
  more: Partial<CaseRecord> = {},
): CaseRecord => ({
  kind: 'case',
  id,
  ...STAMP,
  bed: 'Long bed',
  bedId: 'bed-long',
  plant: id,
  openedOn,
  closedOn: openedOn,
  looks: [],
  outcome: {
    settledOn: openedOn,
    settledAt: `${openedOn}T12:00:00.000Z`,
    causes,
    sureness: 'seen',
    lost: '',
    done: '',
  },
  ...more,
});
const ids = (cases: readonly CaseRecord[]): string[] => cases.map(({ id }) => id);

describe('the bed of a case', () => {
  it('is its record, the record of that name where it was never linked, else its name', () => {
    expect(placeOf(settled('a', '2026-05-01', []))).toEqual({ key: 'bed-long', name: 'Long bed' });
    const { bedId: _bedId, ...unlinked } = settled('b', '2026-05-01', [], { bed: ' SHORT  bed' });
    expect(placeOf(unlinked)).toEqual({ key: 'bed-short', name: 'Short bed' });
    expect(placeOf({ ...unlinked, bed: 'by  the Gate ' })).toEqual({
      key: 'by the gate',
      name: 'by the Gate',
    });
    expect(placeOf({ ...unlinked, bed: ' ' })).toEqual({ key: '', name: '' });
  });
});

describe('causes by bed and year', () => {
  const short = { bed: 'Short bed', bedId: 'bed-short' };
  const cases = [
    settled('a', '2024-05-01', ['clubroot']),
    settled('b', '2026-05-01', ['clubroot', 'aphids']),
    settled('c', '2026-06-01', ['clubroot'], short),
    settled('d', '2026-06-02', ['clubroot']),
    settled('e', '2025-06-02', []),
    { ...settled('open', '2026-06-02', ['clubroot']), closedOn: undefined } as unknown as CaseRecord,
    settled('gone', '2026-06-02', ['clubroot'], { deletedAt: '2026-06-03T00:00:00.000Z' }),
  ];

  it('count settled cases alone, those of two causes at both, and name what was never found out last', () => {
    const met = countCauses(cases, placeOf, 'north');
    expect(met.map(({ cause, cases: all }) => [cause, all.length])).toEqual([
      ['clubroot', 4],
      ['aphids', 1],
      [NEVER_FOUND, 1],
    ]);
    const [clubroot] = met;
    expect(clubroot!.years).toEqual(['2024', '2026']);
    expect(clubroot!.beds.map(({ bed: { name }, cases: all }) => [name, ids(all)])).toEqual([
      ['Long bed', ['d', 'b', 'a']],
      ['Short bed', ['c']],
    ]);
    expect(ids(clubroot!.beds[0]!.byYear.get('2026')!)).toEqual(['d', 'b']);
    expect(bedsOfReturn(clubroot!).map(({ bed: { name } }) => name)).toEqual(['Long bed']);
  });

  it('go by the growing year in the south: one summer is one year, and no return', () => {
    const summer = [
      settled('spring', '2025-11-20', ['aphids']),
      settled('late', '2026-01-15', ['aphids']),
      settled('after', '2026-12-02', ['clubroot']),
      settled('first', '2026-03-02', ['clubroot']),
    ];
    const [aphids, clubroot] = countCauses(summer, placeOf, 'south');
    expect(aphids!.years).toEqual(['2025–26']);
    expect(ids(aphids!.beds[0]!.byYear.get('2025–26')!)).toEqual(['late', 'spring']);
    expect(bedsOfReturn(aphids!)).toEqual([]);
    expect(clubroot!.years).toEqual(['2025–26', '2026–27']);
    expect(sayMet(aphids!)).toBe('2 cases in Long bed, in 2025–26.');
    expect(sayMet(clubroot!)).toBe('2 cases in Long bed, in 2 years from 2025–26 to 2026–27.');
    expect(sayReturns(clubroot!)).toMatchObject([{ says: 'Clubroot in Long bed: 2025–26 and 2026–27' }]);
    const north = countCauses(summer, placeOf, 'north')[0]!;
    expect(north.years).toEqual(['2025', '2026']);
    expect(bedsOfReturn(north)).toHaveLength(1);
  });

  it('come back where no winter comes when a year has passed, not because New Year has', () => {
    const met = (...days: string[]) =>
      countCauses(
        days.map((day) => settled(day, day, ['aphids'])),
        placeOf,
        'tropics',
      )[0]!;
    const weeks = met('2025-12-20', '2026-01-05');
    expect(bedsOfReturn(weeks)).toEqual([]);
    // The table still goes by the calendar, which is how a year is called there.
    expect(weeks.years).toEqual(['2025', '2026']);
    expect(sayReturns(met('2025-12-20', '2026-01-05', '2026-12-20'))).toMatchObject([
      { says: 'Aphids in Long bed: 2025 and 2026' },
    ]);
  });

  it('add up: over beds and years each cause has its cases, each once', () => {
    for (const { cases: all, beds } of countCauses(cases, placeOf, 'north')) {
      const cells = beds.flatMap(({ byYear }) => [...byYear.values()].flat());
      expect(ids(cells).sort()).toEqual(ids(all).sort());
    }
  });
});

describe('a narrowed list', () => {
  const look = { id: 'l', date: '2026-05-20', verdict: 'watch', leading: ['rust'], photos: [] };
  const {
    outcome: _outcome,
    closedOn: _closedOn,
    ...running
  } = settled('open', '2026-05-10', [], {
    crop: 'leek',
    looks: [{ ...look, lookAgain: '2026-06-10' }],
  });
  const due: CaseRecord = { ...running, id: 'due', looks: [{ ...look, lookAgain: '2026-06-01' }] };
  const { outcome: _unsaid, ...unsaid } = settled('unsaid', '2025-04-01', [], { looks: [look] });
  const cases = [running, due, settled('settled', '2025-04-01', ['clubroot'], { looks: [look] }), unsaid];
  const found = (narrowing: Narrowing): string[] => ids(narrowCases(cases, narrowing, placeOf, '2026-06-01'));

  it.each<[CaseState, string[]]>([
    ['open', ['open', 'due']],
    ['due', ['due']],
    ['settled', ['settled']],
    ['unsaid', ['unsaid']],
  ])('to %s', (state, wanted) => expect(found({ state })).toEqual(wanted));

  it('to a cause: what a settled one was, what another is thought to be', () => {
    expect(found({ cause: 'clubroot' })).toEqual(['settled']);
    expect(found({ cause: 'rust' })).toEqual(['open', 'due', 'unsaid']);
  });

  it('to a crop, a bed, and days between which the case went on', () => {
    expect(found({ crop: 'leek' })).toEqual(['open', 'due']);
    expect(found({ bed: 'bed-short' })).toEqual([]);
    expect(found({ from: '2026-05-15', to: '2026-05-16' })).toEqual(['open', 'due']);
    expect(found({ to: '2025-12-31' })).toEqual(['settled', 'unsaid']);
    expect(found({ from: '2026-05-21' })).toEqual([]);
    expect(found({})).toHaveLength(4);
    expect(found({ crop: 'leek', state: 'due' })).toEqual(['due']);
  });
});
