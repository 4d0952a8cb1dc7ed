import { labelRegions } from './label-regions.ts';

/** Smaller openings, as a share of the outline's area, may be the rim where a pixel is half leaf, half ground. */
const LEAST_OPENING = 0.01;
/**
 * Share of its border that lies open to what is around the leaf. Every hole of this size in 18 scans of `soybean-holes` has none;
 * ground between the lobes of whole leaves of `papaya-spad`, 0.04 to 0.53.
 */
const LEAST_OPEN = 0.03;

/**
 * Lets go of ground that an outline took along, as it does between two lobes where something crosses the ground from one
 * to the other: ground that is seen inside the outline and lies open to the outside is no hole in the leaf.
 *
 * @param outline 255 inside the filled outline, on a frame `width` px wide; changed in place
 * @param remaining 255 where tissue is there
 * @returns whether any was let go
 */
export function letGoOfGround(
  outline: Uint8Array,
  remaining: Uint8Array,
  width: number,
  height: number,
): boolean {
  let area = 0;
  const bare = new Uint8Array(outline.length);
  for (let i = 0; i < outline.length; i++) {
    if (outline[i] !== 255) continue;
    area++;
    if (remaining[i] !== 255) bare[i] = 1;
  }
  const { labels, sizes, count } = labelRegions(bare, width, height, 1, 4);
  if (!sizes.some((size, label) => label > 0 && size >= LEAST_OPENING * area)) return false;
  const border = new Int32Array(count + 1);
  const open = new Int32Array(count + 1);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    if (label === 0) continue;
    for (const beside of [i - 1, i + 1, i - width, i + width]) {
      if (labels[beside] === label) continue;
      border[label]!++;
      if (outline[beside] !== 255) open[label]!++;
    }
  }
  const isOpen = sizes.map((size, label) =>
    size >= LEAST_OPENING * area && open[label]! >= LEAST_OPEN * border[label]! ? 1 : 0,
  );
  let any = false;
  for (let i = 0; i < labels.length; i++) {
    if (labels[i]! === 0 || isOpen[labels[i]!] !== 1) continue;
    outline[i] = 0;
    any = true;
  }
  return any;
}
