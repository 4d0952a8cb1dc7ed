import type { Spot } from '../../../photo/types.ts';

/** Does a spot lie inside a closed polygon? Counts the sides that a level ray crosses (even-odd rule, from memory). */
export function isInside(polygon: readonly Spot[], { x, y }: Spot): boolean {
  let inside = false;
  polygon.forEach((from, i) => {
    const to = polygon[(i + 1) % polygon.length]!;
    if (from.y > y === to.y > y) return;
    if (x < from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)) inside = !inside;
  });
  return inside;
}
