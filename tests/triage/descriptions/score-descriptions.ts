import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { weighAnswers } from '../../../src/command/evaluate/weigh-answers.ts';
import type { Ranking } from '../../../src/ranker/types.ts';
import { checkAnswers } from '../../../src/signs/check-answers.ts';
import type { CauseId } from '../../../src/signs/vocabulary.ts';

/** How a plant was described: as in a book; milder, on another crop, with a distraction; several causes; nothing wrong; in no list. */
export const KINDS = ['textbook', 'everyday', 'together', 'harmless', 'unlisted'] as const;
export type Kind = (typeof KINDS)[number];

export interface Description {
  readonly id: string;
  readonly kind: Kind;
  readonly causes: readonly CauseId[];
  readonly says: string;
  readonly answers: unknown;
}

export interface ScoredDescription extends Description {
  readonly ranking: Ranking;
  /** The first cause is right; of n causes all are among the first n; a harmless one also ends in leave or watch. */
  readonly hit: boolean;
  readonly top: readonly CauseId[];
}

const FILE = fileURLToPath(new URL('./descriptions.jsonl', import.meta.url));

export function readDescriptions(): Description[] {
  return readFileSync(FILE, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line) as Description);
}

function isHit({ causes, kind }: Description, { causes: ranked, verdict }: Ranking): boolean {
  if (kind === 'harmless')
    return causes.includes(ranked[0]!.id) && (verdict.id === 'leave' || verdict.id === 'watch');
  if (causes.length === 1) return ranked[0]!.id === causes[0];
  const first = new Set(ranked.slice(0, causes.length).map(({ id }) => id));
  return causes.every((cause) => first.has(cause));
}

/** Weigh one description as a person's answers and compare it with what is known to be wrong. */
export function scoreDescription(description: Description): ScoredDescription {
  const { answers, faults } = checkAnswers(description.answers);
  if (faults.length > 0) throw new RangeError(`${description.id}: ${JSON.stringify(faults)}`);
  const ranking = weighAnswers(answers);
  return {
    ...description,
    ranking,
    hit: isHit(description, ranking),
    top: ranking.causes.slice(0, 3).map(({ id }) => id),
  };
}
