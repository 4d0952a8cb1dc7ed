import { describe, expect, it } from 'vitest';
import type { SeenAtLook } from '../../src/signs/seen-at-look.ts';
import { triage } from '../../src/triage.ts';

const FIRST: SeenAtLook = {
  date: '2026-05-10',
  photos: [],
  answers: {
    crop: 'tomato',
    date: '2026-05-10',
    setting: {
      'recent-temperature': 'cold-for-crop',
      'compost-kinds': ['horse-manure'],
      'days-since-planting': 16,
    },
    signs: { 'yellow-even@new': 'seen', 'puckered@new': 'seen', stunted: 'seen' },
  },
};

/** The second look a fortnight on, with what has become of the newest leaves. */
function chancesOf(newest: 'absent' | 'seen'): Map<string, number> {
  const { causes } = triage({
    photos: [],
    answers: {
      crop: 'tomato',
      date: '2026-05-24',
      setting: {},
      signs: { 'yellow-even@new': newest, 'puckered@new': newest },
    },
    earlier: [FIRST],
    today: '2026-05-24',
    zone: 'north',
    draws: 20,
  });
  return new Map(causes.map(({ id, probability }) => [id, probability]));
}

describe('what changed between two looks', () => {
  // Drift and cold: new leaves recover; residue in the ground persists. Source: NCSU-PDIC (drift, residue), PURDUE-CHILL (cold).
  it('clean new growth after a cold spell speaks for cold and against residue', () => {
    const odds = (chances: Map<string, number>): number =>
      chances.get('cold-check')! / chances.get('residue-in-compost')!;
    expect(odds(chancesOf('absent'))).toBeGreaterThan(2 * odds(chancesOf('seen')));
  });

  it('without earlier looks everything is as it was', () => {
    const input = {
      photos: [],
      answers: FIRST.answers,
      today: FIRST.date,
      zone: 'north',
      draws: 20,
    } as const;
    expect(triage({ ...input, earlier: [] }).causes).toEqual(triage(input).causes);
  });
});
