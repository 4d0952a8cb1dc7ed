import type { PlantingRecord } from '../../garden/ground-records.ts';
import { cropName } from './crops.ts';
import { GROUND_WORDS } from './ground.ts';

/** "Tomato, a red cherry". */
export const namePlanting = ({ crop, variety }: PlantingRecord): string =>
  [cropName(crop) || GROUND_WORDS.someCrop, variety].filter(Boolean).join(', ');
