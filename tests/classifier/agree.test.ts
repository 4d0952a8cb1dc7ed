import { describe, expect, it } from 'vitest';
import { agree } from '../../src/classifier/agree.ts';
import { KNOWN_BY, NETWORK_MARKS } from '../../src/classifier/calibration.ts';

/** Each expert says one number of every mark. */
const saying = (...byExpert: readonly number[]): number[] =>
  byExpert.flatMap((value) => NETWORK_MARKS.map(() => value));
const at = (mark: string, ...byExpert: readonly number[]): number =>
  agree(saying(...byExpert))[NETWORK_MARKS.indexOf(mark)]!;

describe('what all experts bear out', () => {
  it('is the word of the least convinced, for and against', () => {
    expect(at('spotted', 3, 1, 2)).toBe(1);
    expect(at('spotted', -3, -1, -2)).toBe(-1);
  });

  it('is nothing where they part', () => {
    expect(at('spotted', 3, -0.1, 2)).toBe(0);
    expect(at('spotted', -3, 1, -2)).toBe(0);
  });

  it('asks only those who were shown leaves with the mark', () => {
    const known = new Map(KNOWN_BY);
    expect(known.get('puckered')).not.toContain('rendered');
    expect(at('puckered', 2, 3, -5)).toBe(2);
    expect(known.get('pale-trails')).not.toContain('painted');
    expect(known.get('pale-trails')).not.toContain('real');
    expect(at('pale-trails', -5, -5, 1.5)).toBe(1.5);
  });

  it('is no number where one of them gave none', () => {
    expect(at('spotted', 3, Number.NaN, 2)).toBeNaN();
  });
});
