/**
 * The transfer curve of sRGB (IEC 61966-2-1; trade-facts J8 [IEC-SRGB]): coded values 0–1 ↔ linear light 0–1.
 */
export function convertSrgbToLinear(coded: number): number {
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
}

/** Inverse of `convertSrgbToLinear`; values outside 0–1 are not clipped. */
export function convertLinearToSrgb(linear: number): number {
  return linear <= 0.0031308 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** Linear light of each of the 256 coded bytes. */
export const LINEAR_OF_BYTE: Float32Array = Float32Array.from({ length: 256 }, (_, byte) =>
  convertSrgbToLinear(byte / 255),
);
