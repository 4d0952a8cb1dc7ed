import type { CaseRecord } from '../../garden/records.ts';
import { causeName } from './causes.ts';
import { cropName } from './crops.ts';
import { describeDayAndYear } from './dates.ts';
import { verdictWord } from './verdicts.ts';

/** Days in words, kept: many cases share few days. */
const saidDays = new Map<string, string>();

/** A day as it may be typed: "Thursday 18 June 2026 2026-06-18". */
function dayWords(day: string): string {
  const before = saidDays.get(day);
  if (before !== undefined) return before;
  const said = `${describeDayAndYear(day)} ${day}`;
  saidDays.set(day, said);
  return said;
}

/** Everything a person may search a case by, in words. */
export function searchWords(kept: CaseRecord): string {
  const { outcome, closedOn } = kept;
  const looks = kept.looks.flatMap((look) => [
    dayWords(look.date),
    verdictWord(look.verdict),
    ...look.leading.map(causeName),
  ]);
  const ended = outcome
    ? ['settled', dayWords(outcome.settledOn), ...outcome.causes.map(causeName), outcome.done]
    : [];
  return [
    kept.bed,
    kept.plant,
    cropName(kept.crop),
    kept.variety ?? '',
    closedOn ? 'closed' : 'open',
    ...looks,
    ...ended,
  ].join(' ');
}
