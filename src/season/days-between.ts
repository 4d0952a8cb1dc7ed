const DAY = 86_400_000;

/** Whole days from the first of two ISO dates (`YYYY-MM-DD`) to the second; negative when it lies before. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);
