import type { Outcome } from '../../garden/records.ts';
import type { Sureness } from '../../ranker/learn-sureness.ts';
import { capitalise, causeName, joinWords } from './causes.ts';

/** How much of the crop was lost; kept with the case as a word. */
export const LOST = ['none', 'tenth', 'half', 'most', 'all'] as const;
export type Lost = (typeof LOST)[number];

export const OUTCOME_WORDS = {
  title: 'How did it end?',
  about: (plant: string, bed: string): string => [plant, bed].filter(Boolean).join(' · '),
  toCase: 'Back to the case',
  what: 'What was it?',
  whatHow: 'What you found, whatever Bedside thought. Several if they acted together.',
  another: 'Something else',
  choose: 'choose from the list …',
  never: 'I never found out',
  unlisted: 'something not in this list',
  sure: 'How do you know?',
  sureness: {
    guess: { name: 'A guess', says: 'is kept, but teaches nothing' },
    fairly: { name: 'Fairly sure', says: 'it went as it does with this cause' },
    seen: { name: 'I saw it myself', says: 'dug up, turned over, caught at it' },
    told: { name: 'Somebody who can tell', says: 'a laboratory, plant clinic or adviser' },
  } satisfies Record<Sureness, { name: string; says: string }>,
  lost: 'How much of the crop was lost?',
  lostWords: {
    none: 'nothing',
    tenth: 'up to a tenth',
    half: 'up to half',
    most: 'more than half',
    all: 'all of it',
  } satisfies Record<Lost, string>,
  done: 'What was done, if anything',
  settle: 'Settle the case',
  settling: 'Storing …',
  needsCause: 'Say what it was, or that you never found out.',
  needsSureness: 'Say how you know.',
  refused: 'It could not be stored. Everything is still here; make room and try again.',
  settled: (plant: string): string => `“${plant}” is settled.`,
} as const;

const wordOf = <Words>(words: Readonly<Record<string, Words>>, id: string): Words | undefined => words[id];

/** What it turned out to be: "Clubroot", "Aphids and virus", "Never found out". */
export const sayEnd = ({ causes }: Outcome): string =>
  causes.length === 0 ? 'Never found out' : capitalise(joinWords(causes.map(endName)));

/** The unlisted cause is "something this tool does not know" while it is weighed; at the end somebody knows it. */
export const endName = (id: string): string => (id === 'unlisted' ? OUTCOME_WORDS.unlisted : causeName(id));

/** "I saw it myself. Lost: up to a tenth of the crop." Nothing for what was not said. */
export function describeOutcomeDetails({ sureness, lost }: Outcome): string {
  const sure = wordOf(OUTCOME_WORDS.sureness, sureness)?.name;
  const share = wordOf(OUTCOME_WORDS.lostWords, lost);
  return [sure ? `${sure}.` : '', share ? `Lost of the crop: ${share}.` : ''].filter(Boolean).join(' ');
}
