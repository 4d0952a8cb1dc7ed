import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../src/garden/canonical.ts';
import type { BatchRecord, BedRecord } from '../../src/garden/ground-records.ts';
import { conflictsIn, mergeRecords } from '../../src/garden/merge-records.ts';
import { type GardenRecord, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import { settleRivals, stampChanges } from '../../src/garden/stamp-changes.ts';

const moment = (minute: number): string => new Date(Date.UTC(2026, 5, 1, 0, minute)).toISOString();
const bed = (name: string): BedRecord => ({
  kind: 'bed',
  id: 'b',
  schema: RECORDS_SCHEMA,
  changedAt: moment(0),
  name,
  note: '',
});
const made = stampChanges(undefined, bed('Long bed'), moment(0), 'phone');
const edit = (record: BedRecord, more: Partial<BedRecord>, minute: number, device: string): BedRecord =>
  stampChanges(record, { ...record, ...more, changedAt: moment(minute) }, moment(minute), device);

describe('two devices’ edits of one record', () => {
  it('keeps edits of different fields, without a conflict', () => {
    const phone = edit(made, { note: 'stony' }, 5, 'phone');
    const desk = edit(made, { soil: 'clay' }, 3, 'desk');
    const both = mergeRecords(phone, desk) as BedRecord;
    expect(both).toMatchObject({ name: 'Long bed', note: 'stony', soil: 'clay', changedAt: moment(5) });
    expect(conflictsIn(both)).toEqual([]);
  });

  it('lets an edit made in knowledge of another replace it, whatever the clocks say', () => {
    const phone = edit(made, { note: 'stony' }, 90, 'phone');
    const desk = edit(mergeRecords(made, phone) as BedRecord, { note: 'very stony' }, 10, 'desk');
    const both = mergeRecords(phone, desk) as BedRecord;
    expect(both.note).toBe('very stony');
    expect(conflictsIn(both)).toEqual([]);
  });

  it('shows the later of two edits that knew nothing of each other, keeps the other, and forgets it once settled', () => {
    const phone = edit(made, { name: 'Long one' }, 5, 'phone');
    const desk = edit(made, { name: 'By the wall' }, 7, 'desk');
    const both = mergeRecords(phone, desk) as BedRecord;
    expect(both.name).toBe('By the wall');
    const [conflict] = conflictsIn(both);
    expect(conflict).toMatchObject({ path: 'name', shown: 'By the wall', others: [{ value: 'Long one' }] });
    const settled = settleRivals(both, 'name', moment(20), 'phone');
    expect(conflictsIn(settled)).toEqual([]);
    // The device that still has the old conflict takes the choice over.
    expect(conflictsIn(mergeRecords(both, settled))).toEqual([]);
    expect(conflictsIn(mergeRecords(desk, settled))).toEqual([]);
    // Typing another name settles it as well.
    expect(conflictsIn(edit(both, { name: 'Wall bed' }, 30, 'desk'))).toEqual([]);
  });

  it('counts the same thing said twice as no conflict', () => {
    const both = mergeRecords(
      edit(made, { note: 'dry' }, 5, 'phone'),
      edit(made, { note: 'dry' }, 7, 'desk'),
    );
    expect(conflictsIn(both)).toEqual([]);
  });

  it('lets both add to one list, and one take away what the other left alone', () => {
    const batch: BatchRecord = {
      kind: 'batch',
      id: 'm',
      schema: RECORDS_SCHEMA,
      changedAt: moment(0),
      name: 'Stable',
      source: '',
      note: '',
      readings: [{ id: 'r1', date: '2026-05-01', celsius: 60 }],
      given: [],
    };
    const start = stampChanges(undefined, batch, moment(0), 'phone');
    const phone = stampChanges(
      start,
      { ...start, readings: [...start.readings, { id: 'r2', date: '2026-05-08', celsius: 50 }] },
      moment(5),
      'phone',
    );
    const desk = stampChanges(
      start,
      { ...start, readings: [{ id: 'r3', date: '2026-05-04', celsius: 55 }] },
      moment(6),
      'desk',
    );
    const both = mergeRecords(phone, desk) as BatchRecord;
    expect(both.readings.map(({ id }) => id)).toEqual(['r3', 'r2']);
    expect(conflictsIn(both)).toEqual([]);
  });

  it('keeps what was added to a record that was deleted elsewhere, and the deletion', () => {
    const gone = edit(made, { deletedAt: moment(4) }, 4, 'phone');
    const written = edit(made, { note: 'still digging' }, 9, 'desk');
    expect(mergeRecords(gone, written)).toMatchObject({ deletedAt: moment(4), note: 'still digging' });
  });

  it('keeps one day’s weather typed on two devices, field by field', () => {
    const weather = (more: object, minute: number, device: string): GardenRecord =>
      stampChanges(
        undefined,
        repairRecord({
          kind: 'weather',
          id: 'weather-2026-05-01',
          date: '2026-05-01',
          changedAt: moment(minute),
          ...more,
        })!,
        moment(minute),
        device,
      );
    const both = mergeRecords(weather({ minCelsius: 3 }, 1, 'phone'), weather({ soilCelsius: 9 }, 2, 'desk'));
    expect(both).toMatchObject({ minCelsius: 3, soilCelsius: 9 });
    expect(conflictsIn(both)).toEqual([]);
  });
});

/** A history: devices edit, add to and take from lists, delete, bring back, and now and then hand their record to another. */
const step = fc.record({
  device: fc.constantFrom('phone', 'desk', 'loan'),
  minute: fc.integer({ min: 1, max: 40 }),
  what: fc.constantFrom('name', 'note', 'reading', 'less', 'delete', 'back', 'receive'),
  value: fc.constantFrom('a', 'b', 'c'),
  from: fc.constantFrom('phone', 'desk', 'loan'),
});

function play(steps: readonly (typeof step extends fc.Arbitrary<infer S> ? S : never)[]): BatchRecord[] {
  const start = stampChanges(
    undefined,
    repairRecord({ kind: 'batch', id: 'm', name: 'start', changedAt: moment(0) }) as BatchRecord,
    moment(0),
    'phone',
  );
  const held: Record<string, BatchRecord> = { phone: start, desk: start, loan: start };
  for (const { device, minute, what, value, from } of steps) {
    const mine = held[device]!;
    const { deletedAt: _deletedAt, ...undeleted } = mine;
    const id = `${device}${value}`;
    const next: BatchRecord | undefined = {
      name: { ...mine, name: value },
      note: { ...mine, note: value },
      reading: {
        ...mine,
        readings: [
          ...mine.readings.filter((reading) => reading.id !== id),
          { id, date: `2026-05-0${1 + (minute % 9)}`, celsius: minute },
        ],
      },
      less: { ...mine, readings: mine.readings.slice(1) },
      delete: { ...mine, deletedAt: moment(minute) },
      back: undeleted as BatchRecord,
      receive: undefined,
    }[what];
    held[device] = next
      ? stampChanges(mine, { ...next, changedAt: moment(minute) }, moment(minute), device)
      : (mergeRecords(mine, held[from]!) as BatchRecord);
  }
  return Object.values(held);
}

describe('merging', () => {
  const histories = fc.array(step, { maxLength: 24 });
  const check = (law: (a: GardenRecord, b: GardenRecord, c: GardenRecord) => void): void =>
    fc.assert(
      fc.property(histories, (steps) => {
        const [a, b, c] = play(steps) as [GardenRecord, GardenRecord, GardenRecord];
        law(a, b, c);
      }),
      { seed: 20260601, numRuns: 400 },
    );

  it('is idempotent', () => {
    check((a, b) => {
      const both = mergeRecords(a, b);
      expect(canonical(mergeRecords(both, both))).toBe(canonical(both));
      expect(canonical(mergeRecords(both, a))).toBe(canonical(both));
    });
  });
  it('is commutative', () => {
    check((a, b) => expect(canonical(mergeRecords(a, b))).toBe(canonical(mergeRecords(b, a))));
  });
  it('is associative', () => {
    check((a, b, c) =>
      expect(canonical(mergeRecords(mergeRecords(a, b), c))).toBe(
        canonical(mergeRecords(a, mergeRecords(b, c))),
      ),
    );
  });
  it('loses no value: what a device says last shows, stands beside it as a rival, or was replaced in knowledge of it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('a', 'b', 'c'),
        fc.constantFrom('a', 'b', 'c'),
        histories,
        (mine, theirs, steps) => {
          const [start] = play(steps) as [BatchRecord];
          const one = stampChanges(start, { ...start, name: `${mine}1` }, moment(50), 'phone');
          const two = stampChanges(start, { ...start, name: `${theirs}2` }, moment(51), 'desk');
          const both = mergeRecords(one, two) as BatchRecord;
          const said = [both.name, ...(both.rivals?.name ?? []).map(({ value }) => value)];
          expect(said).toContain(`${mine}1`);
          expect(said).toContain(`${theirs}2`);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
