/**
 * Checks that need hands, eyes or patience, each with the signs or the setting it settles and what it costs.
 * At most five signs a check, so that every joint result can be enumerated exactly. Minutes are our own (common
 * practice, no source).
 */
import type { SettingId } from '../signs/settings.ts';
import type { SignId } from '../signs/vocabulary.ts';

interface CheckBase<Id extends string> {
  readonly id: Id;
  /** What to do, as an instruction. */
  readonly says: string;
  readonly minutes: number;
  /** Days to wait until the result can be read. */
  readonly waitDays: number;
  /** Set on a check that costs a plant. */
  readonly spends?: PlantSpent;
}

/**
 * What a lifted or cut plant is worth, in percent of the bed's crop: one of some twenty, and the poorest; little where
 * there is little left to lose (common practice, no source).
 */
export interface PlantSpent {
  readonly sound: number;
  readonly lost: number;
}
const A_PLANT: PlantSpent = { sound: 2.5, lost: 0.5 };

/** What tells that more plants than one are poor, or that this one hangs although it has water: the poorest is lost anyway. */
export const LITTLE_TO_LOSE: readonly SignId[] = [
  'whole-bed',
  'patch',
  'scattered',
  'one-end',
  'several-kinds',
  'spreading',
  'same-compost-only',
  'wilts-wet-soil',
  'wilts-one-side',
  'stem-base-rot',
];
export interface SignCheck<Id extends string = string> extends CheckBase<Id> {
  readonly settles: { readonly signs: readonly SignId[] };
}
export interface SettingCheck<Id extends string = string> extends CheckBase<Id> {
  readonly settles: { readonly setting: SettingId };
}
export type Check<Id extends string = string> = SignCheck<Id> | SettingCheck<Id>;

const forSigns = <const Id extends string>(
  id: Id,
  minutes: number,
  says: string,
  signs: readonly SignId[],
  waitDays = 0,
  spends?: PlantSpent,
): SignCheck<Id> => ({ id, says, minutes, waitDays, settles: { signs }, ...(spends ? { spends } : {}) });
const forSetting = <const Id extends string>(
  id: Id,
  minutes: number,
  says: string,
  setting: SettingId,
): SettingCheck<Id> => ({ id, says, minutes, waitDays: 0, settles: { setting } });

export const CHECKS = [
  forSigns('turn-leaf-over', 1, 'Turn three leaves over and look along the veins.', [
    'aphids',
    'cast-skins',
    'whitefly',
    'fine-webbing',
    'grey-mould-under@old',
  ]),
  forSigns('look-with-lens', 2, 'Look at both sides of a marked leaf with a lens of ten times.', [
    'thrips',
    'fine-webbing',
    'stippled@old',
    'silver-flecks@old',
  ]),
  forSigns(
    'look-for-hunters',
    2,
    'Look among the greenfly for ladybirds, their larvae, hoverfly grubs and brown swollen shells.',
    ['aphid-hunters', 'ants'],
  ),
  forSigns('rub-leaf', 0.5, 'Rub the mark with a clean finger: does white or rusty dust come off?', [
    'white-powder@old',
    'white-powder@new',
    'rust-pustules@old',
    'rust-pustules@new',
  ]),
  forSigns('hold-to-light', 0.5, 'Hold the leaf against the sky: does the mark lie inside the leaf?', [
    'pale-trails@old',
    'pale-trails@new',
  ]),
  forSigns('look-for-tracks', 2, 'Look round the plant for slime, pellets, droppings and scrapes.', [
    'slime',
    'droppings-pellets',
    'bird-droppings',
    'mammal-signs',
  ]),
  forSigns('look-at-bites', 0.5, 'Look closely at an eaten end: cut clean at a slant, or torn?', [
    'clean-cut',
    'torn-cut',
  ]),
  forSigns(
    'look-by-torch',
    10,
    'Come back an hour after dark with a torch.',
    ['slugs-seen', 'caterpillars', 'slime'],
    1,
  ),
  forSigns('scrape-soil', 2, 'Scrape the soil away round the stem, two fingers deep.', [
    'grubs-in-soil',
    'stem-base-rot',
  ]),
  forSigns(
    'lift-plant',
    5,
    'Lift one of the poorest plants with a fork and rinse its roots. It costs you that plant.',
    ['roots-few-brown', 'roots-swollen', 'roots-eaten', 'root-bound', 'maggots-at-root'],
    0,
    A_PLANT,
  ),
  forSigns(
    'cut-stem',
    2,
    'Cut a poor stem across near the base and look at the wood. It may cost you that plant.',
    ['pith-brown'],
    0,
    A_PLANT,
  ),
  forSigns(
    'look-at-dawn',
    3,
    'Look again early tomorrow, before the sun is on it.',
    ['recovers-overnight'],
    1,
  ),
  forSigns(
    'wait-and-compare',
    3,
    'Mark one leaf, photograph it, and compare in a week.',
    ['getting-better', 'spreading', 'new-growth-clean'],
    7,
  ),
  forSigns('compare-other-bed', 3, 'Look at the same sowing in another bed.', ['elsewhere-fine']),
  forSigns('compare-varieties', 2, 'Look at another variety of the same crop beside it.', ['variety-only']),
  forSigns(
    'compare-other-crops',
    3,
    'Look at the other crops in this bed, and at the other beds that had the same load.',
    ['several-kinds', 'same-compost-only', 'whole-bed'],
  ),
  forSigns(
    'pot-test',
    30,
    'Sow beans in three pots or more of it, two parts to one of potting mix, and in as many of potting mix alone, each on its own saucer. Compare after three weeks.',
    ['pot-test-injury'],
    21,
  ),
  forSetting(
    'look-in-root-zone',
    1,
    'Dig a hand deep beside the plant: is there wood chip, sawdust or straw among the roots?',
    'wood-in-root-zone',
  ),
  forSetting('finger-in-soil', 0.5, 'Push a finger into the soil.', 'soil-water'),
  forSetting('read-soil-thermometer', 3, 'Read a soil thermometer at 10 cm, in the morning.', 'soil-celsius'),
  forSetting('test-soil-reaction', 8, 'Test the soil reaction with a kit or meter.', 'soil-ph'),
  forSetting('read-heap-thermometer', 4, 'Read a thermometer in the middle of the heap.', 'compost-celsius'),
  forSetting(
    'ask-supplier',
    10,
    'Ask the supplier whether the hay, straw or manure comes from sprayed fields.',
    'hay-source',
  ),
  forSetting(
    'read-seed-packet',
    1,
    'Read the seed packet or catalogue: what colour should this variety be?',
    'variety-colour',
  ),
] as const;

export type CheckId = (typeof CHECKS)[number]['id'];
