import { describe, expect, it } from 'vitest';
import { chanceLockedInSoil, chanceLockedUnderMulch, chanceStillRotting } from '../../src/garden/lock-up.ts';
import {
  CARBON_TO_NITROGEN,
  type Material,
  type MaterialName,
  materialOf,
} from '../../src/garden/materials.ts';
import {
  BREAK_EVEN_RATIO,
  blendRatios,
  chanceOfTieUp,
  nitrogenBalance,
  nitrogenToAdd,
  TIE_UP_LIMITS,
} from '../../src/garden/nitrogen-balance.ts';
import { chanceAbove, logNormalOf, normalBelow } from '../../src/garden/normal.ts';
import { warmthSince } from '../../src/season/soil-temperature.ts';

/** A ratio known to a tenth. */
const ratio = (value: number) => logNormalOf(value / 1.1, value, value * 1.1);
const NOTHING_YET = { degreeDays: 0, relativeSd: 0 };
const tiesUp = (name: MaterialName): number => chanceOfTieUp(materialOf(name).carbonToNitrogen);

describe('the normal distribution', () => {
  it('has its textbook values', () => {
    expect(normalBelow(0)).toBeCloseTo(0.5, 6);
    expect(normalBelow(1)).toBeCloseTo(0.841345, 5);
    expect(normalBelow(-1.959964)).toBeCloseTo(0.025, 5);
  });

  it('puts one in ten below the low point and above the high point of a range', () => {
    const range = logNormalOf(10, 20, 40);
    expect(chanceAbove(range, 40)).toBeCloseTo(0.1, 5);
    expect(chanceAbove(range, 20)).toBeCloseTo(0.5, 5);
    expect(chanceAbove(range, 10)).toBeCloseTo(0.9, 5);
  });
});

describe('B. carbon to nitrogen', () => {
  it.each<[MaterialName, number]>([
    ['rye-straw', 82],
    ['wheat-straw', 80],
    ['oat-straw', 70],
    ['maize-stover', 57],
    ['rye-flowering', 37],
    ['pea-straw', 29],
    ['rye-young', 26],
    ['hay-mature-lucerne', 25],
    ['farmyard-manure-rotted', 20],
    ['hay-legume', 17],
    ['cattle-manure', 17],
    ['lucerne-young', 13],
    ['vetch', 11],
  ])('B1 %s is at %d (NRCS-CN)', (name, published) => {
    expect(CARBON_TO_NITROGEN[name].middle).toBe(published);
  });

  it('B1 the higher the ratio the likelier the tie-up (NRCS-CN)', () => {
    const names = ['vetch', 'hay-mature-lucerne', 'rye-young', 'pea-straw', 'rye-flowering', 'wheat-straw'];
    const chances = names.map((name) => tiesUp(name as MaterialName));
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[0]).toBeLessThan(0.01);
    expect(chances.at(-1)).toBeGreaterThan(0.99);
  });

  it('B2 horse manure is a range from 20 to over 50, wider and higher with shavings; poultry 6 to 12 (UCSC-COMP, OSU-ASK, SOLOMON)', () => {
    const { low, high } = CARBON_TO_NITROGEN['horse-manure'];
    expect(low).toBeLessThanOrEqual(20);
    expect(high).toBeGreaterThanOrEqual(50);
    expect(CARBON_TO_NITROGEN['horse-manure-with-shavings'].high).toBeGreaterThan(60);
    expect(tiesUp('horse-manure-with-shavings')).toBeGreaterThan(tiesUp('horse-manure'));
    expect(tiesUp('horse-manure')).toBeGreaterThan(0.4);
    expect(tiesUp('horse-manure')).toBeLessThan(0.8);
    expect(tiesUp('poultry-manure')).toBeLessThan(0.001);
  });

  it('B3 sawdust and chips in the hundreds, straw in the tens, finished compost below 20 (NRAES-54, from memory)', () => {
    expect(CARBON_TO_NITROGEN.sawdust.middle).toBeGreaterThan(200);
    expect(CARBON_TO_NITROGEN['wood-chips'].middle).toBeGreaterThan(200);
    expect(CARBON_TO_NITROGEN.straw.middle).toBeGreaterThan(40);
    expect(CARBON_TO_NITROGEN.straw.middle).toBeLessThan(150);
    expect(CARBON_TO_NITROGEN['finished-compost'].high).toBeLessThanOrEqual(20);
  });

  it('B4 15 none, 25 uncertain, 35 likely (AB-NMP)', () => {
    expect(chanceOfTieUp(ratio(15))).toBeLessThan(0.02);
    expect(chanceOfTieUp(ratio(25))).toBeGreaterThan(0.3);
    expect(chanceOfTieUp(ratio(25))).toBeLessThan(0.7);
    expect(chanceOfTieUp(ratio(35))).toBeGreaterThan(0.8);
  });

  it('B5 the disagreeing limits stay a soft step from 20 to 35; compost first above 100 (AB-NMP, NRCS-CN, BARKER)', () => {
    expect(TIE_UP_LIMITS).toEqual([20, 24, 30, 35]);
    const chances = [17, 20, 22, 24, 27, 30, 33, 36, 42, 100].map((value) => chanceOfTieUp(ratio(value)));
    chances.slice(1).forEach((chance, i) => {
      expect(chance).toBeGreaterThan(chances[i]!);
      // No jump: no single limit decides.
      expect(chance - chances[i]!).toBeLessThan(0.25);
    });
    expect(chances.at(-1)).toBeGreaterThan(0.999);
  });

  it('B5 a range that straddles the limits gives less than a half-known number would', () => {
    expect(chanceOfTieUp(logNormalOf(15, 40, 107))).toBeLessThan(chanceOfTieUp(ratio(40)));
    expect(chanceOfTieUp(logNormalOf(6, 15, 38))).toBeGreaterThan(chanceOfTieUp(ratio(15)));
  });
});

