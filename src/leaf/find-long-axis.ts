import { findCentre } from './find-centre.ts';

/** Direction of a leaf's length in radians from the rows, clockwise, and its length over its width. */
export interface LongAxis {
  readonly angle: number;
  readonly elongation: number;
}

/** The long axis of the pixels equal to 255, by their second moments; `mask` must hold at least one pixel. */
export function findLongAxis(mask: Uint8Array, width: number): LongAxis {
  const { x: cx, y: cy } = findCentre(mask, width);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let top = 0, y = 0; top < mask.length; top += width, y++) {
    for (let x = 0; x < width; x++) {
      if (mask[top + x] !== 255) continue;
      xx += (x - cx) * (x - cx);
      xy += (x - cx) * (y - cy);
      yy += (y - cy) * (y - cy);
    }
  }
  const half = Math.hypot(0.5 * (xx - yy), xy);
  const middle = 0.5 * (xx + yy);
  return {
    angle: 0.5 * Math.atan2(2 * xy, xx - yy),
    elongation: Math.sqrt((middle + half) / Math.max(1e-9, middle - half)),
  };
}
