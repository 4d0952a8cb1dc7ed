import type { Zone } from '../../days/growing-year.ts';

/** The half of the earth where it is the growing season on a day: the invented garden is always in mid-season. */
export const growingHalf = (day: string): Zone =>
  Number(day.slice(5, 7)) >= 5 && Number(day.slice(5, 7)) <= 10 ? 'north' : 'south';
