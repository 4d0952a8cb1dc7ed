import type { AskableId } from '../../../signs/vocabulary.ts';
import type { SignAnswer } from '../../state/change-draft.ts';
import type { LyingOn } from '../../state/draft.ts';

/**
 * Marks that speak of one thing on the oldest leaves and of another on the youngest, so that every adviser asks which
 * before anything else: what moves in the plant is drawn from old leaves first (common practice, no source).
 */
const PLACED = [
  'yellowing@some',
  'purple-tint@some',
  'curled@some',
  'browning@some',
] as const satisfies readonly AskableId[];
export type PlacedId = (typeof PLACED)[number];

/** Where each mark lies. Most on the old leaves leaves the young ones open: they may be a little touched too. */
export type Lying = { readonly [Id in PlacedId]?: LyingOn };

/** The next mark among those seen whose place has not been asked yet. */
export const toPlace = (seen: readonly AskableId[], lying: Lying): PlacedId | undefined =>
  PLACED.find((mark) => seen.includes(mark) && lying[mark] === undefined);

/** What was seen, as answers: a mark whose place was said stands there, and is absent where it was said not to be. */
export function placeMarks(
  seen: readonly AskableId[],
  lying: Lying,
): { readonly [Id in AskableId]?: SignAnswer } {
  const answers: { [Id in AskableId]?: SignAnswer } = {};
  for (const sign of seen) {
    const placed = PLACED.find((mark) => mark === sign);
    const where = placed && lying[placed];
    if (!placed || !where || where === 'open') {
      answers[sign] = 'seen';
      continue;
    }
    const mark = placed.slice(0, -'@some'.length) as 'yellowing' | 'purple-tint' | 'curled' | 'browning';
    if (where !== 'most-new') answers[`${mark}@old`] = 'seen';
    if (where !== 'most-old') answers[`${mark}@new`] = where === 'only-old' ? 'absent' : 'seen';
  }
  return answers;
}
