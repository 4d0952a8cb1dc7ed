import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import { type AskableId, BROADER_MARKS, type SignId } from './vocabulary.ts';

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

/** One chapter of a plant's story: what to ask, once one of these has been seen. */
interface Chapter {
  readonly setting: SettingId;
  readonly after: readonly string[];
  readonly onlyAfter?: readonly string[];
}

const atAnyPlace = (marks: readonly string[]): string[] =>
  marks.flatMap((mark) => [`${mark}@old`, `${mark}@new`, `${mark}@some`]);
const POOR = [
  ...atAnyPlace(['yellowing', ...BROADER_MARKS.yellowing, 'small-leaves', 'purple-tint']),
  'stunted',
];
const TWISTED = [...atAnyPlace(['curled', ...BROADER_MARKS.curled]), 'stem-twisted', 'fruit-misshapen'];
const FODDER = [
  'cattle-manure',
  'horse-manure',
  'manure-unknown',
  'mushroom-compost',
  'straw-or-hay',
  'grass-clippings',
  'green-waste',
].map((kind) => `compost-kinds=${kind}`);

/**
 * What an adviser asks before anything is dug up: the history of the bed comes before tests by hand (AZ-MG-SUM), and whoever
 * grew the plant knows it by heart. What went on the bed and when, and the nights, decide between feeding, waiting,
 * mixing no more in, and stopping a load, although most shortages end in one verdict. A rule of the order only: beliefs are not touched.
 */
const STORY: readonly Chapter[] = [
  { setting: 'compost-kinds', after: [...POOR, ...TWISTED] },
  { setting: 'wood-in-root-zone', after: POOR },
  { setting: 'weeks-since-mixed-in', after: POOR },
  { setting: 'hay-source', after: TWISTED, onlyAfter: FODDER },
  { setting: 'recent-temperature', after: POOR },
];

/** Place of a setting in the plant's story as far as it is known; undefined when it is no part of it. */
export function placeInStory(setting: SettingId, facts: ReadonlySet<string>): number | undefined {
  const place = STORY.findIndex(
    (chapter) =>
      chapter.setting === setting &&
      chapter.after.some((sign) => facts.has(sign)) &&
      (chapter.onlyAfter?.some((fact) => facts.has(fact)) ?? true),
  );
  return place < 0 ? undefined : place;
}
