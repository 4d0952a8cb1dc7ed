export type Hemisphere = 'north' | 'south';

/**
 * The season of a date by the meteorological quarters (March to May is spring in the north), turned by half a year
 * south of the equator.
 * @param date ISO 8601, `YYYY-MM-DD`
 */
export function seasonOf(
  date: string,
  hemisphere: Hemisphere = 'north',
): 'spring' | 'summer' | 'autumn' | 'winter' {
  const month = Number(date.slice(5, 7));
  const quarter = Math.floor(((month + 9) % 12) / 3);
  const turned = hemisphere === 'south' ? (quarter + 2) % 4 : quarter;
  return (['spring', 'summer', 'autumn', 'winter'] as const)[turned]!;
}
