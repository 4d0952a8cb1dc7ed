import type { CaseRecord } from './records.ts';

/**
 * Cases in which every word of the query occurs, newest look first. `wordsOf` gives what a person can search in a case
 * (names of crops and causes are words of the app, not of the record).
 */
export function searchCases(
  cases: readonly CaseRecord[],
  query: string,
  wordsOf: (kept: CaseRecord) => string,
): CaseRecord[] {
  const wanted = plain(query).split(' ').filter(Boolean);
  return cases
    .filter((kept) => {
      const words = plain(wordsOf(kept));
      return wanted.every((word) => words.includes(word));
    })
    .sort((a, b) =>
      lastDay(a) === lastDay(b) ? (a.changedAt < b.changedAt ? 1 : -1) : lastDay(a) < lastDay(b) ? 1 : -1,
    );
}

/** Lower case, accents taken off, single spaces: "Café " and "cafe" are one word to a searcher. */
const plain = (words: string): string =>
  words.normalize('NFD').replace(/\p{M}/gu, '').toLocaleLowerCase('en-GB').replace(/\s+/g, ' ').trim();

const lastDay = (kept: CaseRecord): string => kept.looks.at(-1)?.date ?? kept.openedOn;
