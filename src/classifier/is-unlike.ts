import { STRANGE } from './calibration.ts';
import type { NetworkAnswer } from './types.ts';

/** Why nothing is reported: the picture is unlike all that was taught. */
export const isUnlike = ({ strangeness }: Pick<NetworkAnswer, 'strangeness'>): boolean =>
  !(strangeness <= STRANGE);
