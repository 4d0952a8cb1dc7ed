/** Box round each region, four numbers a label from 0: least x, most x, least y, most y. Label 0 is the ground and has none. */
export function boxesOf(labels: Int32Array, count: number, width: number): Int32Array {
  const bounds = new Int32Array((count + 1) * 4);
  for (let k = 0; k < bounds.length; k += 2) {
    bounds[k] = 1e9;
    bounds[k + 1] = -1;
  }
  for (let i = 0; i < labels.length; i++) {
    const k = labels[i]! * 4;
    if (k === 0) continue;
    const x = i % width;
    const y = (i / width) | 0;
    bounds[k] = Math.min(bounds[k]!, x);
    bounds[k + 1] = Math.max(bounds[k + 1]!, x);
    bounds[k + 2] = Math.min(bounds[k + 2]!, y);
    bounds[k + 3] = Math.max(bounds[k + 3]!, y);
  }
  return bounds;
}
