import { daysBetween } from '../days/days.ts';
import type { LeafReading } from '../leaf/types.ts';
import { density, ratioOf } from './findings-from-readings.ts';
import { LIKELIHOOD_PAIRS } from './likelihood-pairs.ts';
import type { MarkPair } from './mark-pair.ts';
import { toScale } from './measure-scale.ts';
import type { SeenAtLook } from './seen-at-look.ts';
import { MARKS } from './vocabulary.ts';

/**
 * How long it takes until a plant that mends shows it on its youngest leaves, days: a leaf every four to seven days in
 * warmth, and the leaf that is youngest next time was only laid down this time. Common practice, no source. Drift
 * and residue are told apart this way: new leaves recover from drift, residue persists (NCSU-PDIC).
 */
const DAYS_TO_SHOW = 14;
/** How surely the camera must have seen a mark on the young leaf for its change to be worth weighing. */
const SEEN_FROM = 2;
/** Most that one change may say either way: a leaf is one leaf, and the next one was another. Our own judgement. */
const MOST = 6;
/** How a person's "seen" and "not seen" at two looks speak of mending; common practice, no source. */
const EYE = { gone: 4, still: 0.4 };

/**
 * How much likelier what was seen is if the plant is growing out of its trouble than if it is not: the young leaf then and
 * now, by camera where it measured the mark at both looks, else by the grower's own answers. Not yet better says little after
 * three days and all it can after a fortnight. 1 where nothing can be said. Pure.
 * @param earlier earlier looks, oldest first
 */
export function changeRatio(now: SeenAtLook, earlier: readonly SeenAtLook[]): number {
  for (const first of earlier) {
    const days = daysBetween(first.date, now.date);
    if (days < 1) continue;
    const ratio = byCamera(first, now) ?? byEye(first, now);
    if (ratio !== undefined) return ratio >= 1 ? ratio : ratio ** Math.min(1, days / DAYS_TO_SHOW);
  }
  return 1;
}

const youngLeaf = ({ photos }: SeenAtLook): LeafReading | undefined =>
  photos.find(({ role, leaf, trouble }) => role === 'new' && leaf.found && trouble.length === 0);

/** The mark that stood out most on the first young leaf, then and now. */
function byCamera(first: SeenAtLook, now: SeenAtLook): number | undefined {
  const before = youngLeaf(first)?.measures;
  const after = youngLeaf(now)?.measures;
  if (!before || !after) return undefined;
  let told: { readonly pair: MarkPair; readonly ratio: number } | undefined;
  for (const pair of LIKELIHOOD_PAIRS) {
    const measured = before[pair.measure];
    if (!measured || !after[pair.measure]) continue;
    const ratio = ratioOf(pair, measured);
    if (ratio >= SEEN_FROM && ratio > (told?.ratio ?? 0)) told = { pair, ratio };
  }
  if (!told) return undefined;
  const { pair } = told;
  const then = toScale(before[pair.measure]!, pair.scale);
  const later = toScale(after[pair.measure]!, pair.scale);
  const se = Math.hypot(then.se, later.se);
  const lasts = Math.hypot(pair.present.sd, se);
  const halfway = (then.value + pair.absent.mean) / 2;
  const mending =
    (density(later.value, pair.absent.mean, Math.hypot(pair.absent.sd, later.se)) +
      density(later.value, halfway, lasts)) /
    2;
  const lasting = density(later.value, then.value, lasts);
  return Math.min(MOST, Math.max(1 / MOST, ((mending + 1e-9) / (lasting + 1e-9)) ** pair.trust));
}

/** Marks of the youngest leaves that the grower saw first: gone from all that were looked for again, or still there. */
function byEye(first: SeenAtLook, now: SeenAtLook): number | undefined {
  const again = MARKS.map(({ id }) => `${id}@new` as const).filter(
    (sign) => first.answers.signs[sign] === 'seen' && now.answers.signs[sign] !== undefined,
  );
  if (again.length === 0) return undefined;
  const gone = again.filter((sign) => now.answers.signs[sign] === 'absent').length;
  if (gone === again.length) return EYE.gone;
  return gone === 0 ? EYE.still : 1;
}
