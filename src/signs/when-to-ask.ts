import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import type { AskableId, SignId } from './vocabulary.ts';

/** What somebody must have seen before it makes sense to ask, and what makes it pointless. Facts as the ranker keeps them. */
interface When {
  readonly onlyAfter?: readonly string[];
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

const isSetting = (id: SignId | SettingId): id is SettingId => Object.hasOwn(SETTINGS, id);

/**
 * Does it make sense to ask, with what is known? Everything can be answered unasked.
 * @param facts as the ranker keeps them: what was seen, by id; settled settings as `setting=outcome`, options of a list as
 *   `setting=option`
 */
export function isToTheMatter(id: SignId | SettingId, facts: ReadonlySet<string>): boolean {
  const when: When = isSetting(id) ? (SETTINGS[id] as Setting) : (WHEN[id] ?? {});
  if (when.neverWith?.some((fact) => facts.has(fact))) return false;
  return when.onlyAfter === undefined || when.onlyAfter.some((fact) => facts.has(fact));
}
