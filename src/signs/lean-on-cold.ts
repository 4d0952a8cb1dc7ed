import { CROP_TEMPERATURES, type CropTemperatures } from '../season/crop-temperatures.ts';
import type { Chain, Said } from './chain-leanings.ts';
import type { CropId } from './vocabulary.ts';

/** Odds multipliers of a check by cold where it was too cold for the crop, and where not: above "more", and "far less". */
const TOO_COLD_ODDS = 4;
const WARM_ODDS = 1 / 9;

/** Odds that it was too cold, on any plant that made a grower stop: a quarter (common practice, no source). */
const USUAL_ODDS = 1 / 3;

/** Likelihood ratios of what a grower says of the last weeks (our own estimate). A frost is a cause of its own. */
const SAID_RATIO: Readonly<Record<string, number>> = {
  frost: 1,
  'cold-for-crop': 9,
  'about-right': 0.04,
  hot: 0.015,
};

/** Any vegetable: tender ones are over half of those asked about. */
const SOME_CROP: Pick<CropTemperatures, 'coldDaysBorne' | 'soilSlowBelowCelsius'> = {
  coldDaysBorne: 8,
  soilSlowBelowCelsius: 13,
};

/** No count and no reading settles it: one day is not like the next, one corner of a bed not like another. */
const within = (ratio: number, most: number): number => Math.min(most, Math.max(1 / most, ratio));
const MOST_BY_DAYS = 12;
const MOST_BY_READING = 8;

/** A soil thermometer once in the morning says so much about three weeks: give or take 2.5 °C (ZHENG-1993: 1.5 to 2.9). */
const SOIL_SD = 2.5;

export const temperaturesOf = (crop?: CropId): typeof SOME_CROP =>
  (crop === undefined ? undefined : CROP_TEMPERATURES[crop]) ?? SOME_CROP;

/** The temperature below which a day counts as cold for a crop, whole °C; undefined where the crop is not known. */
export function coldBelowOf(crop?: CropId): number | undefined {
  const known = crop === undefined ? undefined : CROP_TEMPERATURES[crop];
  return known && Math.round(known.coldBelowCelsius);
}

function oddsTooCold(said: Said, crop?: CropId): number {
  const { coldDaysBorne, soilSlowBelowCelsius } = temperaturesOf(crop);
  let odds = USUAL_ODDS;
  const [word, days, soil] = [said['recent-temperature'], said['cold-days'], said['soil-celsius']];
  if (word !== undefined) odds *= SAID_RATIO[word as string] ?? 1;
  if (days !== undefined) odds *= within(((days as number) / coldDaysBorne) ** 2, MOST_BY_DAYS);
  if (soil !== undefined) {
    const steps = (soilSlowBelowCelsius - (soil as number)) / SOIL_SD;
    odds *= within(Math.exp(1.7 * steps), MOST_BY_READING);
  }
  return odds;
}

/**
 * How cold days, a soil thermometer and the grower's word lean on a check by cold, by how much cold the crop bears.
 * All three speak of one thing, whether it was too cold for this crop, and count together.
 */
export function coldChain(crop?: CropId): Chain {
  return {
    cause: 'cold-check',
    order: ['recent-temperature', 'cold-days', 'soil-celsius'],
    odds: (said) => {
      const odds = oddsTooCold(said, crop);
      const chance = odds / (1 + odds);
      return chance * TOO_COLD_ODDS + (1 - chance) * WARM_ODDS;
    },
    because: (id, said, by) => {
      const below = coldBelowOf(crop);
      if (id === 'cold-days') {
        const { coldDaysBorne } = temperaturesOf(crop);
        const limit = below === undefined ? 'too cold for it' : `below ${below} °C`;
        return by > 1
          ? `of 21 days ${Math.round(said['cold-days'] as number)} were ${limit}, and about ${coldDaysBorne} set this crop back`
          : 'this crop bears so many cold days';
      }
      if (id !== 'soil-celsius' || crop === undefined) return undefined;
      const slow = Math.round(temperaturesOf(crop).soilSlowBelowCelsius);
      return by > 1
        ? `this crop hardly grows in soil below about ${slow} °C`
        : `this crop grows in soil above about ${slow} °C`;
    },
  };
}
