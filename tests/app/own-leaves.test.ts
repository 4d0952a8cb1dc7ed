import { describe, expect, it } from 'vitest';
import { OWN_LEAVES_WORDS, sayMissing, sayNumbers, sayTested } from '../../src/app/words/own-leaves.ts';
import type { OwnMark } from '../../src/garden/own-head-record.ts';

const FEWEST = { photos: 8, plantings: 4 };
const counts = (present: number, absent: number, presentPlantings: number, absentPlantings: number) => ({
  present,
  absent,
  presentPlantings,
  absentPlantings,
});
const tested = {
  own: 0.314,
  shipped: 0.5,
  camera: 0.6,
  gain: 0.186,
  gainSe: 0.04,
  before: 'shipped',
  right: 21,
  rightBefore: 17,
} as const;
const mark = (more: Partial<OwnMark>): OwnMark => ({
  mark: 'white-powder',
  end: 'no-better',
  ...counts(10, 14, 4, 5),
  tested,
  ...more,
});

describe('what is missing to learn a mark', () => {
  it('says how many photos, from how many plantings, on which side', () => {
    expect(sayMissing(counts(2, 30, 1, 6), FEWEST)).toBe(
      'Needs 6 more photos with it, from 3 more plantings.',
    );
    expect(sayMissing(counts(7, 5, 4, 3), FEWEST)).toBe(
      'Needs 1 more photo with it; and 3 more photos without it, from 1 more planting.',
    );
    // Photos enough, but of one planting.
    expect(sayMissing(counts(20, 8, 1, 4), FEWEST)).toBe(
      'Needs 3 more photos with it, from 3 more plantings.',
    );
    expect(sayMissing(counts(8, 8, 4, 4), FEWEST)).toBe('');
  });
});

describe('what came of learning a mark', () => {
  it('says it with its numbers, and whether it is used', () => {
    const told = 'Of 24 photos kept aside it told 21 right, the network as it came 17';
    expect(sayTested(mark({ end: 'used' }))).toBe(`${told}.`);
    expect(sayTested(mark({}))).toBe(`${told}: not clearly better.`);
    expect(sayTested(mark({ tested: { ...tested, before: 'camera' } }))).toMatch(/, the camera alone 17:/);
    expect(sayTested(mark({ end: 'overlaps' }))).toMatch(/^Of 24 .* gained more and is used instead\.$/);
    const { tested: _tested, ...untried } = mark({ end: 'too-few' });
    expect(sayTested(untried)).toBe('');
    expect(sayNumbers(untried)).toEqual([]);
  });

  it('gives the numbers behind it', () => {
    const head = { level: -0.25, logit: 0.5, weights: [3, 4], mean: [0, 0], spread: [1, 1], most: 5 };
    expect(sayNumbers(mark({ end: 'used', head }))).toEqual([
      'From 4 plantings with it and 5 without.',
      'Mean surprise a photo kept aside (natural log loss, less is better): 0.60 by the camera alone, 0.50 with the network’s own opinion set anew, 0.31 with weights on what it sees too. Better by 0.19, give or take 0.04.',
      'It makes the mark at most 5 times likelier, or less likely. Level −0.25, weight of the network’s own opinion 0.50, 2 weights on what it sees, their size 5.00.',
    ]);
    expect(sayNumbers(mark({ end: 'used', head: { ...head, weights: [0, 0] } })).at(-1)).toMatch(
      /none on what it sees\.$/,
    );
    expect(sayNumbers(mark({ tested: { ...tested, gain: -0.1 } })).at(-1)).toMatch(/Worse by 0\.10/);
  });

  it('counts in words that fit one and many', () => {
    expect(OWN_LEAVES_WORDS.counts(1, 1, 1)).toBe('1 photo from 1 planting; 1 of them a healthy leaf.');
    expect(OWN_LEAVES_WORDS.counts(12, 3, 0)).toBe(
      '12 photos from 3 plantings; none of them healthy leaves.',
    );
    expect(OWN_LEAVES_WORDS.noPhoto(1)).toBe('Of 1 other mark there is no photo with it yet.');
    expect(OWN_LEAVES_WORDS.noPhoto(4)).toBe('Of 4 other marks there is no photo with it yet.');
  });
});
