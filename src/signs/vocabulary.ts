/**
 * The words that the photo, the grower, the garden's records, the knowledge base and every evaluation share.
 * Ids are fixed: later code may add words, never rename or drop one. `says` is what a person reads.
 */

interface Word<Id extends string> {
  readonly id: Id;
  readonly says: string;
}

const words = <const Entries extends readonly Word<string>[]>(entries: Entries): Entries => entries;

/** What a leaf can show. Written with a position: `mark@old` or `mark@new`. */
export const MARKS = words([
  { id: 'yellow-even', says: 'pale or yellow all over the leaf, veins too' },
  { id: 'yellow-between-veins', says: 'yellow between the veins, the veins still green' },
  { id: 'yellow-edges', says: 'yellow from the edge or tip inwards, the middle still green' },
  { id: 'yellow-along-veins', says: 'the veins themselves pale or yellow, the rest greener' },
  { id: 'purple-tint', says: 'purple, red or bronze tint' },
  { id: 'brown-edges', says: 'brown, dry edges or tips' },
  { id: 'brown-spots', says: 'brown, black or tan spots with a clear edge' },
  { id: 'haloed-spots', says: 'spots with a yellow ring round them' },
  { id: 'ringed-spots', says: 'spots with rings inside each other' },
  { id: 'spreading-blotches', says: 'dark, wet-looking blotches that run into each other' },
  { id: 'bleached-patches', says: 'whitish or straw-coloured dead patches' },
  { id: 'mottled', says: 'patchwork of light and dark green (mosaic)' },
  { id: 'stippled', says: 'very many tiny pale dots' },
  { id: 'silver-flecks', says: 'silvery flecks or streaks, often with black specks' },
  { id: 'silver-pattern', says: 'regular silver or white markings along the veins, leaf otherwise healthy' },
  { id: 'white-powder', says: 'white powder on the surface' },
  { id: 'grey-mould-under', says: 'grey, white or purple down under pale patches' },
  { id: 'rust-pustules', says: 'raised orange, brown or black dusty spots' },
  { id: 'pale-trails', says: 'pale winding lines or blisters inside the leaf' },
  { id: 'blisters-under', says: 'corky or watery bumps, mostly underneath' },
  { id: 'cupped-up', says: 'edges rolled or cupped upwards or inwards' },
  { id: 'cupped-down', says: 'edges or tip turned down' },
  { id: 'twisted-narrow', says: 'twisted, strap-like or fern-like growth' },
  { id: 'puckered', says: 'crinkled or blistered surface' },
  { id: 'small-leaves', says: 'leaves much smaller than normal' },
  { id: 'dull-limp', says: 'limp, dull or hanging' },
  { id: 'shot-holes', says: 'many small round holes' },
  { id: 'ragged-holes', says: 'larger ragged holes' },
  { id: 'edge-bites', says: 'bites out of the edge' },
  { id: 'veins-left', says: 'tissue gone between the veins, the ribs left standing' },
  { id: 'surface-grazed', says: 'one surface scraped off, a thin window left' },
  { id: 'yellow-patches', says: 'yellow blotches or patches' },
  { id: 'brown-patches', says: 'large brown, papery or see-through patches' },
  { id: 'blackened', says: 'leaves, tips or edges gone black' },
  { id: 'leaf-dead', says: 'whole leaves brown and dead' },
  { id: 'thickened', says: 'leaves thick, leathery or brittle' },
  {
    id: 'whole-colour-golden',
    says: 'clean, even golden, lime, red or variegated colour that looks deliberate',
  },
]);

/** What a person can say when they cannot say it more exactly: the OR of its members at the same position. */
export const BROADER_MARKS = {
  yellowing: [
    'yellow-even',
    'yellow-between-veins',
    'yellow-edges',
    'yellow-along-veins',
    'yellow-patches',
    'mottled',
  ],
  curled: ['cupped-up', 'cupped-down', 'twisted-narrow', 'puckered'],
  holes: ['shot-holes', 'ragged-holes', 'edge-bites', 'veins-left'],
  spotted: ['brown-spots', 'haloed-spots', 'ringed-spots', 'spreading-blotches', 'rust-pustules'],
  browning: ['brown-edges', 'brown-patches', 'blackened', 'leaf-dead', 'brown-spots'],
  'pale-marks': [
    'bleached-patches',
    'stippled',
    'silver-flecks',
    'silver-pattern',
    'white-powder',
    'surface-grazed',
    'pale-trails',
  ],
} as const satisfies Record<string, readonly MarkId[]>;

