/** Days as `YYYY-MM-DD`, counted at midnight UTC so that summer time is not in the way. Imports nothing; every room may use it. */
const DAY_MS = 86_400_000;

const midnight = (day: string): number => Date.parse(`${day}T00:00:00Z`);

/** The day so many days later (earlier where negative). */
export const dayAfter = (day: string, days: number): string =>
  new Date(midnight(day) + days * DAY_MS).toISOString().slice(0, 10);

/** Whole days from the first day to the second; negative when it lies before. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((midnight(to) - midnight(from)) / DAY_MS);
