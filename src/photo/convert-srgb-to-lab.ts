import { convertSrgbToLinear } from './convert-srgb-to-linear.ts';

/** sRGB primaries to XYZ, row by row (IEC 61966-2-1; trade-facts J8 [IEC-SRGB]). */
export const XYZ_OF_LINEAR = [
  0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505,
] as const;

/** White of CIE illuminant D65, Y = 1 (trade-facts J8). */
export const D65 = [0.95047, 1, 1.08883] as const;

/** Where CIELAB's cube root gives way to a straight line: (6/29)³ and the line's slope (CIE 15:2004). */
export const LAB_EPSILON = 216 / 24389;
export const LAB_KAPPA = 24389 / 27;

const curve = (t: number): number => (t > LAB_EPSILON ? Math.cbrt(t) : (LAB_KAPPA * t + 16) / 116);

/** Linear R, G, B (0–1) → CIELAB under D65: L* 0–100, a*, b*. */
export function convertLinearToLab(r: number, g: number, b: number): [number, number, number] {
  const m = XYZ_OF_LINEAR;
  const fx = curve((m[0] * r + m[1] * g + m[2] * b) / D65[0]);
  const fy = curve((m[3] * r + m[4] * g + m[5] * b) / D65[1]);
  const fz = curve((m[6] * r + m[7] * g + m[8] * b) / D65[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** 8-bit sRGB → CIELAB under D65, the slow and exact way; pictures go through `convertPixelsToLab`. */
export function convertSrgbToLab(r: number, g: number, b: number): [number, number, number] {
  return convertLinearToLab(
    convertSrgbToLinear(r / 255),
    convertSrgbToLinear(g / 255),
    convertSrgbToLinear(b / 255),
  );
}