/** What the whole plant, its stem, roots, flowers or fruit can show. */
export const PLANT_SIGNS = words([
  { id: 'stunted', says: 'much smaller than its neighbours or than it should be' },
  { id: 'new-growth-clean', says: 'the newest leaves look right' },
  { id: 'tip-eaten', says: 'growing tip or shoots bitten off' },
  { id: 'clean-cut', says: 'cut cleanly at a slant, like a knife' },
  { id: 'torn-cut', says: 'torn, ragged ends where eaten' },
  { id: 'felled', says: 'cut or chewed through at soil level' },
  { id: 'seedlings-gone', says: 'seedlings vanished overnight' },
  { id: 'wilts-dry-soil', says: 'wilts and the soil is dry' },
  { id: 'wilts-wet-soil', says: 'wilts although the soil is moist' },
  { id: 'wilts-one-side', says: 'one side or one branch wilts or yellows' },
  { id: 'recovers-overnight', says: 'limp by day, firm again by morning' },
  { id: 'stem-base-rot', says: 'stem dark, soft or shrunken at soil level' },
  { id: 'stem-twisted', says: 'stems bent, twisted or swollen' },
  { id: 'roots-few-brown', says: 'few roots, or brown and soft' },
  { id: 'roots-swollen', says: 'swollen, clubbed or knotted roots' },
  { id: 'roots-eaten', says: 'roots tunnelled or eaten' },
  { id: 'root-bound', says: 'roots circling a tight root ball' },
  { id: 'pith-brown', says: 'brown streaks inside a cut stem' },
  { id: 'early-flowering', says: 'flowering while still tiny' },
  { id: 'flowers-dropping', says: 'flowers or young fruit drop' },
  { id: 'fruit-end-black', says: 'sunken dark patch at the blossom end of fruit' },
  { id: 'fruit-misshapen', says: 'misshapen, few or seedless fruit' },
  { id: 'heart-blackened', says: 'blackened or dying young leaves in the heart' },
  { id: 'leaf-drop', says: 'leaves falling' },
]);

/** Living things and the traces that only living things leave. */
export const CREATURE_SIGNS = words([
  { id: 'aphids', says: 'aphids (greenfly, blackfly) on shoots or under leaves' },
  { id: 'sticky-sooty', says: 'sticky leaves or black sooty film' },
  { id: 'cast-skins', says: 'white cast skins' },
  { id: 'ants', says: 'ants running on the plant' },
  { id: 'aphid-hunters', says: 'ladybirds, their larvae, hoverfly larvae, lacewings or brown aphid mummies' },
  { id: 'fine-webbing', says: 'fine webbing, specks moving underneath' },
  { id: 'whitefly', says: 'tiny white insects fly up when shaken' },
  { id: 'thrips', says: 'slender tiny insects, black specks' },
  { id: 'caterpillars', says: 'caterpillars or eggs in clusters' },
  { id: 'droppings-pellets', says: 'dark droppings (frass) on leaves' },
  { id: 'jumping-beetles', says: 'small beetles that jump' },
  { id: 'other-beetles', says: 'larger beetles or their grubs' },
  { id: 'slime', says: 'slime trails' },
  { id: 'slugs-seen', says: 'slugs or snails found by night or under cover' },
  { id: 'birds-seen', says: 'pigeons or other birds feeding' },
  { id: 'bird-droppings', says: 'bird droppings' },
  { id: 'mammal-signs', says: 'round droppings, scrapes, hoof or paw marks' },
  { id: 'maggots-at-root', says: 'white maggots at the root' },
  { id: 'grubs-in-soil', says: 'grubs or thick grey caterpillars in the soil' },
]);

/** How it lies over the bed and how it came about in time. */
export const SPREAD_SIGNS = words([
  { id: 'one-plant', says: 'only one plant' },
  { id: 'scattered', says: 'a plant here and there' },
  { id: 'patch', says: 'in a patch or cluster' },
  { id: 'every-year', says: 'the same every year in this place' },
  { id: 'whole-bed', says: 'every plant of this crop in the bed, much the same' },
  { id: 'several-kinds', says: 'several different crops in the same place' },
  { id: 'one-end', says: 'worse at one end, edge or side' },
  { id: 'variety-only', says: 'only this variety; another beside it is fine' },
  { id: 'elsewhere-fine', says: 'the same crop from the same sowing is fine in another bed' },
  { id: 'same-compost-only', says: 'only where one load of compost or manure went' },
  { id: 'spreading', says: 'moving from plant to plant' },
  { id: 'oldest-first', says: 'began on the lowest leaves and moves up' },
  { id: 'sudden', says: 'appeared within a day or two' },
  { id: 'after-cold', says: 'followed cold nights or a cold, dull spell' },
  { id: 'after-planting', says: 'followed planting out' },
  { id: 'after-spray', says: 'followed spraying nearby or on the plant' },
  { id: 'after-feed', says: 'followed feeding or a strong dressing' },
  { id: 'after-hot-sun', says: 'followed sudden hot sun' },
  { id: 'after-wind', says: 'followed strong wind' },
  { id: 'after-rain', says: 'followed heavy or long rain' },
  { id: 'always-so', says: 'has looked like this from the start' },
  { id: 'getting-better', says: 'already growing out of it' },
]);

