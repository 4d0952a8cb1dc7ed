import type { CropId } from './vocabulary.ts';

/**
 * Groups of crops that share leanings. Botanical families from memory (any flora agrees); the trade's groups carry
 * their source beside them. A crop may stand in several groups.
 */
export const CROP_GROUPS = {
  nightshade: ['tomato', 'potato', 'pepper', 'aubergine'],
  legume: ['french-bean', 'runner-bean', 'broad-bean', 'pea', 'soya-bean'],
  cucurbit: ['courgette', 'squash', 'pumpkin', 'cucumber', 'melon'],
  brassica: [
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
  ],
  goosefoot: ['spinach', 'chard', 'beetroot'],
  'carrot-family': ['celery', 'celeriac', 'parsley', 'coriander', 'fennel', 'carrot', 'parsnip'],
  allium: ['onion', 'leek', 'garlic'],
  'leaf-salad': ['lettuce', 'endive', 'rocket', 'pak-choi', 'spinach'],
  /** Injured by pyridine weedkillers at a few parts per billion (OSU-SF-AMINO, EDIS-AG416, CORTEZ). */
  'residue-sensitive': [
    'tomato',
    'potato',
    'pepper',
    'aubergine',
    'french-bean',
    'runner-bean',
    'broad-bean',
    'pea',
    'soya-bean',
    'lettuce',
  ],
  /** Detoxify pyridine weedkillers (OSU-SF-AMINO, CORTEZ). */
  grass: ['sweetcorn'],
  /** Chilling injury between 0 and 12.8 °C (PURDUE-CHILL, UMASS-2021, UCSC-KNOTT). */
  'chilling-sensitive': [
    'tomato',
    'pepper',
    'aubergine',
    'french-bean',
    'runner-bean',
    'soya-bean',
    'courgette',
    'squash',
    'pumpkin',
    'cucumber',
    'melon',
    'sweetcorn',
    'basil',
    'sweet-potato',
  ],
  /** Stand through winter frost (from memory; UCSC-KNOTT growing minimum 4.4 °C). */
  hardy: [
    'kale',
    'brussels-sprout',
    'leek',
    'broad-bean',
    'spinach',
    'garlic',
    'parsnip',
    'swede',
    'rhubarb',
  ],
  /** Grown for a root or bulb: leaf damage costs little (USU-MINER for beet). */
  'root-crop': [
    'carrot',
    'parsnip',
    'beetroot',
    'turnip',
    'swede',
    'radish',
    'celeriac',
    'onion',
    'garlic',
    'potato',
    'sweet-potato',
  ],
} as const satisfies Record<string, readonly CropId[]>;

export type CropGroup = keyof typeof CROP_GROUPS;

/** Does a crop answer to the name of a crop or of a group? */
export function cropMatches(crop: CropId, name: CropId | CropGroup): boolean {
  if (crop === name) return true;
  const group: readonly CropId[] | undefined = (CROP_GROUPS as Partial<Record<string, readonly CropId[]>>)[
    name
  ];
  return group?.includes(crop) ?? false;
}
