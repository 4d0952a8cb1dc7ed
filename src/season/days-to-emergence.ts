/** °C at which OSU-HARR counts days: 41, 50, 59, 68, 77, 86, 95 °F. */
const AT = [5, 10, 15, 20, 25, 30, 35] as const;

/** Days from sowing to emergence at those soil temperatures; undefined: little or none comes up, or it was not tested. */
const DAYS: Readonly<Record<string, readonly (number | undefined)[]>> = {
  'french-bean': [undefined, undefined, 16, 11, 8, 6, 6],
  beetroot: [42, 17, 10, 6, 5, 4, 4],
  carrot: [51, 17, 10, 7, 6, 6, 8],
  cabbage: [undefined, 15, 9, 6, 4, 3, undefined],
  cucumber: [undefined, undefined, 13, 6, 4, 3, 3],
  lettuce: [15, 7, 4, 3, 2, 2, undefined],
  sweetcorn: [undefined, 22, 12, 7, 4, 4, 3],
};

/**
 * Days that seed needs to come up at a soil temperature (OSU-HARR), straight lines between the tested temperatures.
 * `undefined` where little or nothing comes up, or nothing is published.
 */
export function daysToEmergence(crop: string, soilCelsius: number): number | undefined {
  const days = DAYS[crop];
  const last = AT.length - 1;
  if (!days || soilCelsius < AT[0] || soilCelsius > AT[last]!) return undefined;
  const below = Math.min(last - 1, Math.floor((soilCelsius - AT[0]) / 5));
  const share = (soilCelsius - AT[below]!) / 5;
  const [from, to] = [days[below], days[below + 1]];
  if (share === 0) return from;
  if (share === 1) return to;
  return from === undefined || to === undefined ? undefined : from + share * (to - from);
}

/** Normal seedlings, %, at 32, 41, … 104 °F (Harrington and Minges, seen via HDF-GERM). */
const NORMAL_SEEDLINGS: Readonly<Record<string, readonly number[]>> = {
  'french-bean': [0, 0, 1, 97, 90, 97, 47, 39, 0],
  tomato: [0, 0, 82, 98, 98, 97, 83, 46, 0],
  lettuce: [98, 98, 98, 99, 99, 99, 12, 0, 0],
  spinach: [83, 96, 91, 82, 52, 28, 32, 0, 0],
  pepper: [0, 0, 1, 70, 96, 98, 95, 70, 0],
};

/** Share of seed that gives normal seedlings at a soil temperature of 0–40 °C, 0–1 (HDF-GERM); straight lines between. */
export function shareOfNormalSeedlings(crop: string, soilCelsius: number): number | undefined {
  const percent = NORMAL_SEEDLINGS[crop];
  if (!percent || soilCelsius < 0 || soilCelsius > 40) return undefined;
  const below = Math.min(percent.length - 2, Math.floor(soilCelsius / 5));
  const share = soilCelsius / 5 - below;
  return (percent[below]! + share * (percent[below + 1]! - percent[below]!)) / 100;
}
