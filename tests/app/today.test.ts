import { describe, expect, it } from 'vitest';
import { describeToday, entryOfToday } from '../../src/app/words/today.ts';
import type { LookDue, TodayItem } from '../../src/garden/list-today.ts';

const look = {
  what: 'look',
  id: 'look-1',
  due: '2026-06-10',
  kept: { plant: 'Third kale', bed: 'Long bed', looks: [{ verdict: 'act' }] },
} as unknown as LookDue;

const frost = {
  what: 'frost',
  id: 'frost-1',
  due: '2026-06-14',
  planting: { crop: 'bean-french' },
  expected: -1.4,
  limit: 2,
  days: ['2026-06-14', '2026-06-15'],
} as unknown as TodayItem;

describe('what is due today, in words', () => {
  it('says when a look was due and where', () => {
    const said = describeToday(look, 'Long bed', '2026-06-12');
    expect(said.when).toBe('was due Wednesday 10 June, 2 days ago');
    expect(said.what).toBe('Third kale');
    // A verdict of last week is not today's.
    expect(said.more).toBe('Long bed · last time: act now');
  });

  it('says how cold is expected, for how long, and what the crop bears', () => {
    const said = describeToday(frost, 'Low bed', '2026-06-12');
    expect(said.when).toBe('Sunday 14 June, in 2 days');
    expect(said.more).toBe(
      'Low bed · −1 °C forecast at the least, 2 nights; it comes to harm at about 2 °C.',
    );
  });

  it('says a day too cold to grow with its tenths, so that it does not read like the limit', () => {
    const cold = { ...frost, what: 'cold', expected: 3.5, limit: 4.4, days: ['2026-06-14'] } as TodayItem;
    expect(describeToday(cold, 'Low bed', '2026-06-12').more).toBe(
      'Low bed · 3.5 °C forecast as the mean of the day; it stands still below about 4.4 °C.',
    );
  });

  it('sets the name of a trial apart', () => {
    const trial = (name: string) =>
      ({ what: 'trial', id: 't', due: '2026-06-12', trial: { name } }) as TodayItem;
    expect(describeToday(trial('Does leaf mould help?'), '', '2026-06-12').what).toBe(
      'Measure the trial “Does leaf mould help?”',
    );
    expect(describeToday(trial(''), '', '2026-06-12').what).toBe('Measure the trial side by side');
  });

  it('puts what is overdue on today in a calendar', () => {
    expect(entryOfToday(look, 'Long bed', '2026-06-12')).toMatchObject({
      id: 'look-1',
      day: '2026-06-12',
      summary: 'Look at Third kale again',
      location: 'Long bed',
    });
    expect(entryOfToday(frost, '', '2026-06-12').day).toBe('2026-06-14');
  });
});
