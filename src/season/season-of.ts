import type { Zone } from '../days/growing-year.ts';

/**
 * The season of a date by the meteorological quarters (March to May is spring in the north), turned by half a year
 * south of the equator. Where no winter comes no date has a season: it is `no-winter` all year. What the seasons of
 * temperate places bring, long days, broods, hungry birds, is not said of it; only what the want of cold itself brings is.
 * @param date ISO 8601, `YYYY-MM-DD`
 */
export function seasonOf(date: string, zone: Zone): 'spring' | 'summer' | 'autumn' | 'winter' | 'no-winter' {
  if (zone === 'tropics') return 'no-winter';
  const month = Number(date.slice(5, 7));
  const quarter = Math.floor(((month + 9) % 12) / 3);
  const turned = zone === 'south' ? (quarter + 2) % 4 : quarter;
  return (['spring', 'summer', 'autumn', 'winter'] as const)[turned]!;
}
