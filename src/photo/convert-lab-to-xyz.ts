import { D65, LAB_EPSILON, LAB_KAPPA } from './convert-srgb-to-lab.ts';

/** CIELAB under D65 → X, Y, Z with Y = 1 for white (CIE 15:2004, the way back). */
export function convertLabToXyz(lightness: number, a: number, b: number): [number, number, number] {
  const fy = (lightness + 16) / 116;
  const back = (f: number): number => (f ** 3 > LAB_EPSILON ? f ** 3 : (116 * f - 16) / LAB_KAPPA);
  return [D65[0] * back(fy + a / 500), D65[1] * back(fy), D65[2] * back(fy - b / 200)];
}
