import { compareWords } from './loose.ts';
import type { CaseRecord } from './records.ts';

/** Finds cases by words; made once for a list of cases and asked with every letter that is typed. */
export type CaseSearch = (query: string) => readonly CaseRecord[];

/**
 * A search over cases: those in which every word of the query occurs, newest look first. `wordsOf` gives what a person can
 * search in a case (names of crops and causes are words of the app, not of the record), made plain by `plainWords`.
 */
export function searchOver(cases: readonly CaseRecord[], wordsOf: (kept: CaseRecord) => string): CaseSearch {
  const sorted = [...cases].sort(
    (a, b) => compareWords(lastDay(b), lastDay(a)) || compareWords(b.changedAt, a.changedAt),
  );
  let words: readonly string[] | undefined;
  return (query) => {
    const wanted = plainWords(query).split(' ').filter(Boolean);
    if (wanted.length === 0) return sorted;
    // An empty query needs no words, so a list opens before they are gathered.
    words ??= sorted.map(wordsOf);
    const known = words;
    return sorted.filter((_, at) => wanted.every((word) => known[at]!.includes(word)));
  };
}

/** Lower case, accents taken off, single spaces: "Café " and "cafe" are one word to a searcher. */
export function plainWords(words: string): string {
  // Most words have no accents, and taking them off costs far more than looking.
  const bare = /[^ -~]/.test(words) ? words.normalize('NFD').replace(/\p{M}/gu, '') : words;
  const low = bare.toLowerCase();
  return (/\s\s|[^\S ]/.test(low) ? low.replace(/\s+/g, ' ') : low).trim();
}

const lastDay = (kept: CaseRecord): string => kept.looks.at(-1)?.date ?? kept.openedOn;
