import { describe, expect, it } from 'vitest';
import { describeBytes } from '../../src/app/words/bytes.ts';
import { describeMeasures } from '../../src/app/words/measures.ts';
import { MEASURES, type Measures } from '../../src/leaf/measures.ts';

const say = (measures: Measures): string[] =>
  describeMeasures(measures).map(({ name, says }) => `${name}: ${says}`);

describe('measures in words', () => {
  it('says a share with its give or take: the span that holds the truth eight times in ten (z = 1.2816)', () => {
    expect(say({ 'chlorotic-fraction': { value: 0.12, se: 0.0234 } })).toEqual([
      'Pale to yellow: 12 % of the leaf, give or take 3',
    ]);
  });

  it('never claims to be exact', () => {
    expect(say({ 'necrotic-fraction': { value: 0.5, se: 0 } })[0]).toMatch(/give or take 1$/);
    expect(say({ 'purple-fraction': { value: 0.001, se: 0.001 } })).toEqual([
      'Purple, red or bronze: hardly any of the leaf',
    ]);
  });

  it('counts in whole things', () => {
    expect(say({ 'hole-count': { value: 1, se: 0.1 }, 'spot-count': { value: 14.4, se: 2.4 } })).toEqual([
      'Holes: 1 separate hole',
      'Dead spots: 14 spots, give or take 3',
    ]);
    expect(say({ 'hole-count': { value: 0, se: 0 } })).toEqual(['Holes: no separate holes']);
  });

  it('says no clear difference when zero lies within the error, and which side is greener when not', () => {
    expect(say({ 'vein-contrast': { value: 2, se: 2 } })[0]).toMatch(/no clear difference$/);
    expect(say({ 'vein-contrast': { value: 0.4, se: 0.1 } })[0]).toMatch(/hardly any difference$/);
    expect(say({ 'vein-contrast': { value: 8, se: 2.3 } })[0]).toMatch(
      /veins clearly greener \(by 8 points of colour, give or take 3\)$/,
    );
    expect(say({ 'edge-contrast': { value: -8, se: 2.3 } })[0]).toMatch(
      /middle a little paler \(by 8 degrees of hue/,
    );
  });

  it('says tenths of a difference where its error is small, so that the number bears the word', () => {
    // A real leaf and a drawn one: both were "by 1 point, give or take 1".
    expect(say({ 'vein-contrast': { value: 1.4, se: 0.39 } })[0]).toMatch(
      /veins a little greener \(by 1\.4 points of colour, give or take 0\.5\)$/,
    );
    expect(say({ 'vein-contrast': { value: 0.8, se: 0.35 } })[0]).toMatch(
      /\(by 0\.8 points of colour, give or take 0\.4\)$/,
    );
    expect(say({ 'edge-contrast': { value: -0.8, se: 0 } })[0]).toMatch(
      /\(by 0\.8 degrees of hue, give or take 0\.1\)$/,
    );
  });

  it('calls nothing clear or much that lies within two of its errors', () => {
    expect(say({ 'edge-contrast': { value: 14, se: 8.6 } })[0]).toMatch(
      /middle probably greener \(by 14 degrees of hue, give or take 11\)$/,
    );
    expect(say({ 'tip-contrast': { value: -30, se: 15 } })[0]).toMatch(/base probably paler/);
    expect(say({ 'tip-contrast': { value: -30, se: 14.9 } })[0]).toMatch(/base much paler/);
  });

  it('marks what stands out of its own error, so that the rest can be folded away', () => {
    const [yellow, dead] = describeMeasures({
      'chlorotic-fraction': { value: 0.12, se: 0.02 },
      'necrotic-fraction': { value: 0.02, se: 0.02 },
    });
    expect([yellow?.speaks, dead?.speaks]).toEqual([true, false]);
  });

  it('names every measure in words that need no book of colours', () => {
    const all = Object.fromEntries(MEASURES.map(({ id }) => [id, { value: 0.4, se: 0.1 }])) as Measures;
    for (const { name } of describeMeasures(all)) expect(name).not.toMatch(/CIE|\*|index/);
  });

  it('has words for every measure of the vocabulary and leaves out what was not taken', () => {
    const all = Object.fromEntries(MEASURES.map(({ id }) => [id, { value: 0.4, se: 0.1 }])) as Measures;
    const said = describeMeasures(all);
    expect(said.map(({ id }) => id).sort()).toEqual(MEASURES.map(({ id }) => id).sort());
    for (const { says } of said) expect(says).not.toMatch(/undefined|NaN/);
    expect(describeMeasures({})).toEqual([]);
  });
});

describe('sizes of storage', () => {
  it.each([
    [0, '1 kB'],
    [820_000, '820 kB'],
    [4_200_000, '4.2 MB'],
    [91_000_000, '91 MB'],
    [2_340_000_000, '2.3 GB'],
  ])('%d bytes: %s', (bytes, says) => {
    expect(describeBytes(bytes)).toBe(says);
  });
});
