/** The drawings of circumstances: one for each answer of a setting, or for the whole question where it is answered by yes or no. */

import type { Parts } from '../strokes.ts';
import { BROUGHT_DRAWINGS } from './brought.ts';
import { COMPOST_DRAWINGS } from './compost.ts';
import { GROUND_DRAWINGS } from './ground.ts';
import { GROWTH_DRAWINGS } from './growth.ts';
import type { SettingDrawingId } from './ids.ts';
import { VISITOR_DRAWINGS } from './visitors.ts';
import { WEATHER_DRAWINGS } from './weather.ts';

export const SETTING_DRAWINGS: Readonly<Record<SettingDrawingId, () => Parts>> = {
  ...GROWTH_DRAWINGS,
  ...WEATHER_DRAWINGS,
  ...GROUND_DRAWINGS,
  ...BROUGHT_DRAWINGS,
  ...COMPOST_DRAWINGS,
  ...VISITOR_DRAWINGS,
};
