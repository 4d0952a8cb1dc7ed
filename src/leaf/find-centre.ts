/** Centre of gravity of a mask, in pixels from the top left; NaN for an empty one. */
export function findCentre(mask: Uint8Array, width: number): { readonly x: number; readonly y: number } {
  let n = 0;
  let x = 0;
  let y = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] !== 255) continue;
    n++;
    x += i % width;
    y += (i / width) | 0;
  }
  return { x: x / n, y: y / n };
}
