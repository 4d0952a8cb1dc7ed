/** 8-bit sRGB → hue in degrees 0–360 (0 for greys), saturation and brightness 0–1 (the common hexcone; Smith 1978, from memory). */
export function convertSrgbToHsv(r: number, g: number, b: number): [number, number, number] {
  const top = Math.max(r, g, b);
  const span = top - Math.min(r, g, b);
  if (span === 0) return [0, 0, top / 255];
  let hue = 0;
  if (top === r) hue = (g - b) / span;
  else if (top === g) hue = (b - r) / span + 2;
  else hue = (r - g) / span + 4;
  return [hue < 0 ? hue * 60 + 360 : hue * 60, span / top, top / 255];
}
