import type { PhotoRole } from '../../photo/types.ts';
import { isAskable, membersOf } from '../../signs/members-of.ts';
import { signAt } from '../../signs/sign-at.ts';
import type { Answers } from '../../signs/types.ts';
import type { SignId } from '../../signs/vocabulary.ts';
import { NETWORK_MARKS } from '../calibration.ts';

/** Marks of the network that a grower can be asked about. */
export const OWN_MARKS: readonly string[] = NETWORK_MARKS.filter((mark) => isAskable(`${mark}@old`));

/**
 * Which marks the eye found, or looked for in vain, where this photo was taken. Only what was answered counts: a mark
 * is there where it, or a part of it, was seen there; it is not where all that it could be was looked for and not found. What was said
 * both ways is unknown. A normal leaf has none.
 */
export function marksSaid(signs: Answers['signs'], role: PhotoRole): Map<string, boolean> {
  if (role === 'normal') return new Map(OWN_MARKS.map((mark) => [mark, false]));
  const answers = Object.entries(signs).flatMap(([sign, answer]) =>
    answer !== undefined && isAskable(sign) ? [{ members: membersOf(sign), answer }] : [],
  );
  const seen = answers.filter(({ answer }) => answer === 'seen');
  const gone = new Set<SignId>(
    answers.flatMap(({ members, answer }) => (answer === 'absent' ? members : [])),
  );
  return new Map(
    OWN_MARKS.flatMap((mark) => {
      const own = membersOf(signAt(mark, role));
      const isThere = seen.some(({ members }) => members.every((member) => own.includes(member)));
      const isGone = own.every((member) => gone.has(member));
      return isThere === isGone ? [] : [[mark, isThere] as const];
    }),
  );
}
