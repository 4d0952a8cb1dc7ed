/**
 * The trade's terms that the app uses, each explained on touch with a drawing. A term stands here only where a neighbour
 * might not know it.
 */
export interface Term {
  /** As a heading. */
  readonly name: string;
  /** How it is written in sentences, lower case. */
  readonly words: readonly string[];
  /** Which drawing shows it. */
  readonly drawing: string;
  readonly says: string;
}

export const TERMS = {
  'lock-up': {
    name: 'Nitrogen locked up',
    words: ['nitrogen locked up', 'locked up', 'lock-up', 'tied up'],
    drawing: 'term-lock-up',
    says: 'Whatever rots wood or straw needs nitrogen for it, and takes it from the soil. Until it is done, weeks or months, plants go short and turn pale from the oldest leaves up, though the nitrogen is still there.',
  },
  residue: {
    name: 'Weedkiller residue',
    words: ['weedkiller residue', 'residue'],
    drawing: 'term-residue',
    says: 'Some weedkillers for grassland pass through hay, beast and heap unharmed. Compost or manure made from such hay looks sound and still cripples beans, peas, tomatoes and potatoes: young leaves come cupped, narrow and twisted.',
  },
  drift: {
    name: 'Weedkiller drift',
    words: ['weedkiller drift', 'drift'],
    drawing: 'after-spray',
    says: 'Spray or its vapour that the wind carries over from a field, path or lawn. It hits all at once, worst on the side it came from.',
  },
  'between-veins': {
    name: 'Yellow between the veins',
    words: ['between the veins', 'interveinal'],
    drawing: 'yellow-between-veins',
    says: 'The veins stay green and the leaf between them turns yellow, like a net of green lines.',
  },
  mosaic: {
    name: 'Mosaic, mottled',
    words: ['mosaic', 'mottled'],
    drawing: 'mottled',
    says: 'Light and dark green in patches that do not follow the veins, as if the leaf were put together from bits.',
  },
  stippled: {
    name: 'Stippled',
    words: ['stippled', 'stippling', 'stipple'],
    drawing: 'stippled',
    says: 'Pale pinpricks, hundreds of them, where something sucked the green out of single cells. A lens shows them best.',
  },
  mine: {
    name: 'Leaf mine',
    words: ['leaf miners', 'leaf miner', 'leaf mines', 'leaf mine'],
    drawing: 'pale-trails',
    says: 'A pale winding trail or blotch inside the leaf: a grub lives between its upper and lower skin and eats its way along.',
  },
  pustule: {
    name: 'Pustule',
    words: ['pustules', 'pustule'],
    drawing: 'rust-pustules',
    says: 'A small raised blister of a fungus that breaks open and lets out dust, rusty brown or white. It rubs off on a finger.',
  },
  halo: {
    name: 'Halo',
    words: ['haloed', 'haloes', 'halo', 'yellow rings', 'yellow ring'],
    drawing: 'haloed-spots',
    says: 'A yellow ring around a dead spot.',
  },
  cupped: {
    name: 'Cupped',
    words: ['cupped', 'cupping'],
    drawing: 'cupped-up',
    says: 'The edges of the leaf bend up or down all around, so that it would hold water like a spoon.',
  },
  'raw-compost': {
    name: 'Unfinished compost',
    words: ['unfinished, hot compost', 'unfinished compost', 'raw compost', 'unfinished'],
    drawing: 'read-heap-thermometer',
    says: 'A heap that has not come through its heat, or never had it. It still rots: it can burn roots, takes nitrogen from the soil, and may carry germs that make people ill. It is finished when it has stayed near the air’s warmth for a week.',
  },
  'hardening-off': {
    name: 'Hardened off',
    words: ['hardened off', 'hardening off'],
    drawing: 'term-hardening-off',
    says: 'Plants raised indoors are put outside for longer each day, a week or two long, before they are planted out. Without it sun and wind scorch them.',
  },
  'acid-soil': {
    name: 'Acid or limy soil',
    words: ['acid soil', 'limy soil', 'soil reaction', 'ph'],
    drawing: 'test-soil-reaction',
    says: 'How sour the soil is, as a number: below 6 acid, above 7 limy. It decides which foods roots can take up, however much there is. A test strip tells it.',
  },
  oedema: {
    name: 'Oedema',
    words: ['oedema'],
    drawing: 'blisters-under',
    says: 'Roots take up more water than the leaf can breathe out, in warm wet soil and damp air. Small blisters come up under the leaf and turn corky. It does not spread, and stops when the air is drier.',
  },
  honeydew: {
    name: 'Honeydew',
    words: ['honeydew'],
    drawing: 'sticky-sooty',
    says: 'The sweet, sticky drops that sucking insects leave. A black, sooty film grows on it and can be wiped off.',
  },
  'pot-bound': {
    name: 'Pot-bound',
    words: ['pot-bound'],
    drawing: 'root-bound',
    says: 'Roots that went round and round in too small a pot. They go on in a ring after planting out, and the plant sulks.',
  },
  check: {
    name: 'A check',
    words: ['check from digging', 'check after planting out', 'a check in growth'],
    drawing: 'stunted',
    says: 'A plant stands still for a week or two after its roots were disturbed or it was planted out, and then grows on.',
  },
  clubroot: {
    name: 'Clubroot',
    words: ['clubroot'],
    drawing: 'roots-swollen',
    says: 'A disease of the cabbage family. Roots swell into lumps and the plant flags in the sun. It lives in the soil for many years, and travels on boots and tools.',
  },
  'powdery-mildew': {
    name: 'Powdery mildew',
    words: ['powdery mildew'],
    drawing: 'white-powder',
    says: 'A fungus that lies on the leaf like flour, mostly on top, and rubs off. It likes dry roots and still, warm air.',
  },
  'downy-mildew': {
    name: 'Downy mildew',
    words: ['downy mildew'],
    drawing: 'grey-mould-under',
    says: 'Yellow patches above and a grey or purple down under them. It needs leaves that stay wet.',
  },
  fungus: {
    name: 'Fungus, spores',
    words: ['fungus', 'fungi', 'spores', 'spore'],
    drawing: 'term-fungus',
    says: 'Mould and its kin: fine threads that live in leaf, root or dead wood. It travels as spores, a dust too fine to see, on wind, rain and hands, and most kinds need a wet leaf to take hold.',
  },
  virus: {
    name: 'Virus',
    words: ['viruses', 'virus'],
    drawing: 'term-virus',
    says: 'Something far too small to see that multiplies in the plant’s sap. Sucking insects, hands and tools carry it from plant to plant. The leaves mottle, narrow or crinkle, and nothing cures it.',
  },
  thrips: {
    name: 'Thrips',
    words: ['thrips'],
    drawing: 'thrips',
    says: 'Slender insects a millimetre or two long. They scrape the leaf, so that it turns silvery, and leave tiny black specks.',
  },
  mites: {
    name: 'Spider mites',
    words: ['spider mites', 'spider mite', 'mites', 'mite'],
    drawing: 'fine-webbing',
    says: 'Eight-legged specks under the leaf, hardly to be seen without a lens. They suck the green out in pale dots, spin fine webs, and thrive when it is hot and dry.',
  },
  whitefly: {
    name: 'Whitefly',
    words: ['whiteflies', 'whitefly'],
    drawing: 'whitefly',
    says: 'Tiny white winged insects that sit under the leaves and lift off in a cloud when the plant is touched. Their young sit still, like flat scales.',
  },
  leafhopper: {
    name: 'Leafhoppers and capsids',
    words: ['leafhoppers', 'leafhopper', 'capsids', 'capsid'],
    drawing: 'term-leafhopper',
    says: 'Narrow, wedge-shaped insects that jump aside when the plant is touched; leafhoppers leave coarse pale dots. Capsids are their broader kin: where they sucked, new leaves open torn and brown-specked.',
  },
  larva: {
    name: 'Larva',
    words: ['larvae', 'larva'],
    drawing: 'aphid-hunters',
    says: 'The young of an insect before it has wings: a grub, a maggot or a caterpillar. The ladybird’s is slate-grey with orange dots, looks nothing like its parents, and eats greenfly.',
  },
  mummies: {
    name: 'Mummies',
    words: ['mummies', 'brown swollen shells', 'brown swollen shell'],
    drawing: 'term-mummies',
    says: 'Greenfly that have turned to tan, swollen, papery shells: a tiny wasp grows up inside each. A good sign. In warm weather the greenfly fall within a week or two.',
  },
  frass: {
    name: 'Frass',
    words: ['frass'],
    drawing: 'droppings-pellets',
    says: 'The droppings of caterpillars and beetles: dark crumbs below the place where they feed. Where it is fresh, they are not far.',
  },
  gall: {
    name: 'Gall',
    words: ['galls', 'gall'],
    drawing: 'term-gall',
    says: 'A knot that a plant grows around an insect or other guest. Those of gall weevil on cabbage roots are round and hollow, with a grub inside; clubroot is solid.',
  },
  blight: {
    name: 'Blight',
    words: ['late blight', 'early blight', 'blight'],
    drawing: 'spreading-blotches',
    says: 'A disease that kills leaves fast. Late blight of potatoes and tomatoes makes dark wet patches without rings that spread within days in mild wet weather, with white fuzz below; early blight makes ringed brown spots and climbs slowly.',
  },
  rust: {
    name: 'Rust',
    words: ['rust'],
    drawing: 'rust-pustules',
    says: 'A kind of fungus whose small raised blisters give orange-brown dust. It comes off on a finger; leaf spots do not.',
  },
  wilt: {
    name: 'Wilt',
    words: ['wilt disease', 'wilt'],
    drawing: 'wilts-one-side',
    says: 'Leaves hang limp. As the name of a disease: something in the soil blocks the plant’s pipes, often on one side first, and a cut stem shows brown streaks. No cure; water does not help.',
  },
  'damping-off': {
    name: 'Damping off',
    words: ['damping off'],
    drawing: 'term-damping-off',
    says: 'Seedlings fall over because the stem has rotted thin as a thread at the soil. It comes where it is wet, close and dull.',
  },
  potash: {
    name: 'Potash (potassium)',
    words: ['potash', 'potassium'],
    drawing: 'brown-edges',
    says: 'One of the three main plant foods, plentiful in wood ash and comfrey. Plants short of it scorch along the edges of the older leaves. Much of it keeps magnesium out.',
  },
  phosphate: {
    name: 'Phosphate (phosphorus)',
    words: ['phosphates', 'phosphate', 'phosphorus'],
    drawing: 'purple-tint',
    says: 'One of the three main plant foods, needed most by young roots. Roots in cold soil take up little even where there is plenty; leaves then turn dull and purple, and green again as it warms.',
  },
  magnesium: {
    name: 'Magnesium',
    words: ['magnesium'],
    drawing: 'yellow-between-veins',
    says: 'The metal in the middle of the green of leaves. Plants short of it draw it out of the old leaves: those yellow between veins that stay green.',
  },
  molybdenum: {
    name: 'Molybdenum',
    words: ['molybdenum'],
    drawing: 'term-strap-leaf',
    says: 'A plant food of which a pinch feeds a field. Acid soil holds it fast; cauliflower and its kin then grow strap-like leaves, little more than the rib.',
  },
  boron: {
    name: 'Boron',
    words: ['boron'],
    drawing: 'pith-brown',
    says: 'A plant food needed in traces. Without it growing tips die, stems crack or turn hollow and brown inside. A little too much of it harms: soil test first.',
  },
  midrib: {
    name: 'Midrib',
    words: ['midribs', 'midrib'],
    drawing: 'term-midrib',
    says: 'The thick vein down the middle of a leaf, from the stalk to the tip.',
  },
  'growing-point': {
    name: 'Growing point',
    words: ['growing points', 'growing point', 'growing tips', 'growing tip'],
    drawing: 'term-growing-point',
    says: 'The tip of a shoot, where all new leaves come from. When it is lost the plant stops there, and at best shoots again lower down.',
  },
  'seed-leaves': {
    name: 'Seed leaves',
    words: ['seed leaves', 'seed leaf'],
    drawing: 'term-seed-leaves',
    says: 'The first one or two leaves of a seedling, plainer than those that follow. They were folded up in the seed and yellow early; that is no sign of anything.',
  },
  brassica: {
    name: 'Brassicas',
    words: ['brassicas', 'brassica', 'cabbage family'],
    drawing: 'term-brassica',
    says: 'Cabbage and all its kin: kale, broccoli, cauliflower, sprouts, turnip, swede, radish, rocket, mustard. They share pests and diseases.',
  },
  humus: {
    name: 'Humus',
    words: ['humus'],
    drawing: 'term-humus',
    says: 'What is left when plants and dung have rotted all the way: the dark part of the soil. It holds water and food, and makes crumbs.',
  },
  biochar: {
    name: 'Biochar',
    words: ['biochar', 'char'],
    drawing: 'term-biochar',
    says: 'Charcoal made to be dug in. It feeds nothing by itself, and put on fresh it can hold food back from roots for a while.',
  },
  fleece: {
    name: 'Fleece',
    words: ['fleece'],
    drawing: 'term-fleece',
    says: 'A thin white cloth laid over plants. Light and rain go through; it keeps off a light frost, wind and many insects.',
  },
  cloche: {
    name: 'Cloche',
    words: ['cloches', 'cloche'],
    drawing: 'term-cloche',
    says: 'A bell or tunnel of glass or plastic over a plant, to keep it warmer. On a sunny day it needs air.',
  },
  salts: {
    name: 'Salts',
    words: ['salts'],
    drawing: 'term-salts',
    says: 'Dissolved feed that is left in the soil when water dries off, seen as a white crust in pots. Too much of it draws water out of roots and browns leaf edges. Rain or plain water washes it down.',
  },
  extract: {
    name: 'Extract',
    words: ['extract'],
    drawing: 'term-extract',
    says: 'Water in which compost has soaked, poured through a cloth: one part compost, two parts water, two hours. Seeds that sprout in it as in plain water say that the compost does not poison.',
  },
  lots: {
    name: 'Drawing the lots',
    words: ['drawing the lots', 'draw the lots', 'lots drawn', 'the lots'],
    drawing: 'term-lots',
    says: 'Chance decides which plot gets what, as if slips were drawn from a hat. So the better corner of the bed, or a wish, cannot favour one side.',
  },
} as const satisfies Record<string, Term>;

