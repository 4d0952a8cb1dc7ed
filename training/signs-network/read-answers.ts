import { readFileSync } from 'node:fs';
import type { Measures } from '../../src/leaf/measures.ts';
import type { PhotoTrouble } from '../../src/photo/types.ts';

/** One labelled photograph as `cut-photos.ts` wrote it, with what its label says of marks (`labels.py`). */
export interface Photo {
  readonly id: string;
  readonly set: string;
  readonly label: string;
  /** Was a leaf found? */
  readonly leaf: boolean;
  readonly trouble: readonly PhotoTrouble[];
  readonly measures: Measures;
  readonly labels: Readonly<Record<string, 0 | 1>>;
}

/** What one net, or the three experts as one, said of photographs that it had not seen; rows as in `ids`. */
export interface Run {
  readonly taught: string;
  readonly size: string;
  readonly sees: string;
  readonly steps: number;
  readonly fold: string;
  readonly ids: readonly string[];
  readonly logits: readonly (readonly number[])[];
  /** Log odds that all experts bear out. */
  readonly agreed: readonly (readonly number[])[];
  readonly strangeness: readonly number[];
}

/** The network that ships, among the runs. */
export const SHIPPED = { taught: 'three experts', size: 'large', sees: 'mask', steps: 0 } as const;

interface Answers {
  readonly marks: readonly string[];
  readonly experts: readonly { readonly expert: string; readonly knows: readonly string[] }[];
  readonly runs: readonly Run[];
  readonly photos: ReadonlyMap<string, Photo>;
}

/**
 * Reads what `answers.py` and `cut-photos.ts` wrote, named on the command line as ANSWERS.json PHOTOS.jsonl.
 * @throws Error where one is not named
 */
export function readAnswers([answersFile, photosFile]: readonly string[]): Answers {
  if (answersFile === undefined || photosFile === undefined) throw new Error('ANSWERS.json PHOTOS.jsonl');
  const { labels, ...rest } = JSON.parse(readFileSync(answersFile, 'utf8')) as Omit<Answers, 'photos'> & {
    readonly labels: Record<string, Photo['labels']>;
  };
  const photos = readFileSync(photosFile, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Omit<Photo, 'labels'>)
    .map((photo): [string, Photo] => [photo.id, { ...photo, labels: labels[photo.id] ?? {} }]);
  return { ...rest, photos: new Map(photos) };
}
