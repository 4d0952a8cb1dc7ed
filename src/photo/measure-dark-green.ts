import { convertSrgbToHsv } from './convert-srgb-to-hsv.ts';

/**
 * Dark green colour index of an 8-bit sRGB colour: 0 bright yellow … 1 dark green (Karcher and Richardson 2003
 * [KARCHER-2003], formula as in [SATURNO]). It is defined for HSV hues of 60–120 degrees; outside them hue alone would
 * pull the index below 0 or above what a leaf can be, so hue is held at the nearer end (trade-facts J2). `undefined`
 * for greys, which have no hue.
 */
export function measureDarkGreen(r: number, g: number, b: number): number | undefined {
  const [hue, saturation, brightness] = convertSrgbToHsv(r, g, b);
  if (saturation === 0) return undefined;
  const held = hue < 60 || hue > 300 ? 60 : Math.min(hue, 120);
  return ((held - 60) / 60 + (1 - saturation) + (1 - brightness)) / 3;
}
