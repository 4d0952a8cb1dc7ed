import { readFile } from 'node:fs/promises';
import { type AnswersFault, checkAnswers } from '../signs/check-answers.ts';
import type { Answers } from '../signs/types.ts';

/** What is wrong with an answers file, as a sentence that says what to do. */
export function describeFault(fault: AnswersFault): string {
  switch (fault.code) {
    case 'not-an-object':
      return `${fault.at}: expected an object such as {"crop": "tomato", "setting": {}, "signs": {}}.`;
    case 'unknown-key':
      return `${fault.at}: not a part of the answers; use crop, variety, date, setting, signs. It was left out.`;
    case 'unknown-crop':
      return `${fault.at}: ${fault.got} is not a known crop; use "other" for one that is missing. It was left out.`;
    case 'unknown-setting':
      return `${fault.at}: no such setting; see README for the list. It was left out.`;
    case 'unknown-sign':
      return `${fault.at}: no such sign; marks on leaves need @old, @new or @some. It was left out.`;
    case 'bad-date':
      return `${fault.at}: ${fault.got} is not a date; write it as 2026-06-18. It was left out.`;
    case 'bad-value':
      return `${fault.at}: ${fault.got} does not fit; expected ${fault.expected}. It was left out.`;
  }
}

export interface ReadAnswers {
  readonly answers: Answers;
  readonly complaints: readonly string[];
}

/** Parse one answers object from text. Broken JSON is a complaint like any other. */
export function parseAnswers(text: string): ReadAnswers & { readonly id?: string; readonly broken: boolean } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const complaint = `Not valid JSON (${why}); check quotes, commas and brackets.`;
    return { answers: { setting: {}, signs: {} }, complaints: [complaint], broken: true };
  }
  const wrapped = typeof value === 'object' && value !== null && 'answers' in value;
  const { id, answers: inner } = wrapped
    ? (value as { id?: unknown; answers: unknown })
    : { id: undefined, answers: value };
  const { answers, faults } = checkAnswers(inner);
  return {
    answers,
    complaints: faults.map(describeFault),
    broken: false,
    ...(id === undefined ? {} : { id: String(id) }),
  };
}

/** Read an answers file. A file that is missing or no JSON gives no answers and says so. */
export async function readAnswersFile(file: string): Promise<ReadAnswers> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    const complaint = `${file}: cannot be opened; check the path. Going on without answers.`;
    return { answers: { setting: {}, signs: {} }, complaints: [complaint] };
  }
  const { answers, complaints } = parseAnswers(text);
  return { answers, complaints: complaints.map((complaint) => `${file}: ${complaint}`) };
}
