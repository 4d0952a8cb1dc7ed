/** Intersection over union of two masks of one size (255 = belongs); 1 = the same. NaN where both are empty. */
export function overlapOfMasks(found: Uint8Array, truth: Uint8Array): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < truth.length; i++) {
    if (found[i] === 255 && truth[i] === 255) both++;
    if (found[i] === 255 || truth[i] === 255) either++;
  }
  return both / either;
}
