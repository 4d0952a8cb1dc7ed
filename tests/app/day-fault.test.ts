import { describe, expect, it } from 'vitest';
import { sayDayFault } from '../../src/app/words/day-fault.ts';

const TODAY = '2026-05-20';
const KEPT = '2026-05-18';
const fault = (day: string, bounds: { min?: string; max?: string } = {}, kept = KEPT) =>
  sayDayFault(day, bounds, kept, TODAY);

describe('a day that was typed', () => {
  it('is taken while it can be, or is empty', () => {
    expect(fault('')).toBeUndefined();
    expect(fault(TODAY, { max: TODAY })).toBeUndefined();
    expect(fault('2009-08-01', { max: TODAY })).toBeUndefined();
    expect(fault('2027-03-01')).toBeUndefined();
  });

  it('is refused with what to do and what stays, where it cannot be', () => {
    expect(fault('2031-01-01', { max: TODAY })).toBe(
      'Wednesday 1 January 2031 is still to come. Choose today or a day before it. Until then Monday 18 May stays.',
    );
    expect(fault('1900-01-01', { max: TODAY })).toBe(
      'Monday 1 January 1900 is too long ago. Choose a day from Saturday 1 January 2000 on. Until then Monday 18 May stays.',
    );
    expect(fault('2126-03-01', {}, '')).toBe(
      'Friday 1 March 2126 is too far ahead. Choose a day up to Wednesday 31 December 2031.',
    );
    expect(fault('2026-04-01', { min: '2026-05-01' })).toMatch(/^Wednesday 1 April 2026 is too long ago/);
  });
});