describe('B. the balance of nitrogen', () => {
  it.each([
    [500, -1.88],
    [80, -1.41],
    [24, -0.09],
    [12, 1.78],
  ])('B11 45 kg of carbon at %d: %f kg (NRCS-CN for 8; the share kept from memory)', (value, kg) => {
    expect(nitrogenBalance(45, value)).toBeCloseTo(kg, 2);
  });

  it('B11 changes sign near 23', () => {
    expect(BREAK_EVEN_RATIO).toBeCloseTo(22.86, 2);
    expect(nitrogenBalance(1, 22.8)).toBeGreaterThan(0);
    expect(nitrogenBalance(1, 22.9)).toBeLessThan(0);
  });

  it('B12 a cubic yard of sawdust, 240 lb carbon and 0.6 lb nitrogen, needs 7.4 lb to come to 30: 16 lb of urea at 46 % (OSU-ASK)', () => {
    const add = nitrogenToAdd(240, 0.6, 30);
    expect(add).toBeCloseTo(7.4, 6);
    expect(add / 0.46).toBeCloseTo(16.1, 1);
    expect(nitrogenToAdd(240, 10, 30)).toBe(0);
  });

  it('mixing in something rich pulls the blend down, finished compost hardly', () => {
    const [wood, poultry] = [materialOf('sawdust'), materialOf('poultry-manure')];
    const finished = materialOf('finished-compost');
    const alone = chanceOfTieUp(wood.carbonToNitrogen);
    expect(chanceOfTieUp(blendRatios([wood, poultry]))).toBeLessThan(0.6 * alone);
    expect(chanceOfTieUp(blendRatios([wood, finished]))).toBeGreaterThan(0.8 * alone);
    expect(blendRatios([wood])).toEqual(wood.carbonToNitrogen);
    // Nitrogen per carbon averages: the blend of two alike keeps their middle.
    const same: Material = { ...poultry, carbonToNitrogen: ratio(20) };
    expect(Math.exp(blendRatios([same, same]).logMean)).toBeCloseTo(20, 0);
  });
});

describe('B. how long it lasts', () => {
  const later = (days: number, celsius: number) => warmthSince(days / 7, undefined, 'north', celsius);

  it('B7 half of it is over after 70 days at 10 °C, 47 at 15 °C, 35 at 20 °C (KUSON-2005)', () => {
    const dairy = materialOf('cattle-manure');
    for (const [days, celsius] of [
      [70, 10],
      [700 / 15, 15],
      [35, 20],
    ] as const) {
      expect(chanceStillRotting(dairy, later(days, celsius))).toBeCloseTo(0.5, 6);
      expect(chanceStillRotting(dairy, later(days / 3, celsius))).toBeGreaterThan(0.9);
      expect(chanceStillRotting(dairy, later(days * 3, celsius))).toBeLessThan(0.1);
    }
  });

  it('B7 sawdust lasts longer (KUSON-2005)', () => {
    expect(chanceStillRotting(materialOf('sawdust'), later(70, 10))).toBeGreaterThan(0.7);
  });

  it('B8 two weeks against six months changes it strongly; warmer soil clears faster (SOLOMON)', () => {
    const shavings = [materialOf('horse-manure-with-shavings')];
    const fresh = chanceLockedInSoil(shavings, later(14, 13));
    const old = chanceLockedInSoil(shavings, later(182, 13));
    expect(fresh).toBeGreaterThan(0.8);
    expect(old).toBeLessThan(0.25);
    expect(chanceLockedInSoil(shavings, later(60, 20))).toBeLessThan(
      chanceLockedInSoil(shavings, later(60, 8)),
    );
  });

  it('when the warmth is known only from the season, the spread is wider', () => {
    const dairy = materialOf('cattle-manure');
    const bySeason = warmthSince(4, '2026-05-20', 'north');
    const byRecords = { ...bySeason, relativeSd: 0.05 };
    expect(bySeason.degreeDays).toBeLessThan(700);
    expect(chanceStillRotting(dairy, bySeason)).toBeLessThan(chanceStillRotting(dairy, byRecords));
  });

  it('no time at all: everything is still there; nothing brought: nothing locked', () => {
    expect(chanceStillRotting(materialOf('straw'), NOTHING_YET)).toBe(1);
    expect(chanceLockedInSoil([], NOTHING_YET)).toBe(0);
  });
});

describe('B. on top or dug in', () => {
  const chips = [materialOf('wood-chips')];
  const coarse = { pieces: 'coarse', shallowRoots: false } as const;

  it('B9 dug in far more than on top, which is not nothing, more for shallow roots (CHALKER-WC)', () => {
    const dugIn = chanceLockedInSoil(chips, NOTHING_YET);
    const onTop = chanceLockedUnderMulch(chips, NOTHING_YET, coarse);
    expect(dugIn).toBeGreaterThan(10 * onTop);
    expect(onTop).toBeGreaterThan(0.01);
    expect(chanceLockedUnderMulch(chips, NOTHING_YET, { ...coarse, shallowRoots: true })).toBeGreaterThan(
      onTop,
    );
  });

  it('B10 fine pieces on top do more than coarse ones (SPU-MULCH)', () => {
    const fine = chanceLockedUnderMulch(chips, NOTHING_YET, { ...coarse, pieces: 'fine' });
    expect(fine).toBeGreaterThan(2 * chanceLockedUnderMulch(chips, NOTHING_YET, coarse));
    expect(fine).toBeLessThan(chanceLockedInSoil(chips, NOTHING_YET) / 3);
  });
});
