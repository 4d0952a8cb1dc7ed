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
    words: ['haloed', 'haloes', 'halo'],
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
    says: 'A heap that has not come through its heat, or never had it. It still rots: it can burn roots, takes nitrogen from the soil, and may carry what makes ill. It is finished when it has stayed near the air’s warmth for a week.',
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

/** A sentence in pieces; each term is marked once, where it comes first. The pieces joined are the sentence. */
export function findTerms(sentence: string): Piece[] {
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

export const TERM_WORDS = {
  close: 'Close',
  all: 'Words of the trade',
  how: 'Words with dots under them explain themselves when you touch them. All of them:',
} as const;
