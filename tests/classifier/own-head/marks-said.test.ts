import { describe, expect, it } from 'vitest';
import { marksSaid, OWN_MARKS } from '../../../src/classifier/own-head/marks-said.ts';
import { isAskable } from '../../../src/signs/members-of.ts';
import type { Answers } from '../../../src/signs/types.ts';

const said = (signs: Answers['signs'], role: 'old' | 'new' | 'whole' | 'normal') =>
  Object.fromEntries(marksSaid(signs, role));

describe('what the eye said of the marks on a photo', () => {
  it('counts a mark where the photo was taken, and nothing that was not answered', () => {
    const signs = { 'white-powder@old': 'seen', 'mottled@old': 'absent', 'puckered@new': 'seen' } as const;
    expect(said(signs, 'old')).toEqual({ 'white-powder': true, mottled: false });
    expect(said(signs, 'new')).toEqual({ puckered: true, curled: true });
    expect(said({}, 'old')).toEqual({});
  });

  it('knows of a broader mark when a part of it was seen, and not which part when only the broader one was', () => {
    expect(said({ 'haloed-spots@old': 'seen' }, 'old')).toEqual({ 'haloed-spots': true, spotted: true });
    expect(said({ 'spotted@old': 'seen' }, 'old')).toEqual({ spotted: true });
    // One part that is not there leaves the others open.
    expect(said({ 'haloed-spots@old': 'absent' }, 'old')).toEqual({ 'haloed-spots': false });
    expect(said({ 'spotted@old': 'absent' }, 'old')).toEqual({
      'brown-spots': false,
      'haloed-spots': false,
      'ringed-spots': false,
      'rust-pustules': false,
      spotted: false,
    });
  });

  it('takes a photo of the whole plant for either position, and what was said of some leaves for neither', () => {
    expect(said({ 'holes@new': 'seen', 'white-powder@some': 'seen' }, 'whole')).toEqual({
      holes: true,
      'white-powder': true,
    });
    expect(said({ 'white-powder@some': 'seen' }, 'old')).toEqual({});
    expect(said({ 'white-powder@some': 'absent' }, 'old')).toEqual({ 'white-powder': false });
    expect(said({ 'white-powder@old': 'absent' }, 'whole')).toEqual({});
    expect(said({ 'white-powder@old': 'absent', 'white-powder@new': 'absent' }, 'whole')).toEqual({
      'white-powder': false,
    });
  });

  it('leaves out what was said both ways', () => {
    const both = { 'haloed-spots@old': 'seen', 'spotted@old': 'absent' } as const;
    const { spotted, 'haloed-spots': haloed, ...rest } = said(both, 'old');
    expect([spotted, haloed]).toEqual([undefined, undefined]);
    expect(Object.values(rest)).toEqual([false, false, false]);
  });

  it('finds no mark on a normal leaf, whatever was said of the plant', () => {
    const all = said({ 'white-powder@old': 'seen' }, 'normal');
    expect(Object.keys(all)).toEqual([...OWN_MARKS]);
    expect(Object.values(all).some(Boolean)).toBe(false);
    expect(OWN_MARKS.length).toBeGreaterThan(20);
    expect(OWN_MARKS.every((mark) => isAskable(`${mark}@new`))).toBe(true);
  });
});
