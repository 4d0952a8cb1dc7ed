import { describe, expect, it } from 'vitest';
import { listToday } from '../../src/garden/list-today.ts';
import { conflictsIn, mergeRecords } from '../../src/garden/merge-records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import { stampChanges } from '../../src/garden/stamp-changes.ts';
import { type TrialRecord, trialReadingId } from '../../src/garden/trial-record.ts';
import { trialsOfBed } from '../../src/garden/trials-of-bed.ts';
import { garden, record } from './small-garden.ts';

const unit = (place: number, way: string, at = 0) => ({ id: `2026.1.${at}.${place}`, way, at, place });
const layout = (more: object = {}) => ({
  id: '2026',
  date: '2026-04-01',
  how: 'random',
  seed: 1,
  beds: [
    { bedId: 'long', bedName: 'Long bed', places: 2 },
    { bedId: 'wall', bedName: 'Wall bed', places: 2 },
  ],
  units: [unit(1, 'A'), unit(2, 'B'), unit(1, 'B', 1), unit(2, 'A', 1)],
  ...more,
});
const reading = (unitId: string, date: string, value: number) => ({
  id: trialReadingId(date, unitId),
  date,
  unitId,
  value,
});
const trial = (id: string, more: object = {}): TrialRecord =>
  record('trial', id, {
    name: 'Dug or not',
    ways: [
      { id: 'A', name: 'dug' },
      { id: 'B', name: 'not dug' },
    ],
    unit: 'plant',
    measure: { by: 'hand', kind: 'height' },
    layouts: [layout()],
    ...more,
  });

describe('a trial as a record', () => {
  it('is kept however little of it was said', () => {
    const bare = record('trial', 'v');
    expect(bare).toMatchObject({ name: '', ways: [], layouts: [], readings: [], losses: [] });
    expect(repairRecord(structuredClone(bare))).toEqual(bare);
  });

  it('loses single units, readings and losses that cannot be read, and keeps the rest', () => {
    const good = [reading('2026.1.0.1', '2026-05-01', 20), reading('2026.1.0.2', '2026-05-01', 22)];
    const found = trial('v', {
      unit: 'greenhouse',
      measure: { by: 'hand', kind: 'taste' },
      matters: -2,
      plan: { spreadWord: 'uneven', chance: 7 },
      layouts: [
        layout({ units: [unit(1, 'A'), unit(0, 'B'), unit(2, 'B', 9), { way: 'A' }, 7, unit(2, 'B')] }),
        { id: '2027', date: '2027-13-01' },
      ],
      readings: [
        good[1],
        { ...good[0], value: Number.NaN },
        null,
        good[0],
        { ...good[0], id: 'x', date: '' },
      ],
      losses: [{ id: '2026.1.1.1', date: '2026-05-02', why: 'slugs' }, { id: 'y' }],
      ended: { as: 'read' },
    });
    expect(found.layouts.map(({ units }) => units.map(({ id }) => id))).toEqual([
      ['2026.1.0.1', '2026.1.0.2'],
    ]);
    expect(found.readings).toEqual([good[1], good[0]]);
    expect(found.losses).toHaveLength(1);
    expect(found.plan).toEqual({ spreadWord: 'uneven' });
    for (const key of ['unit', 'measure', 'matters', 'ended'] as const) expect(found[key]).toBeUndefined();
    expect(repairRecord(JSON.parse(JSON.stringify(found)))).toEqual(found);
  });

  const made = stampChanges(undefined, trial('v'), '2026-04-01T08:00:00.000Z', 'phone');
  const change = (device: string, more: Partial<TrialRecord>): TrialRecord =>
    stampChanges(made, { ...made, ...more }, '2026-05-01T08:00:00.000Z', device);

  it('takes what two devices measured together, and shows where they measured one plant differently', () => {
    const phone = change('phone', {
      readings: [reading('2026.1.0.1', '2026-05-01', 20), reading('2026.1.0.2', '2026-05-01', 21)],
      losses: [{ id: '2026.1.1.1', date: '2026-05-01', why: 'slugs' }],
    });
    const desk = change('desk', {
      readings: [reading('2026.1.0.1', '2026-05-01', 26), reading('2026.1.1.2', '2026-05-01', 23)],
      losses: [{ id: '2026.1.1.2', date: '2026-05-01', why: 'dug up' }],
    });
    const merged = mergeRecords(phone, desk) as TrialRecord;
    expect(merged.readings.map(({ unitId }) => unitId).sort()).toEqual([
      '2026.1.0.1',
      '2026.1.0.2',
      '2026.1.1.2',
    ]);
    expect(merged.losses.map(({ id }) => id).sort()).toEqual(['2026.1.1.1', '2026.1.1.2']);
    expect(conflictsIn(merged).map(({ path }) => path)).toEqual(['readings/2026-05-01 2026.1.0.1']);
    expect(mergeRecords(desk, phone)).toEqual(merged);
  });

  it('never mixes two layouts of one season: one shows, the other waits as a conflict', () => {
    const again = (seed: number) => layout({ id: '2027', date: '2027-04-01', seed });
    const [phone, desk] = [5, 6].map((seed) =>
      change(seed === 5 ? 'phone' : 'desk', trial('v', { layouts: [layout(), again(seed)] })),
    );
    const merged = mergeRecords(phone!, desk!) as TrialRecord;
    expect(merged.layouts.map(({ id }) => id)).toEqual(['2026', '2027']);
    expect(merged.layouts[1]!.units).toHaveLength(4);
    expect(conflictsIn(merged).map(({ path }) => path)).toEqual(['layouts/2027']);
  });
});

describe('where a trial shows', () => {
  const beds = [
    record('bed', 'wall', { name: 'Wall bed', order: 1 }),
    record('bed', 'long', { name: 'Long bed', order: 2 }),
    record('bed', 'other', { name: 'Other', order: 3 }),
  ];
  it('on today’s path when a measuring is due, at the first of its beds', () => {
    const due = (more: object) =>
      listToday(
        garden(...beds, trial('v', { lookOn: '2026-05-01', ...more })),
        '2026-05-02',
        () => undefined,
      );
    expect(due({})).toMatchObject([{ what: 'trial', id: 'trial-v', due: '2026-05-01', bedId: 'wall' }]);
    expect(due({ lookOn: '2026-05-03' })).toEqual([]);
    expect(due({ ended: { date: '2026-05-02', as: 'read' } })).toEqual([]);
    expect(due({ deletedAt: '2026-05-02T08:00:00.000Z' })).toEqual([]);
  });
  it('in the year of its beds: laid out, measured there, ended', () => {
    const all = garden(
      ...beds,
      trial('v', {
        readings: [
          reading('2026.1.0.1', '2026-05-01', 20),
          reading('2026.1.0.2', '2026-05-01', 22),
          reading('2026.1.1.1', '2026-05-09', 22),
        ],
        ended: { date: '2026-06-01', as: 'read' },
      }),
    );
    expect(trialsOfBed(all, 'long').map(({ what, date }) => [what, date])).toEqual([
      ['trial-laid-out', '2026-04-01'],
      ['trial-measured', '2026-05-01'],
      ['trial-ended', '2026-06-01'],
    ]);
    expect(trialsOfBed(all, 'wall').map(({ date }) => date)).toEqual([
      '2026-04-01',
      '2026-05-09',
      '2026-06-01',
    ]);
    expect(trialsOfBed(all, 'other')).toEqual([]);
  });
});
