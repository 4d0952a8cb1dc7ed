import type { Measured } from '../../leaf/measures.ts';
import { NORMAL_WORDS as WORDS } from './normal-leaves.ts';

/** Eight times in ten, as everywhere (see `measures.ts`). */
const GIVE_OR_TAKE = 1.2816;

/** "Its colour lies 14 points, give or take 3, from that of a healthy leaf"; no clear difference where it could be none. */
export function sayApart({ value, se }: Measured, leaves: number): string {
  const give = se * GIVE_OR_TAKE;
  const points = WORDS.points(value.toFixed(0), Math.max(1, give).toFixed(0));
  const of = WORDS.besideSome(leaves);
  return value > give ? WORDS.apart(of, points) : WORDS.notApart(of, points);
}
