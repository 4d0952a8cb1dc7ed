/**
 * How often each sign is seen on a plant that made a grower stop although none of the listed causes acts: old knocks,
 * passing insects, chance. A sign that no acting cause explains is charged to this rate, so the lower it is, the more
 * the sign speaks for whatever can cause it. Mistaken reports are no part of it: the reporter's reliability covers them. All rates are our own estimates (common practice, no source); where one
 * departs from its kind, the reason stands beside it.
 */
import { CREATURE_SIGNS, MARKS, PLANT_SIGNS, type SignId } from '../signs/vocabulary.ts';

/** Marks on leaves: with 74 of them a plant carries about one blemish by chance, few carry any one named blemish. */
const MARK_LEAK = 0.01;
/** Wilting, rot, bites: seldom there without one of the listed causes. */
const PLANT_LEAK = 0.01;
/** Living things: on the plot anyway, seldom on this very plant. */
const CREATURE_LEAK = 0.005;
/** How it lies and how it came: something has to be true of any trouble. */
const SPREAD_LEAK = 0.1;

interface SpecialLeak {
  readonly rate: number;
  readonly because: string;
}

/** The rates that depart from their kind. */
export const SPECIAL_LEAKS: { readonly [Sign in SignId]?: SpecialLeak } = {
  'yellow-even@old': { rate: 0.04, because: 'some lower leaf is pale on most plants' },
  'yellow-patches@old': { rate: 0.025, because: 'a blotch on an old leaf is common and means little' },
  'brown-edges@old': { rate: 0.04, because: 'edges and tips of old leaves are knocked and dried' },
  'brown-spots@old': { rate: 0.025, because: 'a few specks are on most old leaves' },
  'leaf-dead@old': { rate: 0.03, because: 'a dead lowest leaf is common and means little' },
  'ragged-holes@old': { rate: 0.05, because: 'old holes from long ago stay in the leaf' },
  'shot-holes@old': { rate: 0.02, because: 'some pinholes of its early days stay in the leaf' },
  'edge-bites@old': { rate: 0.03, because: 'old bites stay in the leaf' },
  'dull-limp@old': { rate: 0.025, because: 'leaves hang a little on any hot afternoon' },
  'dull-limp@new': { rate: 0.02, because: 'leaves hang a little on any hot afternoon' },
  'purple-tint@old': { rate: 0.02, because: 'many crops carry some red in stems and old leaves' },
  'yellow-even@new': { rate: 0.02, because: 'the youngest leaves of many crops are paler by nature' },
  'small-leaves@new': { rate: 0.02, because: 'the youngest leaves are small by nature' },
  'silver-pattern@old': { rate: 0.005, because: 'a regular silver pattern does not come by chance' },
  'silver-pattern@new': { rate: 0.005, because: 'a regular silver pattern does not come by chance' },
  'white-powder@old': { rate: 0.007, because: 'only dust or lime could pass for it' },
  'white-powder@new': { rate: 0.005, because: 'only dust or lime could pass for it' },
  'rust-pustules@old': { rate: 0.005, because: 'nothing else makes dusty raised spots' },
  'rust-pustules@new': { rate: 0.005, because: 'nothing else makes dusty raised spots' },
  'pale-trails@old': { rate: 0.007, because: 'a lone mine may be on any plant' },
  'pale-trails@new': { rate: 0.005, because: 'a lone mine may be on any plant' },
  'whole-colour-golden@old': { rate: 0.005, because: 'a clean deliberate colour does not come by chance' },
  'whole-colour-golden@new': { rate: 0.005, because: 'a clean deliberate colour does not come by chance' },
  stunted: { rate: 0.06, because: 'one plant of a row is always the smallest' },
  'new-growth-clean': { rate: 0.2, because: 'on many plants with an old mark the newest leaves look right' },
  'recovers-overnight': { rate: 0.03, because: 'plants hang at noon in any heat' },
  'flowers-dropping': { rate: 0.03, because: 'every plant sheds some flowers' },
  'leaf-drop': { rate: 0.03, because: 'every plant sheds some leaves' },
  'fruit-misshapen': { rate: 0.025, because: 'the odd misshapen fruit is on every plant' },
  aphids: { rate: 0.012, because: 'a stray greenfly is on many plants, a colony on few' },
  ants: { rate: 0.08, because: 'ants run everywhere in a garden' },
  'aphid-hunters': { rate: 0.03, because: 'ladybirds and hoverflies visit any plant' },
  'slugs-seen': { rate: 0.03, because: 'slugs live under every board' },
  slime: { rate: 0.02, because: 'slugs cross any bed at night' },
  'birds-seen': { rate: 0.03, because: 'birds feed in any garden' },
  'bird-droppings': { rate: 0.03, because: 'birds sit on any stake' },
  'fine-webbing': { rate: 0.01, because: 'small spiders spin on any plant' },
  'roots-swollen': { rate: 0.007, because: 'the nodules of beans and peas pass for it; little else does' },
  'pith-brown': { rate: 0.005, because: 'sound wood is pale' },
  'maggots-at-root': { rate: 0.005, because: 'seldom found without being the trouble' },
  'one-plant': { rate: 0.12, because: 'chance trouble mostly hits one plant' },
  scattered: { rate: 0.12, because: 'chance trouble falls here and there' },
  patch: { rate: 0.12, because: 'neighbours share chance trouble' },
  'whole-bed': { rate: 0.15, because: 'all plants of a bed share its history' },
  'several-kinds': { rate: 0.08, because: 'chance seldom hits several crops alike' },
  'elsewhere-fine': { rate: 0.15, because: 'the same sowing mostly does well somewhere' },
  'same-compost-only': { rate: 0.04, because: 'few loads end where the trouble ends by chance' },
  'variety-only': { rate: 0.08, because: 'varieties differ in vigour without any fault' },
  'always-so': { rate: 0.08, because: 'trouble mostly comes later than the plant' },
  'every-year': { rate: 0.08, because: 'few remember last year so well' },
  sudden: { rate: 0.15, because: 'most people notice suddenly what came slowly' },
  'after-planting': { rate: 0.15, because: 'two plants in five were planted in the last three weeks' },
  'after-rain': { rate: 0.15, because: 'it rains often' },
  'after-cold': { rate: 0.12, because: 'a cold spell is seldom far back where nights are cold' },
  'after-wind': { rate: 0.12, because: 'it blows often' },
  'after-spray': { rate: 0.04, because: 'one grower in eight has spraying in sight at all' },
  'after-feed': { rate: 0.08, because: 'half of all growers do not feed' },
  'pot-test-injury': { rate: 0.02, because: 'poor pots, damping off or a wrong watering can pass for it' },
};

const marks: ReadonlySet<string> = new Set(MARKS.map(({ id }) => id));
const creatures: ReadonlySet<string> = new Set(CREATURE_SIGNS.map(({ id }) => id));
const plantSigns: ReadonlySet<string> = new Set(PLANT_SIGNS.map(({ id }) => id));

/** P(sign seen | none of the listed causes acts), between 0.005 and 0.2. */
export function leakOf(sign: SignId): number {
  const special = SPECIAL_LEAKS[sign];
  if (special) return special.rate;
  if (marks.has(sign.split('@')[0]!)) return MARK_LEAK;
  if (creatures.has(sign)) return CREATURE_LEAK;
  return plantSigns.has(sign) ? PLANT_LEAK : SPREAD_LEAK;
}

/**
 * The flat rate at which the cause `unlisted` shows any sign. High enough above the leaks that signs which fit no
 * listed cause raise it, low enough that any cause which shows them at least sometimes (0.3) beats it (common practice,
 * no source).
 */
export const UNLISTED_Q = 0.2;
