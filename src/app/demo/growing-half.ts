import type { Zone } from '../../season/season-of.ts';

/** The half of the earth where it is the growing season on a day: the invented garden is always in mid-season. */
export const growingHalf = (day: string): Zone =>
  Number(day.slice(5, 7)) >= 5 && Number(day.slice(5, 7)) <= 10 ? 'north' : 'south';
