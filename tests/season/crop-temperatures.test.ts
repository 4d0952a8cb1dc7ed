import { describe, expect, it } from 'vitest';
import {
  CROP_TEMPERATURES,
  celsiusOf,
  chanceTooColdForSeed,
  degreeDayBaseOf,
  GERMINATION,
  growingMinimumOf,
  HARM_BELOW,
} from '../../src/season/crop-temperatures.ts';
import { daysToEmergence, shareOfNormalSeedlings } from '../../src/season/days-to-emergence.ts';
import { CROP_GROUPS } from '../../src/signs/crops.ts';
import { CROPS } from '../../src/signs/vocabulary.ts';

describe('the table of crops', () => {
  it('holds every crop of the vocabulary but "other", and no other', () => {
    expect(Object.keys(CROP_TEMPERATURES).sort()).toEqual(CROPS.filter((crop) => crop !== 'other').sort());
    for (const crop of Object.keys(GERMINATION)) expect(CROPS).toContain(crop);
  });

  it.each(Object.entries(GERMINATION))('E1 %s: least below best below most (OSU-HARR)', (_, published) => {
    const { min, optimumFrom, optimumTo, optimum, max } = published;
    expect(min).toBeLessThanOrEqual(optimumFrom);
    expect(optimumFrom).toBeLessThan(optimumTo);
    expect(optimum).toBeGreaterThanOrEqual(optimumFrom);
    expect(optimumTo).toBeLessThanOrEqual(max);
  });

  it.each([
    ['french-bean', 15.6, 35],
    ['pea', 4.4, 29.4],
    ['lettuce', 1.7, 35],
    ['sweetcorn', 10, 40.6],
    ['melon', 15.6, 37.8],
    ['tomato', 10, 35],
  ])('E1 %s comes up between %f and %f °C (OSU-HARR)', (crop, min, max) => {
    expect(celsiusOf(GERMINATION[crop]!.min)).toBeCloseTo(min, 1);
    expect(celsiusOf(GERMINATION[crop]!.max)).toBeCloseTo(max, 1);
  });

  it('E1, E4 at 8 °C in the soil beans and cucumbers are too cold, peas and spinach not; three degrees of doubt (OSU-HARR, SUNDOWN-IFAS, TAMU-EK)', () => {
    expect(chanceTooColdForSeed('french-bean', 8)).toBeGreaterThan(0.95);
    expect(chanceTooColdForSeed('cucumber', 8)).toBeGreaterThan(0.95);
    expect(chanceTooColdForSeed('pea', 8)).toBeLessThan(0.1);
    expect(chanceTooColdForSeed('spinach', 8)).toBeLessThan(0.1);
    expect(chanceTooColdForSeed('tomato', 10)).toBeCloseTo(0.5, 6);
    expect(chanceTooColdForSeed('tomato', 13)).toBeCloseTo(0.1, 6);
    expect(chanceTooColdForSeed('kale', 8)).toBeUndefined();
  });

  it.each([
    ['broad-bean', 4.4],
    ['kale', 4.4],
    ['leek', 7.2],
    ['lettuce', 7.2],
    ['french-bean', 10],
    ['courgette', 10],
    ['cucumber', 15.6],
    ['melon', 15.6],
    ['tomato', 18.3],
    ['aubergine', 18.3],
  ])('E5 the growing minimum of %s is %f °C (UCSC-KNOTT)', (crop, celsius) => {
    expect(growingMinimumOf(crop)).toBeCloseTo(celsius, 1);
  });

  it('E6 every crop that chilling hurts is tender here, and cucumber suffers sooner than tomato (PURDUE-CHILL)', () => {
    for (const crop of CROP_GROUPS['chilling-sensitive'])
      expect(CROP_TEMPERATURES[crop]!.hardiness, crop).toBe('tender');
    expect(CROP_TEMPERATURES.cucumber!.coldDaysBorne).toBeLessThan(CROP_TEMPERATURES.tomato!.coldDaysBorne);
  });

  it('E8–E10 names what harms single crops (UMASS-2021, PSU-TOM, AGMET-VEG)', () => {
    const below = (crop: string) => HARM_BELOW.filter((harm) => harm.crop === crop).map((h) => h.celsius);
    expect(below('basil')[0]).toBeCloseTo(5.6, 1);
    expect(below('aubergine')[0]).toBeCloseTo(4.4, 1);
    expect(below('tomato')).toEqual([8, 10]);
    expect(below('cucumber')).toEqual([12, 14]);
  });

  it('E13 kale, sprouts, leek, broad bean, spinach, garlic are very hardy; beet, lettuce, potato half-hardy (from memory)', () => {
    for (const crop of ['kale', 'brussels-sprout', 'leek', 'broad-bean', 'spinach', 'garlic'])
      expect(CROP_TEMPERATURES[crop]!.hardiness, crop).toBe('very-hardy');
    for (const crop of ['beetroot', 'carrot', 'lettuce', 'chard', 'celery', 'potato'])
      expect(CROP_TEMPERATURES[crop]!.hardiness, crop).toBe('half-hardy');
  });

  it('E14 cool crops count from 4.4 °C, sweetcorn from 10 °C (UDEL-GDD, OSU-CROPT)', () => {
    expect(degreeDayBaseOf('pea')).toBeCloseTo(4.4, 1);
    expect(degreeDayBaseOf('sweetcorn')).toBeCloseTo(10, 6);
  });

  it('ranks by tenderness as the trade does (common practice, no source)', () => {
    const borne = (crop: string) => CROP_TEMPERATURES[crop]!.coldDaysBorne;
    expect(borne('soya-bean')).toBeGreaterThan(borne('french-bean'));
    expect(borne('broad-bean')).toBeGreaterThan(2 * borne('soya-bean'));
    expect(borne('tomato')).toBeGreaterThan(borne('pepper'));
    expect(borne('tomato')).toBeGreaterThan(borne('aubergine'));
    const [most] = Object.entries(CROP_TEMPERATURES).sort((a, b) => a[1].coldDaysBorne - b[1].coldDaysBorne);
    expect(most![0]).toBe('melon');
    expect(CROP_TEMPERATURES['french-bean']!.soilSlowBelowCelsius).toBeGreaterThanOrEqual(18);
  });
});

describe('coming up', () => {
  it('E2 carrots sown ten days ago at 10 °C need not be up: seventeen days (OSU-HARR)', () => {
    expect(daysToEmergence('carrot', 10)).toBe(17);
    expect(daysToEmergence('lettuce', 5)).toBe(15);
    expect(daysToEmergence('sweetcorn', 20)).toBe(7);
    expect(daysToEmergence('carrot', 12.5)).toBeCloseTo(13.5, 6);
    expect(daysToEmergence('french-bean', 10)).toBeUndefined();
    expect(daysToEmergence('beetroot', 35)).toBe(4);
  });

  it('E3 lettuce sleeps at 30 °C, spinach halves by 20 °C, beans fail at 10 °C (HDF-GERM)', () => {
    expect(shareOfNormalSeedlings('lettuce', 30)).toBeCloseTo(0.12, 6);
    expect(shareOfNormalSeedlings('spinach', 20)).toBeCloseTo(0.52, 6);
    expect(shareOfNormalSeedlings('french-bean', 10)).toBeCloseTo(0.01, 6);
    expect(shareOfNormalSeedlings('tomato', 12.5)).toBeCloseTo(0.9, 6);
  });
});
