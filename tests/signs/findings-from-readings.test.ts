import { describe, expect, it } from 'vitest';
import type { Measures } from '../../src/leaf/measures.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import type { PhotoRole, PhotoTrouble } from '../../src/photo/types.ts';
import { findingsFromReadings, ratioOf } from '../../src/signs/findings-from-readings.ts';
import { LIKELIHOOD_PAIRS } from '../../src/signs/likelihood-pairs.ts';
import { toScale } from '../../src/signs/measure-scale.ts';
import { BROADER_MARKS, MARKS } from '../../src/signs/vocabulary.ts';

const reading = (role: PhotoRole, measures: Measures, trouble: PhotoTrouble[] = []): LeafReading => ({
  role,
  trouble,
  leaf: { found: true },
  measures,
});
const greenIndex = (value: number, se = 0.03): Measures => ({ 'dark-green-index': { value, se } });
/** A pair that the fit gave for even yellowing on the dark green index or hue, whichever it chose. */
const yellow = LIKELIHOOD_PAIRS.find(({ mark }) => mark === 'yellow-even')!;
const yellowMeasures = (value: number, se: number): Measures => ({ [yellow.measure]: { value, se } });
const strengthOf = (findings: ReturnType<typeof findingsFromReadings>, sign: string): number => {
  const finding = findings.find((one) => one.sign === sign);
  return finding === undefined ? 0 : Math.log(finding.ifPresent / finding.ifAbsent);
};

describe('pairs as data', () => {
  it('stand on photographs, inside their range, and never beyond twelve to one', () => {
    expect(LIKELIHOOD_PAIRS.length).toBeGreaterThan(3);
    const marks = new Set<string>([...MARKS.map(({ id }) => id), ...Object.keys(BROADER_MARKS)]);
    for (const pair of LIKELIHOOD_PAIRS) {
      expect(marks.has(pair.mark)).toBe(true);
      expect(Math.min(pair.present.n, pair.absent.n)).toBeGreaterThanOrEqual(10);
      expect(pair.most).toBeLessThanOrEqual(12);
      expect(pair.auc).toBeGreaterThanOrEqual(0.7);
      expect(pair.trust).toBeGreaterThan(0);
      expect(pair.trust).toBeLessThanOrEqual(1);
      for (const { mean } of [pair.present, pair.absent]) {
        expect(mean).toBeGreaterThan(pair.seen[0]);
        expect(mean).toBeLessThan(pair.seen[1]);
      }
    }
  });

  it('speak the more softly the wider the error, and for the mark only on its side', () => {
    for (const pair of LIKELIHOOD_PAIRS.filter(({ scale }) => scale === 'plain')) {
      const there = Math.log(ratioOf(pair, { value: pair.present.mean, se: 0 }));
      const away = Math.log(ratioOf(pair, { value: pair.absent.mean, se: 0 }));
      expect(there).toBeGreaterThan(0);
      expect(away).toBeLessThan(0);
      const wide = Math.abs(pair.present.mean - pair.absent.mean) * 3;
      expect(Math.abs(Math.log(ratioOf(pair, { value: pair.present.mean, se: wide })))).toBeLessThan(there);
    }
  });
});

describe('a normal leaf', () => {
  const golden = greenIndex(0.2, 0.02);
  const wrongIn = (normal: LeafReading) =>
    strengthOf(findingsFromReadings([reading('old', golden), normal]), 'yellow-even@old');

  it('of the same colour takes the yellow for ordinary; one in trouble is held against nothing', () => {
    const alone = strengthOf(findingsFromReadings([reading('old', golden)]), 'yellow-even@old');
    expect(alone).toBeGreaterThan(0);
    expect(wrongIn(reading('normal', golden))).toBeLessThan(0);
    for (const trouble of ['too-dark', 'burnt-out', 'too-blurred'] as const)
      expect(wrongIn(reading('normal', golden, [trouble]))).toBe(alone);
  });
});

describe('scales', () => {
  it('carries errors along: half a step up and down the scale spans the error', () => {
    for (const [value, scale] of [
      [0.3, 'log-odds'],
      [0.02, 'log-odds'],
      [7, 'log'],
    ] as const) {
      const se = 1e-4;
      const here = toScale({ value, se }, scale);
      const span =
        toScale({ value: value + se / 2, se }, scale).value -
        toScale({ value: value - se / 2, se }, scale).value;
      expect(here.se / span).toBeCloseTo(1, 3);
    }
  });
});

