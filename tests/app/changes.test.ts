import { describe, expect, it } from 'vitest';
import type { KeptLook } from '../../src/app/state/kept.ts';
import { leavesToCompare } from '../../src/app/state/leaves-to-compare.ts';
import { describeChanges, describeTrend } from '../../src/app/words/changes.ts';
import { compareReadings } from '../../src/compare/over-time/compare-readings.ts';

describe('changes in words', () => {
  it('say both values, the change with its doubt and what it amounts to', () => {
    const said = describeChanges(
      compareReadings(
        { 'chlorotic-fraction': { value: 0.3, se: 0.02 }, lightness: { value: 50, se: 1 } },
        { 'chlorotic-fraction': { value: 0.1, se: 0.02 }, lightness: { value: 45, se: 1 } },
        { sameLeaf: true },
      ),
    );
    const yellow = said.find(({ id }) => id === 'chlorotic-fraction');
    // Root of two squares: hypot(2, 2) × 1.2816 = 3.6, in points of a hundred.
    expect(yellow).toMatchObject({ by: 'down by 20 of 100, give or take 4', word: 'better' });
    expect(yellow?.before).toBe('30 % of the leaf, give or take 3');
    expect(said.find(({ id }) => id === 'lightness')).not.toHaveProperty('word');
  });

  it('call nothing better that its own doubt covers', () => {
    const [one] = describeChanges(
      compareReadings(
        { 'necrotic-fraction': { value: 0.1, se: 0.05 } },
        { 'necrotic-fraction': { value: 0.08, se: 0.05 } },
      ),
    );
    expect(one?.word).toBe('no clear change');
  });

  it('say of a trend within its doubt that it could be none', () => {
    const trend = { perWeek: { value: 0.01, se: 0.02 }, from: 0.1, to: 0.12 };
    expect(describeTrend('chlorotic-fraction', trend)).toMatch(/up by 1 of 100.*could as well be no change/);
  });
});

const lookOf = (id: string, date: string, role: string, readAs = role): KeptLook =>
  ({
    kind: 'look',
    id,
    date,
    photos: [
      {
        id: `photo-${id}`,
        role,
        taps: {},
        reading: {
          role: readAs,
          trouble: [],
          leaf: {
            found: true,
            outline: [
              { x: 0, y: 0 },
              { x: 1, y: 0 },
              { x: 0, y: 1 },
            ],
          },
          measures: { hue: { value: 120, se: 2 } },
        },
      },
    ],
  }) as unknown as KeptLook;

describe('leaves to compare', () => {
  it('are those of one role at two looks or more, oldest first', () => {
    const found = leavesToCompare([
      lookOf('b', '2026-06-20', 'old'),
      lookOf('a', '2026-06-10', 'old'),
      lookOf('c', '2026-06-21', 'new'),
      lookOf('d', '2026-06-22', 'whole'),
    ]);
    expect([...found.keys()]).toEqual(['old']);
    expect(found.get('old')?.map(({ lookId }) => lookId)).toEqual(['a', 'b']);
  });

  it('leave out photos that were read as something else than they are said to show', () => {
    expect(
      leavesToCompare([lookOf('a', '2026-06-10', 'old', 'new'), lookOf('b', '2026-06-12', 'old')]).size,
    ).toBe(0);
  });
});
