import { coldBelowOf } from './lean-on-cold.ts';
import { SETTINGS, type SettingId } from './settings.ts';
import type { CropId } from './vocabulary.ts';

/**
 * The question about a setting as it is put to a person, with the number that holds for the crop where the answer hangs
 * on it: nobody knows a growing minimum by heart, but a thermometer that keeps lowest and highest can be read.
 */
export function askSetting(id: SettingId, crop?: CropId): string {
  const below = id === 'cold-days' ? coldBelowOf(crop) : undefined;
  return below === undefined
    ? SETTINGS[id].asks
    : `On how many of the last 21 days was it below ${below} °C, taking the middle between the day’s lowest and highest?`;
}
