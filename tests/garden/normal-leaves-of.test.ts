import { describe, expect, it } from 'vitest';
import type { NormalLeafRecord } from '../../src/garden/ground-records.ts';
import { normalLeavesOf, sameVariety } from '../../src/garden/normal-leaves-of.ts';

const leaf = (id: string, more: Partial<NormalLeafRecord> = {}): NormalLeafRecord => ({
  kind: 'normal-leaf',
  id,
  schema: 3,
  changedAt: '2026-06-01T00:00:00.000Z',
  crop: 'tomato',
  variety: 'Golden trial',
  date: '2026-06-01',
  photoId: `photo-${id}`,
  ...more,
});
const ids = (leaves: readonly NormalLeafRecord[]): string[] => leaves.map(({ id }) => id);

describe('healthy leaves to hold a plant against', () => {
  it('are those of its variety, however its name is spelt, and no deleted ones', () => {
    const all = [
      leaf('a'),
      leaf('b', { variety: ' golden  TRIAL ' }),
      leaf('c', { variety: 'Green trial' }),
      leaf('d', { crop: 'pepper' }),
      leaf('e', { deletedAt: '2026-06-02T00:00:00.000Z' }),
    ];
    expect(ids(normalLeavesOf(all, { crop: 'tomato', variety: 'Golden trial' }))).toEqual(['a', 'b']);
  });

  it('are none where crop or variety were not said: an unnamed variety may be any', () => {
    const all = [leaf('a'), leaf('b', { variety: '' })];
    expect(normalLeavesOf(all, { crop: 'tomato' })).toEqual([]);
    expect(normalLeavesOf(all, { crop: 'tomato', variety: ' ' })).toEqual([]);
    expect(normalLeavesOf(all, { variety: 'Golden trial' })).toEqual([]);
    expect(sameVariety({}, {})).toBe(false);
  });

  it('are those of its stage of growth where there are any', () => {
    const all = [leaf('a', { stage: 'seedling' }), leaf('b', { stage: 'fruiting' }), leaf('c')];
    const plant = { crop: 'tomato', variety: 'Golden trial' };
    expect(ids(normalLeavesOf(all, { ...plant, stage: 'fruiting' }))).toEqual(['b']);
    expect(ids(normalLeavesOf(all, { ...plant, stage: 'old' }))).toEqual(['a', 'b', 'c']);
    expect(ids(normalLeavesOf(all, plant))).toEqual(['a', 'b', 'c']);
  });
});
