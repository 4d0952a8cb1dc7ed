import type { CauseId, FamilyId } from '../../signs/vocabulary.ts';

/** Short names, fit for a line and for "tells X from Y". */
export const CAUSE_NAMES: Record<CauseId, string> = {
  'variety-colour': 'the colour of the variety',
  'old-leaves': 'old leaves dying off',
  'nitrogen-locked': 'nitrogen locked up',
  'nitrogen-short': 'short of nitrogen',
  'magnesium-short': 'short of magnesium',
  'potassium-short': 'short of potassium',
  'phosphorus-short': 'short of phosphorus',
  'iron-short': 'short of iron',
  'manganese-short': 'short of manganese',
  'sulphur-short': 'short of sulphur',
  'calcium-short': 'short of calcium',
  'boron-short': 'short of boron',
  'molybdenum-short': 'short of molybdenum',
  'hot-compost': 'unfinished, hot compost',
  'salt-burn': 'too much feed or salt',
  'soil-disturbed': 'check from digging',
  'root-bound': 'pot-bound roots',
  'cold-check': 'too cold for this crop',
  frost: 'frost',
  'wet-roots': 'waterlogged roots',
  drought: 'short of water',
  'sun-scorch': 'sun scorch',
  'wind-batter': 'wind damage',
  'planting-check': 'check after planting out',
  'low-light': 'too little light',
  oedema: 'oedema (more water than it can lose)',
  'leaf-roll': 'harmless leaf roll',
  'residue-in-compost': 'weedkiller residue in compost',
  'spray-drift': 'weedkiller drift',
  aphids: 'aphids',
  'spider-mite': 'spider mite',
  whitefly: 'whitefly',
  thrips: 'thrips',
  'capsid-leafhopper': 'capsid bugs or leafhoppers',
  'leaf-miner': 'leaf miner',
  caterpillars: 'caterpillars',
  'flea-beetle': 'flea beetle',
  'leaf-beetles': 'leaf beetles or weevils',
  'slugs-snails': 'slugs and snails',
  birds: 'pigeons and other birds',
  'rabbits-deer': 'rabbits or deer',
  'root-feeders': 'grubs at the root',
  cutworm: 'cutworm',
  blight: 'late blight',
  'leaf-spot': 'leaf spot',
  'powdery-mildew': 'powdery mildew',
  'downy-mildew': 'downy mildew',
  rust: 'rust',
  virus: 'virus',
  'wilt-disease': 'wilt disease',
  'root-rot': 'root or foot rot',
  clubroot: 'clubroot',
  unlisted: 'something this tool does not know',
};

export const FAMILY_NAMES: Record<FamilyId, string> = {
  normal: 'Nothing wrong',
  food: 'Food',
  ground: 'Ground',
  weather: 'Weather and water',
  weedkiller: 'Weedkiller',
  animals: 'Animals',
  disease: 'Disease',
  unlisted: 'Not in this book',
};

/** Name of a cause as it may have been kept by an older or newer knowledge: an unknown id is shown as its own words. */
export const causeName = (id: string): string =>
  (CAUSE_NAMES as Partial<Record<string, string>>)[id] ?? id.replaceAll('-', ' ');

export const capitalise = (words: string): string =>
  words.charAt(0).toLocaleUpperCase('en-GB') + words.slice(1);

/** "a", "a and b", "a, b and c" */
export const joinWords = (words: readonly string[], last = 'and'): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
