import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';

/** Steps to the eight neighbours; the first four cover every pair once. */
export const STEP_X = [1, 0, 1, -1, -1, 0, -1, 1] as const;
export const STEP_Y = [0, 1, 1, 1, 0, -1, -1, -1] as const;

/** Colour step between two pixels. Lightness counts half: shadows and folds change it within one leaf. */
export function colourStep(lab: LabPlanes, i: number, j: number): number {
  const dL = 0.5 * (lab.L[i]! - lab.L[j]!);
  const da = lab.a[i]! - lab.a[j]!;
  const db = lab.b[i]! - lab.b[j]!;
  return Math.sqrt(dL * dL + da * da + db * db);
}

/**
 * Shortest way from the seeds to every pixel, where a step costs what the colour changes along it (a geodesic distance
 * as in Criminisi, Sharp and Blake 2008). `toll` is added to every step; `soft` is the colour step at which half the
 * full cost is reached, so that veins and grain stay cheap and outlines dear. Unreached pixels keep Infinity.
 * @param dear what it costs to step on each pixel besides
 */
export function growFromSeed(
  lab: LabPlanes,
  seeds: readonly number[],
  toll: number,
  soft: number,
  dear?: Float32Array,
): Float32Array {
  const { width, height } = lab;
  const n = width * height;
  const distance = new Float32Array(n).fill(Number.POSITIVE_INFINITY);
  const settled = new Uint8Array(n);
  const heap = createHeap(n);
  for (const seed of seeds) {
    distance[seed] = 0;
    heap.push(seed, 0);
  }
  for (;;) {
    const at = heap.pop();
    if (at < 0) return distance;
    if (settled[at] === 1) continue;
    settled[at] = 1;
    const x = at % width;
    const y = (at / width) | 0;
    const here = distance[at]!;
    for (let k = 0; k < 8; k++) {
      const nx = x + STEP_X[k]!;
      const ny = y + STEP_Y[k]!;
      if (nx < 0 || ny < 0 || nx >= width || ny >= height) continue;
      const to = ny * width + nx;
      if (settled[to] === 1) continue;
      const step = colourStep(lab, at, to);
      const cost = (step * step) / (step * step + soft * soft);
      const length = STEP_X[k] !== 0 && STEP_Y[k] !== 0 ? Math.SQRT2 : 1;
      const there = here + cost + (toll + (dear?.[to] ?? 0)) * length;
      if (there < distance[to]!) {
        distance[to] = there;
        heap.push(to, there);
      }
    }
  }
}

/** Binary heap of pixels by key; pixels pushed again with a smaller key are met first at the smaller. */
function createHeap(room: number) {
  let items = new Int32Array(room * 2);
  let keys = new Float32Array(room * 2);
  let size = 0;
  const swap = (i: number, j: number): void => {
    const item = items[i]!;
    const key = keys[i]!;
    items[i] = items[j]!;
    keys[i] = keys[j]!;
    items[j] = item;
    keys[j] = key;
  };
  return {
    push(item: number, key: number): void {
      if (size === items.length) {
        const moreItems = new Int32Array(size * 2);
        const moreKeys = new Float32Array(size * 2);
        moreItems.set(items);
        moreKeys.set(keys);
        items = moreItems;
        keys = moreKeys;
      }
      let i = size++;
      items[i] = item;
      keys[i] = key;
      while (i > 0) {
        const up = (i - 1) >> 1;
        if (keys[up]! <= keys[i]!) break;
        swap(up, i);
        i = up;
      }
    },
    /** The item with the smallest key, or -1. */
    pop(): number {
      if (size === 0) return -1;
      const first = items[0]!;
      size--;
      items[0] = items[size]!;
      keys[0] = keys[size]!;
      let i = 0;
      for (;;) {
        let least = i;
        const left = 2 * i + 1;
        if (left < size && keys[left]! < keys[least]!) least = left;
        if (left + 1 < size && keys[left + 1]! < keys[least]!) least = left + 1;
        if (least === i) return first;
        swap(i, least);
        i = least;
      }
    },
  };
}