describe('findings of the camera', () => {
  const paleValue = yellow.present.mean;
  const greenValue = yellow.absent.mean;
  const se = Math.abs(paleValue - greenValue) / 20;

  it('names the mark by the position the photo was taken at', () => {
    expect(
      strengthOf(findingsFromReadings([reading('old', yellowMeasures(paleValue, se))]), 'yellow-even@old'),
    ).toBeGreaterThan(1);
    expect(
      strengthOf(findingsFromReadings([reading('new', yellowMeasures(paleValue, se))]), 'yellow-even@new'),
    ).toBeGreaterThan(1);
    expect(
      strengthOf(findingsFromReadings([reading('whole', yellowMeasures(paleValue, se))]), 'yellow-even@some'),
    ).toBeGreaterThan(1);
    expect(
      strengthOf(findingsFromReadings([reading('old', yellowMeasures(greenValue, se))]), 'yellow-even@old'),
    ).toBeLessThan(-1);
  });

  it('says nothing of the normal leaf itself, and nothing without photos', () => {
    expect(findingsFromReadings([reading('normal', yellowMeasures(paleValue, se))])).toEqual([]);
    expect(findingsFromReadings([])).toEqual([]);
  });

  it('is silent on photos in trouble and where no leaf was found', () => {
    for (const trouble of ['too-blurred', 'burnt-out', 'too-dark', 'leaf-too-small'] as const) {
      expect(findingsFromReadings([reading('old', yellowMeasures(paleValue, se), [trouble])])).toEqual([]);
    }
    const nothing: LeafReading = { role: 'old', trouble: ['no-leaf'], leaf: { found: false }, measures: {} };
    expect(findingsFromReadings([nothing])).toEqual([]);
  });

  it('does not call a golden variety yellow when its normal leaf is golden too', () => {
    const pale = reading('old', yellowMeasures(paleValue, se));
    const alone = strengthOf(findingsFromReadings([pale]), 'yellow-even@old');
    const compared = strengthOf(
      findingsFromReadings([pale, reading('normal', yellowMeasures(paleValue, se))]),
      'yellow-even@old',
    );
    expect(alone).toBeGreaterThan(1);
    expect(compared).toBeLessThan(0);
  });

  it('still calls a leaf yellow that is paler than its green normal leaf', () => {
    const found = findingsFromReadings([
      reading('old', yellowMeasures(paleValue, se)),
      reading('normal', yellowMeasures(greenValue, se)),
    ]);
    expect(strengthOf(found, 'yellow-even@old')).toBeGreaterThan(1);
  });

  it('speaks once for several photos of one position, and no louder for the same leaf taken again', () => {
    const once = reading('old', yellowMeasures(paleValue, se));
    const alone = strengthOf(findingsFromReadings([once]), 'yellow-even@old');
    const thrice = findingsFromReadings([once, once, once]);
    expect(thrice.filter(({ sign }) => sign === 'yellow-even@old')).toHaveLength(1);
    expect(strengthOf(thrice, 'yellow-even@old')).toBeCloseTo(alone, 10);
  });

  it('takes a mark that one of two leaves shows as likely there, less surely than if both did', () => {
    const pale = reading('old', yellowMeasures(paleValue, se));
    const green = reading('old', yellowMeasures(greenValue, se));
    const both = strengthOf(findingsFromReadings([pale, pale]), 'yellow-even@old');
    const one = strengthOf(findingsFromReadings([pale, green]), 'yellow-even@old');
    expect(one).toBeGreaterThan(0);
    expect(one).toBeLessThan(both);
    expect(one).toBeCloseTo(strengthOf(findingsFromReadings([green, pale]), 'yellow-even@old'), 10);
    const apart = findingsFromReadings([pale, { ...green, role: 'new' }]);
    expect(strengthOf(apart, 'yellow-even@old')).toBeCloseTo(both, 10);
    expect(strengthOf(apart, 'yellow-even@new')).toBeLessThan(0);
  });

  it('has nothing to say of values that no photograph of the fit came near', () => {
    const far = paleValue + 6 * (paleValue - greenValue);
    expect(findingsFromReadings([reading('old', yellowMeasures(far, se))])).toEqual([]);
  });

  it('is silent on measures that no pair rests on', () => {
    expect(findingsFromReadings([reading('old', { 'purple-fraction': { value: 0.6, se: 0.05 } })])).toEqual(
      [],
    );
    expect(findingsFromReadings([reading('old', greenIndex(Number.NaN))])).toEqual([]);
  });
});
