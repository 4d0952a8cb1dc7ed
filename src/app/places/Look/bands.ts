import type { NumberSetting } from '../../../signs/settings.ts';

/** A number that stands for a band: its middle, or its lower end where it is open. */
export function withinBand({ bands, least }: NumberSetting, index: number): number {
  const from = bands[index - 1]?.below ?? Math.max(least, 0);
  const below = bands[index]?.below;
  return below === undefined ? from : Math.floor((from + below - 1) / 2);
}

/** Id of the band that a number lies in; undefined while none is said. */
export const bandOf = ({ bands }: NumberSetting, value: unknown): string | undefined =>
  typeof value === 'number' ? bands.find(({ below }) => below === undefined || value < below)?.id : undefined;
