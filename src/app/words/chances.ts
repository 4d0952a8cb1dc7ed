/**
 * A probability and its range as a frequency a person can picture. Never a bare percent, never "certain", never
 * "impossible": the ends are "fewer than 1 in 100" and "more than 99 in 100".
 */
export function describeChance(chance: Chance, of: string = GARDENS): string {
  const whole = wholeFor(chance.probability);
  const middle = share(chance.probability, whole);
  const said = /^(fewer|more)/.test(middle) ? middle : `about ${middle}`;
  return `${said} in ${whole} ${of}${rangeInBrackets(chance, whole, middle)}`;
}

/** The short form beside a beam or in a sentence: "about 6 in 10". */
export function describeChanceShortly(probability: number): string {
  const whole = wholeFor(probability);
  const middle = share(probability, whole);
  return `${/^(fewer|more)/.test(middle) ? '' : 'about '}${middle} in ${whole}`;
}

export const GARDENS = 'gardens with these signs';
/** After the first mention. */
export const GARDENS_SHORT = 'gardens';

export interface Chance {
  readonly probability: number;
  /** 10 % and 90 % point. */
  readonly low?: number;
  readonly high?: number;
}

/** Tens say enough in the middle; towards the ends they would round to none or all, so hundreds take over. */
const wholeFor = (probability: number): 10 | 100 => (probability >= 0.095 && probability < 0.945 ? 10 : 100);

function share(probability: number, whole: 10 | 100): string {
  const count = Math.round(probability * whole);
  // Rounding must not turn a small doubt into none.
  if (count < 1) return 'fewer than 1';
  if (count >= whole) return `more than ${whole - 1}`;
  return String(count);
}

function rangeInBrackets({ low, high }: Chance, whole: 10 | 100, middle: string): string {
  if (low === undefined || high === undefined) return '';
  const from = share(low, whole);
  const to = share(high, whole);
  if (from === to) return from === middle ? '' : ` (${from})`;
  // "8 to more than 9" is no range that anybody says.
  if (/^fewer/.test(from) && /^more/.test(to)) return ` (anything from ${from} to ${to})`;
  // "About 1 in 10 (up to 1)" would say one number twice.
  if (/^fewer/.test(from) && to === middle) return ' (or fewer)';
  if (/^more/.test(to) && from === middle) return ' (or more)';
  if (/^more/.test(to)) return ` (${from} or more)`;
  if (/^fewer/.test(from)) return ` (up to ${to})`;
  return ` (${from} to ${to})`;
}
