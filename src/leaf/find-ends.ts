import { findCentre } from './find-centre.ts';
import { findLongAxis } from './find-long-axis.ts';
import type { LeafSample } from './sample-leaf.ts';

/** Which end of the leaf a pixel lies at; 0 elsewhere. */
export const AT_TIP = 1;
export const AT_BASE = 2;

/**
 * Tip third and base third of a leaf along its longest axis, one of the above a pixel. The tip is the more pointed end;
 * undefined when the ends look alike, or the leaf is about as broad as long.
 */
export function findEnds({ width, height, outline, sizePx }: LeafSample): Uint8Array | undefined {
  if (sizePx < 20) return undefined;
  const { x: mx, y: my } = findCentre(outline, width);
  const { angle, elongation } = findLongAxis(outline, width);
  if (elongation < 1.25) return undefined;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = new Float32Array(outline.length);
  let least = 0;
  let most = 0;
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (outline[i] !== 255) continue;
      const t = (x - mx) * cos + (y - my) * sin;
      along[i] = t;
      if (t < least) least = t;
      if (t > most) most = t;
    }
  }
  const ends = new Uint8Array(outline.length);
  let low = 0;
  let high = 0;
  for (let i = 0; i < ends.length; i++) {
    if (outline[i] !== 255) continue;
    const t = (along[i]! - least) / (most - least);
    if (t < 0.12) low++;
    else if (t > 0.88) high++;
    ends[i] = t < 0.3 ? AT_TIP : t > 0.7 ? AT_BASE : 0;
  }
  const ratio = low / Math.max(1, high);
  if (ratio > 0.8 && ratio < 1.25) return undefined;
  if (ratio >= 1)
    for (let i = 0; i < ends.length; i++) if (ends[i] !== 0) ends[i] = AT_TIP + AT_BASE - ends[i]!;
  return ends;
}
