import { describe, expect, it } from 'vitest';
import { placeMarks, toPlace } from '../../src/app/places/Look/place-marks.ts';

describe('on which leaves a mark lies', () => {
  it('asks it of one mark after the other, and of nothing else that was seen', () => {
    expect(toPlace(['stunted', 'holes@some'], {})).toBeUndefined();
    expect(toPlace(['curled@some', 'yellowing@some'], {})).toBe('yellowing@some');
    expect(toPlace(['curled@some', 'yellowing@some'], { 'yellowing@some': 'open' })).toBe('curled@some');
    expect(toPlace(['yellowing@some'], { 'yellowing@some': 'open' })).toBeUndefined();
  });

  it('says a mark absent only where the person said so', () => {
    const say = (where: 'only-old' | 'most-old' | 'most-new' | 'both' | 'open') =>
      placeMarks(['yellowing@some', 'stunted'], { 'yellowing@some': where });
    expect(say('only-old')).toEqual({ 'yellowing@old': 'seen', 'yellowing@new': 'absent', stunted: 'seen' });
    expect(say('most-old')).toEqual({ 'yellowing@old': 'seen', stunted: 'seen' });
    expect(say('most-new')).toEqual({ 'yellowing@new': 'seen', stunted: 'seen' });
    expect(say('both')).toEqual({ 'yellowing@old': 'seen', 'yellowing@new': 'seen', stunted: 'seen' });
    expect(say('open')).toEqual({ 'yellowing@some': 'seen', stunted: 'seen' });
  });
});