/** What a test made on purpose shows; added to the shared vocabulary by this project. */
export const TEST_SIGNS = words([
  {
    id: 'pot-test-injury',
    says: 'beans or peas sown in this compost cup and twist, those in clean mix do not',
  },
]);

/** The families that the ranked causes are grouped by. */
export const FAMILIES = words([
  { id: 'normal', says: 'nothing wrong: how this variety or this age of leaf looks' },
  { id: 'food', says: 'short of a nutrient, or it is locked up' },
  { id: 'ground', says: 'compost, salts, digging, roots' },
  { id: 'weather', says: 'cold, heat, water, wind, light, planting' },
  { id: 'weedkiller', says: 'herbicide in the compost or on the wind' },
  { id: 'animals', says: 'insects, mites, slugs, birds, mammals' },
  { id: 'disease', says: 'fungus, bacterium, virus' },
  { id: 'unlisted', says: 'something this tool does not know' },
]);

/** Every cause the tool can weigh, `unlisted` among them. */
export const CAUSES = [
  { id: 'variety-colour', family: 'normal', says: 'the colour of the variety' },
  { id: 'old-leaves', family: 'normal', says: 'old leaves dying off naturally' },
  { id: 'nitrogen-locked', family: 'food', says: 'nitrogen locked up by wood, straw or unfinished compost' },
  { id: 'nitrogen-short', family: 'food', says: 'short of nitrogen' },
  { id: 'magnesium-short', family: 'food', says: 'short of magnesium' },
  { id: 'potassium-short', family: 'food', says: 'short of potassium' },
  { id: 'phosphorus-short', family: 'food', says: 'short of phosphorus' },
  { id: 'iron-short', family: 'food', says: 'short of iron, mostly lime-induced' },
  { id: 'manganese-short', family: 'food', says: 'short of manganese' },
  { id: 'sulphur-short', family: 'food', says: 'short of sulphur' },
  { id: 'calcium-short', family: 'food', says: 'short of calcium in the tips or fruit' },
  { id: 'boron-short', family: 'food', says: 'short of boron' },
  { id: 'molybdenum-short', family: 'food', says: 'short of molybdenum' },
  { id: 'hot-compost', family: 'ground', says: 'compost not finished: heat, ammonia' },
  { id: 'salt-burn', family: 'ground', says: 'too much feed or salt' },
  { id: 'soil-disturbed', family: 'ground', says: 'check from digging or forking' },
  { id: 'root-bound', family: 'ground', says: 'roots pot-bound or too little root room' },
  { id: 'cold-check', family: 'weather', says: 'too cold for this crop' },
  { id: 'frost', family: 'weather', says: 'frost' },
  { id: 'wet-roots', family: 'weather', says: 'waterlogged, airless soil' },
  { id: 'drought', family: 'weather', says: 'short of water' },
  { id: 'sun-scorch', family: 'weather', says: 'heat or sun scorch' },
  { id: 'wind-batter', family: 'weather', says: 'wind damage' },
  { id: 'planting-check', family: 'weather', says: 'check after planting out' },
  { id: 'low-light', family: 'weather', says: 'too little light' },
  { id: 'oedema', family: 'weather', says: 'oedema: more water taken up than lost' },
  { id: 'leaf-roll', family: 'weather', says: 'harmless leaf roll (tomato and relatives)' },
  {
    id: 'residue-in-compost',
    family: 'weedkiller',
    says: 'weedkiller residue in compost, manure, hay or straw',
  },
  { id: 'spray-drift', family: 'weedkiller', says: 'weedkiller drift' },
  { id: 'aphids', family: 'animals', says: 'aphids' },
  { id: 'spider-mite', family: 'animals', says: 'spider mite' },
  { id: 'whitefly', family: 'animals', says: 'whitefly' },
  { id: 'thrips', family: 'animals', says: 'thrips' },
  { id: 'capsid-leafhopper', family: 'animals', says: 'capsid bugs or leafhoppers' },
  { id: 'leaf-miner', family: 'animals', says: 'leaf miner' },
  { id: 'caterpillars', family: 'animals', says: 'caterpillars' },
  { id: 'flea-beetle', family: 'animals', says: 'flea beetle' },
  { id: 'leaf-beetles', family: 'animals', says: 'other leaf-eating beetles and weevils' },
  { id: 'slugs-snails', family: 'animals', says: 'slugs and snails' },
  { id: 'birds', family: 'animals', says: 'pigeons and other birds' },
  { id: 'rabbits-deer', family: 'animals', says: 'rabbits or deer' },
  { id: 'root-feeders', family: 'animals', says: 'root fly, wireworm, vine weevil, chafer' },
  { id: 'cutworm', family: 'animals', says: 'cutworm' },
  { id: 'blight', family: 'disease', says: 'late blight' },
  { id: 'leaf-spot', family: 'disease', says: 'fungal or bacterial leaf spot' },
  { id: 'powdery-mildew', family: 'disease', says: 'powdery mildew' },
  { id: 'downy-mildew', family: 'disease', says: 'downy mildew' },
  { id: 'rust', family: 'disease', says: 'rust' },
  { id: 'virus', family: 'disease', says: 'virus' },
  { id: 'wilt-disease', family: 'disease', says: 'wilt disease of the vessels' },
  { id: 'root-rot', family: 'disease', says: 'root rot, foot rot, damping off' },
  { id: 'clubroot', family: 'disease', says: 'clubroot' },
  { id: 'unlisted', family: 'unlisted', says: 'something else' },
] as const;

