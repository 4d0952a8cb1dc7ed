import { readFile } from 'node:fs/promises';
import { checkAnswers } from '../../signs/check-answers.ts';
import type { Answers } from '../../signs/types.ts';
import { describeFault } from '../read-answers.ts';
import { UsageError } from '../read-arguments.ts';
import { type CaseGroup, isCaseGroup } from './case-groups.ts';

/** How much the description told: decides how much may be expected. */
export const INFORMATION_LEVELS = ['rich', 'fair', 'poor'] as const;
export type InformationLevel = (typeof INFORMATION_LEVELS)[number];

/** A case that an expert has judged. */
export interface JudgedCase {
  readonly id: string;
  readonly group: CaseGroup;
  /** Further groups the expert thought of; listed, never counted as hits. */
  readonly also: readonly CaseGroup[];
  readonly information: InformationLevel;
  readonly answers: Answers;
}

function readCase(line: string, where: string): { readonly judged: JudgedCase; readonly faults: string[] } {
  const raw = JSON.parse(line) as Record<string, unknown>;
  if (!isCaseGroup(raw.cause_group))
    throw new RangeError(`${where}: expected a known cause_group, got ${JSON.stringify(raw.cause_group)}`);
  const information = INFORMATION_LEVELS.find((level) => level === raw.information);
  if (!information)
    throw new RangeError(`${where}: expected information to be one of ${INFORMATION_LEVELS.join(', ')}`);
  const { answers, faults } = checkAnswers(raw.answers);
  const judged: JudgedCase = {
    id: String(raw.id ?? where),
    group: raw.cause_group,
    also: Array.isArray(raw.also) ? raw.also.filter(isCaseGroup) : [],
    information,
    answers,
  };
  return { judged, faults: faults.map((fault) => `${judged.id}: ${describeFault(fault)}`) };
}

export interface ReadCases {
  readonly cases: readonly JudgedCase[];
  /** Pieces of answers that could not be used. */
  readonly complaints: readonly string[];
}

/**
 * Read cases from a file of JSON lines.
 * @throws UsageError when the file cannot be opened
 * @throws RangeError when a line is no case
 */
export async function readCases(file: string): Promise<ReadCases> {
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new UsageError(`${file} cannot be opened; name a file of judged cases.`, { cause });
  });
  const read = text
    .split('\n')
    .flatMap((line, at) => (line.trim() === '' ? [] : [readCase(line, `line ${at + 1}`)]));
  return { cases: read.map(({ judged }) => judged), complaints: read.flatMap(({ faults }) => faults) };
}
