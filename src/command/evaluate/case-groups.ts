import type { CauseId } from '../../signs/vocabulary.ts';

/**
 * Experts answer in broader words than the tool. These are their words and the causes that answer to each; a cause may
 * answer to two of them (too cold is both "cold" and "purple from cold").
 */
export const CASE_GROUPS = {
  varietal_colour: ['variety-colour'],
  senescence: ['old-leaves'],
  nitrogen_shortage_or_lockup: ['nitrogen-locked', 'nitrogen-short'],
  magnesium: ['magnesium-short'],
  iron_manganese: ['iron-short', 'manganese-short'],
  potassium: ['potassium-short'],
  phosphorus_or_cold_purple: ['phosphorus-short', 'cold-check'],
  other_nutrient: ['sulphur-short', 'calcium-short', 'boron-short', 'molybdenum-short'],
  cold: ['cold-check', 'frost'],
  waterlogging: ['wet-roots', 'oedema'],
  drought: ['drought'],
  heat_wind_sun: ['sun-scorch', 'wind-batter'],
  transplant_shock: ['planting-check', 'root-bound'],
  unfinished_compost_or_salts: ['hot-compost', 'salt-burn'],
  herbicide_residue_in_compost: ['residue-in-compost'],
  herbicide_drift: ['spray-drift'],
  aphids: ['aphids'],
  spider_mite: ['spider-mite'],
  leaf_miner: ['leaf-miner'],
  caterpillar: ['caterpillars'],
  flea_beetle: ['flea-beetle'],
  slug_snail: ['slugs-snails'],
  bird: ['birds'],
  rabbit_deer: ['rabbits-deer'],
  root_pest: ['root-feeders', 'cutworm'],
  thrips_whitefly_other_insect: ['thrips', 'whitefly', 'capsid-leafhopper', 'leaf-beetles'],
  fungal_leaf_disease: ['blight', 'leaf-spot'],
  mildew: ['powdery-mildew', 'downy-mildew'],
  rust: ['rust'],
  virus: ['virus'],
  wilt_or_root_disease: ['wilt-disease', 'root-rot', 'clubroot'],
  physiological_leaf_roll: ['leaf-roll'],
  other: ['unlisted', 'soil-disturbed', 'low-light'],
} as const satisfies Record<string, readonly CauseId[]>;

export type CaseGroup = keyof typeof CASE_GROUPS;
export const GROUP_IDS = Object.keys(CASE_GROUPS) as CaseGroup[];

/** Groups in which nothing is wrong: the verdict on them must never be to act. */
export const NORMAL_GROUPS: ReadonlySet<CaseGroup> = new Set(['varietal_colour', 'senescence']);

export function isCaseGroup(text: unknown): text is CaseGroup {
  return typeof text === 'string' && Object.hasOwn(CASE_GROUPS, text);
}

/** Score of every group: the highest chance among its causes. */
export function scoreGroups(chances: ReadonlyMap<CauseId, number>): Map<CaseGroup, number> {
  return new Map(
    GROUP_IDS.map((group) => [
      group,
      Math.max(...CASE_GROUPS[group].map((cause: CauseId) => chances.get(cause) ?? 0)),
    ]),
  );
}

/** Place of a group, 1 = first. Equal scores count for the group asked about: two may share a cause. */
export function placeOf(group: CaseGroup, scores: ReadonlyMap<CaseGroup, number>): number {
  const own = scores.get(group) ?? 0;
  return 1 + [...scores.values()].filter((score) => score > own).length;
}
