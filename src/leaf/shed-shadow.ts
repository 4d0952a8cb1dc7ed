import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { describePlainGround, median } from './find-holes.ts';
import { labelRegions } from './label-regions.ts';

/**
 * Takes the shadow that a leaf casts on plain paper out of its outline. In shadow paper keeps its own hue and turns only darker: in
 * CIELAB a multiplier of light multiplies L* + 16, a* and b* by its cube root (CIE 15), so what is left of a pixel's colour once
 * the paper's, so darkened, is taken off tells paper from leaf however dark it is. Pieces count that reach the rim of the outline;
 * where a guess of what is leaf can be had, it must agree, because powder and glare are colourless as well.
 *
 * @param outline filled, 255 = leaf
 * @param wanted pixels that the person said are leaf; the pieces that hold one stay
 * @param guess log odds of leaf for each pixel, asked only where there is something to take off; undefined where it cannot be had
 * @returns the outline as it was where the ground is not plain or nothing is to be taken off
 */
export function shedShadow(
  lab: LabPlanes,
  outline: Uint8Array,
  wanted: readonly number[],
  guess: () => Float32Array | undefined,
): Uint8Array {
  const ground = describePlainGround(lab, outline);
  if (ground === undefined) return outline;
  const { width, height } = lab;
  const colour = new Float32Array(outline.length);
  const some: number[] = [];
  const light: number[] = [];
  let area = 0;
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    const dim = (lab.L[i]! + 16) / (ground.L + 16);
    colour[i] = Math.hypot(lab.a[i]! - dim * ground.a, lab.b[i]! - dim * ground.b);
    if (area++ % 7 !== 0) continue;
    some.push(colour[i]!);
    light.push(lab.L[i]!);
  }
  const usual = median(some);
  const shaded = new Uint8Array(outline.length);
  for (let i = 0; i < outline.length; i++) {
    const isDim = lab.L[i]! < ground.L - DARKER_BY;
    if (outline[i] === 255 && isDim && colour[i]! < COLOURLESS * usual) shaded[i] = 1;
  }
  const { labels, sizes, count } = labelRegions(shaded, width, height, 1, 4);
  const onRim = new Uint8Array(count + 1);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (labels[i] === 0) continue;
      const bare =
        (x > 0 && outline[i - 1] !== 255) ||
        (x < width - 1 && outline[i + 1] !== 255) ||
        (y > 0 && outline[i - width] !== 255) ||
        (y < height - 1 && outline[i + width] !== 255);
      if (bare) onRim[labels[i]!] = 1;
    }
  }
  const isShadow = onRim.map((touches, label) =>
    touches === 1 && sizes[label]! > LEAST_SHARE * area ? 1 : 0,
  );
  isShadow[0] = 0;
  for (const i of wanted) isShadow[labels[i]!] = 0;
  if (!isShadow.includes(1)) return outline;
  const odds = guess();
  const sums = new Float64Array(2 * (count + 1));
  for (let i = 0; i < labels.length; i++) {
    sums[2 * labels[i]!]! += lab.L[i]!;
    if (odds !== undefined) sums[2 * labels[i]! + 1]! += odds[i]!;
  }
  const brightest = median(light) + BRIGHTER_BY;
  for (let label = 1; label <= count; label++) {
    // What is much brighter than the leaf may be powder: then the guess must speak against it, else it may at most be in doubt.
    const isBright = sums[2 * label]! > brightest * sizes[label]!;
    const stays =
      odds === undefined ? isBright : sums[2 * label + 1]! > (isBright ? -CLEAR : CLEAR) * sizes[label]!;
    if (stays) isShadow[label] = 0;
  }
  return outline.map((value, i) => (isShadow[labels[i]!] === 1 ? 0 : value));
}

/** Darker than the paper by at least so much L*; and brighter than the leaf by so much, it may be powder or glare. */
const DARKER_BY = 8;
const BRIGHTER_BY = 12;
/** Of the leaf's usual colour strength, a pixel of shadow has at most this share. */
const COLOURLESS = 0.4;
/** Smallest piece, as a share of the outline. */
const LEAST_SHARE = 0.002;
/** Mean log odds that speak clearly. */
const CLEAR = 0.5;
