import { expect, it } from 'vitest';
import { youngMarksBefore } from '../../src/app/state/seen-before.ts';
import type { SeenAtLook } from '../../src/signs/seen-at-look.ts';

const lookOf = (date: string, signs: Record<string, 'seen' | 'absent'>): SeenAtLook =>
  ({ date, photos: [], answers: { setting: {}, signs } }) as SeenAtLook;

it('asks again for what the newest earlier look saw on the young leaves, and for nothing else', () => {
  const earlier = [
    lookOf('2026-06-20', { 'holes@new': 'seen', 'holes@old': 'seen', 'yellow-between-veins@new': 'absent' }),
    lookOf('2026-06-10', { 'spots@new': 'seen' }),
  ];
  expect(youngMarksBefore(earlier)).toEqual(['holes@new']);
  expect(youngMarksBefore([])).toEqual([]);
});
