import { compareWords, later } from './loose.ts';
import type { Edit } from './records.ts';

/** Was `edit` made in knowledge of `other` (or is it the same one)? Edits of one device follow each other. */
export function supersedes(edit: Edit, other: Edit): boolean {
  const known = edit.by === other.by ? edit.at : (edit.over?.[other.by] ?? '');
  return known >= other.at;
}

export const sameEdit = (a: Edit, b: Edit): boolean => a.by === b.by && a.at === b.at;

/** Which of two edits is shown where neither knew of the other: the later, else by device. The same on every device. */
export const compareEdits = (a: Edit, b: Edit): number =>
  compareWords(a.at, b.at) || compareWords(a.by, b.by);

/** Knowledge of several edits together: the newest of each device. */
export function knowledgeOf(edits: readonly Edit[]): Readonly<Record<string, string>> {
  const newest = new Map<string, string>();
  const add = (by: string, at: string): void => {
    if ((newest.get(by) ?? '') < at) newest.set(by, at);
  };
  for (const { at, by, over } of edits) {
    add(by, at);
    for (const [device, moment] of Object.entries(over ?? {})) add(device, moment);
  }
  return Object.fromEntries([...newest].sort(([a], [b]) => compareWords(a, b)));
}

/** A new edit on a device that replaces all of `before` and knows of them. It is never older than what it replaces. */
export function editOver(before: readonly Edit[], at: string, by: string): Edit {
  const { [by]: _own, ...over } = knowledgeOf(before);
  const latest = before.reduce((last, edit) => later(last, edit.at), '');
  const moment = at > latest ? at : justAfter(latest);
  return { at: moment, by, ...(Object.keys(over).length > 0 ? { over } : {}) };
}

/** A clock may have been set back; an edit still comes after what it replaces. */
function justAfter(moment: string): string {
  const time = Date.parse(moment);
  return Number.isNaN(time) ? `${moment}+` : new Date(time + 1).toISOString();
}