export const CROPS = [
  'tomato',
  'potato',
  'pepper',
  'aubergine',
  'french-bean',
  'runner-bean',
  'broad-bean',
  'pea',
  'soya-bean',
  'courgette',
  'squash',
  'pumpkin',
  'cucumber',
  'melon',
  'cabbage',
  'broccoli',
  'calabrese',
  'cauliflower',
  'kale',
  'brussels-sprout',
  'turnip',
  'swede',
  'radish',
  'rocket',
  'pak-choi',
  'lettuce',
  'endive',
  'spinach',
  'chard',
  'beetroot',
  'celery',
  'celeriac',
  'parsley',
  'coriander',
  'fennel',
  'carrot',
  'parsnip',
  'onion',
  'leek',
  'garlic',
  'sweetcorn',
  'basil',
  'strawberry',
  'raspberry',
  'rhubarb',
  'asparagus',
  'sweet-potato',
  'other',
] as const;

/** The four verdicts and no other. */
export const VERDICTS = words([
  { id: 'leave', says: 'leave it alone' },
  { id: 'watch', says: 'look again on a date' },
  { id: 'check', says: 'do this check before anything else' },
  { id: 'act', says: 'act now' },
]);

/**
 * How the knowledge base speaks of frequency: a published description rarely gives a number, so each word stands for
 * a Beta distribution with this mean.
 */
export const FREQUENCY_WORDS = {
  always: 0.95,
  usually: 0.8,
  often: 0.6,
  sometimes: 0.3,
  rarely: 0.1,
  'hardly-ever': 0.02,
} as const;

export type MarkId = (typeof MARKS)[number]['id'];
export type BroaderMarkId = keyof typeof BROADER_MARKS;
export type PlantSignId = (typeof PLANT_SIGNS)[number]['id'];
export type CreatureSignId = (typeof CREATURE_SIGNS)[number]['id'];
export type SpreadSignId = (typeof SPREAD_SIGNS)[number]['id'];
export type TestSignId = (typeof TEST_SIGNS)[number]['id'];
export type FamilyId = (typeof FAMILIES)[number]['id'];
export type CauseId = (typeof CAUSES)[number]['id'];
export type CropId = (typeof CROPS)[number];
export type VerdictId = (typeof VERDICTS)[number]['id'];
export type FrequencyWord = keyof typeof FREQUENCY_WORDS;

/** The two places on a plant where a mark is looked for. */
export type Position = 'old' | 'new';
/** A sign that can be there or not: one node of the network. */
export type SignId = `${MarkId}@${Position}` | PlantSignId | CreatureSignId | SpreadSignId | TestSignId;
/** What an answer may be about: a sign, or the OR of several (`curled@old`, `mottled@some`, `holes@some`). */
export type AskableId = SignId | `${MarkId}@some` | `${BroaderMarkId}@${Position | 'some'}`;