export type TermId = keyof typeof TERMS;
export const TERM_IDS = Object.keys(TERMS) as readonly TermId[];

/** A piece of a sentence: plain, or a term as it stands there. */
export interface Piece {
  readonly text: string;
  readonly term?: TermId;
}

const IDS_BY_WORDS = new Map(TERM_IDS.flatMap((id) => TERMS[id].words.map((words) => [words, id] as const)));
const ANY_TERM = new RegExp(
  `(?<![\\w-])(${[...IDS_BY_WORDS.keys()].sort((a, b) => b.length - a.length).join('|')})(?![\\w-])`,
  'gi',
);

/** Sentences that were shown before, in pieces: a page says most of its sentences again at every answer. */
const found = new Map<string, readonly Piece[]>();
const MOST_FOUND = 1000;

/** A sentence in pieces; each term is marked once, where it comes first. The pieces joined are the sentence. */
export function findTerms(sentence: string): readonly Piece[] {
  const before = found.get(sentence);
  if (before) return before;
  if (found.size >= MOST_FOUND) found.clear();
  const pieces = partSentence(sentence);
  found.set(sentence, pieces);
  return pieces;
}

function partSentence(sentence: string): readonly Piece[] {
  const pieces: Piece[] = [];
  const met = new Set<TermId>();
  let from = 0;
  for (const { 0: text, index } of sentence.matchAll(ANY_TERM)) {
    const term = IDS_BY_WORDS.get(text.toLowerCase() as (typeof TERMS)[TermId]['words'][number]);
    if (!term || met.has(term)) continue;
    met.add(term);
    if (index > from) pieces.push({ text: sentence.slice(from, index) });
    pieces.push({ text, term });
    from = index + text.length;
  }
  if (from < sentence.length) pieces.push({ text: sentence.slice(from) });
  return pieces;
}

/** The terms of several sentences, each once, as they come. */
export const termsIn = (sentences: readonly string[]): TermId[] => [
  ...new Set(sentences.flatMap(findTerms).flatMap(({ term }) => term ?? [])),
];

export const TERM_WORDS = {
  close: 'Close',
  line: 'What is meant:',
  all: 'Words of the trade',
  how: 'Words with dots under them explain themselves when you touch them. All of them:',
} as const;
