import type { AskableId, SignId } from './vocabulary.ts';

/** What somebody must have seen before it makes sense to ask, and what makes it pointless. Facts as the ranker keeps them. */
interface When {
  readonly onlyAfter?: readonly AskableId[];
  readonly neverWith?: readonly string[];
}

const APHIDS: readonly AskableId[] = ['aphids', 'sticky-sooty', 'cast-skins', 'whitefly'];
const HANGING: readonly AskableId[] = [
  'dull-limp@old',
  'dull-limp@new',
  'dull-limp@some',
  'wilts-dry-soil',
  'wilts-wet-soil',
];
const EATEN: readonly AskableId[] = [
  'holes@some',
  'ragged-holes@old',
  'ragged-holes@new',
  'ragged-holes@some',
  'edge-bites@old',
  'edge-bites@new',
  'edge-bites@some',
  'veins-left@old',
  'veins-left@new',
  'veins-left@some',
  'tip-eaten',
  'seedlings-gone',
  'felled',
];
const TOO_YOUNG_TO_FRUIT = ['crop-stage=seedling', 'crop-stage=just-planted'];

/** Our own judgement of what an adviser would not ask (common practice, no source). */
const WHEN: { readonly [Id in SignId]?: When } = {
  ants: { onlyAfter: APHIDS },
  'aphid-hunters': { onlyAfter: APHIDS },
  'wilts-dry-soil': { onlyAfter: HANGING },
  'wilts-wet-soil': { onlyAfter: HANGING },
  'recovers-overnight': { onlyAfter: HANGING },
  'clean-cut': { onlyAfter: EATEN },
  'torn-cut': { onlyAfter: EATEN },
  'flowers-dropping': { neverWith: TOO_YOUNG_TO_FRUIT },
  'fruit-end-black': { neverWith: TOO_YOUNG_TO_FRUIT },
  'fruit-misshapen': { neverWith: TOO_YOUNG_TO_FRUIT },
};

/**
 * Does asking for the sign make sense with what is known? It can always be answered unasked.
 * @param facts what was seen, by id, and settled settings as `setting=outcome`
 */
export function isSignToTheMatter(sign: SignId, facts: ReadonlySet<string>): boolean {
  const { onlyAfter, neverWith = [] } = WHEN[sign] ?? {};
  if (neverWith.some((fact) => facts.has(fact))) return false;
  return onlyAfter === undefined || onlyAfter.some((fact) => facts.has(fact));
}
