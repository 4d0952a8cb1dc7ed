import type { CaseRecord } from '../../garden/records.ts';
import { causeName } from './causes.ts';
import { cropName } from './crops.ts';
import { describeDay } from './dates.ts';
import { verdictWord } from './verdicts.ts';

/** Everything a person may search a case by, in words. */
export function searchWords(kept: CaseRecord): string {
  const looks = kept.looks.flatMap((look) => [
    describeDay(look.date, ''),
    verdictWord(look.verdict),
    ...look.leading.map(causeName),
  ]);
  const ended = kept.outcome ? [...kept.outcome.causes.map(causeName), kept.outcome.done] : [];
  return [kept.bed, kept.plant, cropName(kept.crop), kept.variety ?? '', ...looks, ...ended].join(' ');
}
