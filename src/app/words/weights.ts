/**
 * A weight of evidence in words. Decibans are 10 log10 of the factor on the odds (Good 1950, via sources F and J of the
 * trade facts): 3 double them, 5 treble them, 10 make them tenfold.
 */
export function describeWeight(decibans: number): string {
  const size = Math.abs(decibans);
  const factor = 10 ** (size / 10);
  const direction = decibans >= 0 ? 'as likely' : 'less likely';
  if (size < 0.5) return 'hardly any weight';
  if (size < 1.3) return decibans >= 0 ? 'a little more likely' : 'a little less likely';
  if (size < 2.4) return `about one and a half times ${direction}`;
  if (factor < 2.4) return decibans >= 0 ? 'about twice as likely' : 'about half as likely';
  if (factor > 95) return `a hundred times ${direction} or more`;
  return `about ${roundly(factor)} times ${direction}`;
}

/** 2.6 → "two and a half", 7.3 → "7", 23 → "25": no more figures than the tables deserve. */
function roundly(factor: number): string {
  if (factor < 2.75) return 'two and a half';
  if (factor < 10.5) return String(Math.round(factor));
  if (factor < 30) return String(Math.round(factor / 5) * 5);
  return String(Math.round(factor / 10) * 10);
}
