import { CROPS, type CropId } from '../../signs/vocabulary.ts';

interface CropWords {
  readonly name: string;
  /** Other names people use for it. */
  readonly also?: string;
}

export const CROP_WORDS: Record<CropId, CropWords> = {
  tomato: { name: 'Tomato' },
  potato: { name: 'Potato' },
  pepper: { name: 'Pepper', also: 'chilli chili sweet pepper capsicum' },
  aubergine: { name: 'Aubergine', also: 'eggplant brinjal' },
  'french-bean': { name: 'French bean', also: 'green bean bush bean string bean common bean haricot' },
  'runner-bean': { name: 'Runner bean', also: 'scarlet runner pole bean' },
  'broad-bean': { name: 'Broad bean', also: 'fava faba field bean' },
  pea: { name: 'Pea', also: 'mangetout sugar snap' },
  'soya-bean': { name: 'Soya bean', also: 'soybean edamame' },
  courgette: { name: 'Courgette', also: 'zucchini marrow summer squash' },
  squash: { name: 'Squash', also: 'winter squash' },
  pumpkin: { name: 'Pumpkin' },
  cucumber: { name: 'Cucumber', also: 'gherkin' },
  melon: { name: 'Melon', also: 'watermelon cantaloupe' },
  cabbage: { name: 'Cabbage' },
  broccoli: { name: 'Sprouting broccoli', also: 'broccoli' },
  calabrese: { name: 'Calabrese', also: 'broccoli' },
  cauliflower: { name: 'Cauliflower' },
  kale: { name: 'Kale', also: 'borecole collard' },
  'brussels-sprout': { name: 'Brussels sprout' },
  turnip: { name: 'Turnip' },
  swede: { name: 'Swede', also: 'rutabaga neep' },
  radish: { name: 'Radish', also: 'mooli daikon' },
  rocket: { name: 'Rocket', also: 'arugula' },
  'pak-choi': { name: 'Pak choi', also: 'bok choy tatsoi mizuna oriental greens' },
  lettuce: { name: 'Lettuce' },
  endive: { name: 'Endive', also: 'chicory radicchio' },
  spinach: { name: 'Spinach' },
  chard: { name: 'Chard', also: 'leaf beet perpetual spinach silverbeet' },
  beetroot: { name: 'Beetroot', also: 'beet' },
  celery: { name: 'Celery' },
  celeriac: { name: 'Celeriac' },
  parsley: { name: 'Parsley' },
  coriander: { name: 'Coriander', also: 'cilantro' },
  fennel: { name: 'Fennel', also: 'florence fennel' },
  carrot: { name: 'Carrot' },
  parsnip: { name: 'Parsnip' },
  onion: { name: 'Onion', also: 'shallot spring onion scallion' },
  leek: { name: 'Leek' },
  garlic: { name: 'Garlic' },
  sweetcorn: { name: 'Sweetcorn', also: 'maize corn' },
  basil: { name: 'Basil' },
  strawberry: { name: 'Strawberry' },
  raspberry: { name: 'Raspberry' },
  rhubarb: { name: 'Rhubarb' },
  asparagus: { name: 'Asparagus' },
  'sweet-potato': { name: 'Sweet potato', also: 'kumara' },
  other: { name: 'Another crop', also: 'other not in the list unknown' },
};

/** Shown first: what most plots grow (common practice, no source). */
const COMMON: readonly CropId[] = [
  'tomato',
  'potato',
  'courgette',
  'french-bean',
  'runner-bean',
  'pea',
  'lettuce',
  'kale',
  'cabbage',
  'onion',
  'carrot',
  'beetroot',
];

/* By their letters as they are: the names begin with capitals and hold no accents, and a collator costs a start time. */
const ORDERED: readonly CropId[] = [
  ...COMMON,
  ...CROPS.filter((crop) => !COMMON.includes(crop) && crop !== 'other').sort((a, b) =>
    CROP_WORDS[a].name < CROP_WORDS[b].name ? -1 : 1,
  ),
  'other',
];

/** Crops whose name (or another name of theirs) has a word beginning with the query; common ones first. */
export function findCrops(query: string): CropId[] {
  const wanted = query.trim().toLocaleLowerCase('en-GB');
  if (wanted === '') return [...ORDERED];
  const matches = ORDERED.filter((crop) => {
    const { name, also = '' } = CROP_WORDS[crop];
    return ` ${name} ${also}`.toLocaleLowerCase('en-GB').includes(` ${wanted}`);
  });
  return matches.includes('other') ? matches : [...matches, 'other'];
}

export const cropName = (id: string | undefined): string =>
  id === undefined
    ? ''
    : ((CROP_WORDS as Partial<Record<string, CropWords>>)[id]?.name ?? id.replaceAll('-', ' '));
