import type { MetCause } from '../../garden/count-causes.ts';
import { bedsOfReturn, NEVER_FOUND } from '../../garden/count-causes.ts';
import { BOOK_WORDS } from './book.ts';
import { capitalise, joinWords } from './causes.ts';
import { endName } from './outcome.ts';

const times = (count: number): string => (count === 1 ? '1 case' : `${count} cases`);

/** Which causes were met where, through the years. */
export const RECURRING_WORDS = {
  title: BOOK_WORDS.recurring,
  none: 'Nothing yet. When a case is over, say on its page how it ended: then it stands here, by cause and bed.',
  lead: (cases: number, causes: number, years: readonly string[]): string =>
    `${times(cases)} settled, ${causes === 1 ? '1 cause' : `${causes} causes`}, ${span(years)}. A number leads to its cases.`,
  returns: 'Came back in the same bed',
  noReturns: 'No cause has come back to a bed where it was in another year.',
  noReturnsWithoutWinter: 'No cause has come back to a bed a year or more after it was first met there.',
  several: 'Met more than once',
  once: (count: number): string => (count === 1 ? 'One cause met once' : `${count} causes met once`),
  never: (count: number): string => `Never found out: ${times(count)}`,
  noBed: 'No bed named',
  before: (year: string): string => `before ${year}`,
  all: 'All',
  cell: (count: number, bed: string, year: string): string => `${times(count)}, ${bed}, ${year}`,
  cellNone: 'none',
  allYears: 'all years',
  casesOf: (cause: string, where: string): string => [cause, where].filter(Boolean).join(': '),
  toTable: BOOK_WORDS.recurring,
  gone: 'No such case is left.',
} as const;

export const nameOfMet = (cause: string): string =>
  cause === NEVER_FOUND ? 'Never found out' : capitalise(endName(cause));

/** "2024 to 2026", "in 2026" */
function span(years: readonly string[]): string {
  const [first, last] = [years[0] ?? '', years.at(-1) ?? ''];
  return first === last ? `in ${first}` : `${first} to ${last}`;
}

/** "4 cases in 2 beds, in 2 years from 2024 to 2026. 1 of them rests on a guess." */
export function sayMet({ cases, beds, years }: MetCause): string {
  const where = beds.length === 1 ? `in ${beds[0]!.bed.name || 'no bed named'}` : `in ${beds.length} beds`;
  const when =
    years.length < 2 ? span(years) : `in ${years.length} years from ${years[0]} to ${years.at(-1)}`;
  const guesses = cases.filter(({ outcome }) => outcome.sureness === 'guess').length;
  const doubt =
    guesses === 0
      ? ''
      : ` ${guesses === cases.length ? (guesses === 1 ? 'It rests' : 'All rest') : guesses === 1 ? '1 of them rests' : `${guesses} of them rest`} on a guess.`;
  return `${times(cases.length)} ${where}, ${when}.${doubt}`;
}

/** One line for each bed in which the cause came back: "Clubroot in Long bed: 2024 and 2026". */
export const sayReturns = (met: MetCause): readonly { readonly bed: string; readonly says: string }[] =>
  met.cause === NEVER_FOUND
    ? []
    : bedsOfReturn(met)
        .filter(({ bed }) => bed.key !== '')
        .map(({ bed, byYear }) => ({
          bed: bed.key,
          says: `${nameOfMet(met.cause)} in ${bed.name}: ${joinWords([...byYear.keys()].sort())}`,
        }));
