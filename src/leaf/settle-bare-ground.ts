import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { blurInside } from './blur-inside.ts';
import { colourStep } from './grow-from-seed.ts';
import { labelRegions } from './label-regions.ts';
import { boundsOf, cropMask } from './sample-leaf.ts';

/** Colour of a plain ground. */
export interface PlainGround {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/**
 * Settles to the pixel where a plain pale ground shows through a leaf; the result has 255 where tissue is there.
 *
 * A pixel is bare when it lies nearly half way from the leaf around it to the ground in lightness, or has lost most of the
 * leaf's chroma: the second sees ground in the shadow that the leaf casts into its own holes, which is grey but dark. From
 * the holes seen already the bare pixels around are taken in, as far as such a shadow reaches. Holes of few pixels have no
 * middle of pure ground and were not seen yet: bare pieces of small size with a sharp step all round are added. Bounds were
 * set on every second scan of `soybean-holes`.
 *
 * @param holes 1 where a hole was seen already
 * @param leaf 1 where tissue is beyond doubt
 */
export function settleBareGround(
  lab: LabPlanes,
  outline: Uint8Array,
  holes: Uint8Array,
  leaf: Uint8Array,
  ground: PlainGround,
): Uint8Array {
  const box = boundsOf(outline, lab.width, lab.height);
  const { width, height } = box;
  const within = cropMask(outline, lab.width, box);
  const crop: LabPlanes = {
    width,
    height,
    L: new Float32Array(within.length),
    a: new Float32Array(within.length),
    b: new Float32Array(within.length),
  };
  const chroma = new Float32Array(within.length);
  const tissue = new Uint8Array(within.length);
  const seen = new Uint8Array(within.length);
  let area = 0;
  for (let y = 0, k = 0; y < height; y++) {
    for (let x = 0, i = (box.top + y) * lab.width + box.left; x < width; x++, i++, k++) {
      crop.L[k] = lab.L[i]!;
      crop.a[k] = lab.a[i]!;
      crop.b[k] = lab.b[i]!;
      if (within[k] !== 255) continue;
      area++;
      chroma[k] = Math.hypot(lab.a[i]! - ground.a, lab.b[i]! - ground.b);
      if (leaf[i] === 1) tissue[k] = 255;
      seen[k] = holes[i]!;
    }
  }
  const size = Math.sqrt(area);
  const leafLight = blurInside(crop.L, tissue, width, height, AROUND * size);
  const leafChroma = blurInside(chroma, tissue, width, height, AROUND * size);
  /** 0 as the leaf around, 1 as the ground. */
  const bright = new Float32Array(within.length);
  const pale = new Float32Array(within.length);
  const isBare = new Uint8Array(within.length);
  for (let k = 0; k < within.length; k++) {
    if (within[k] !== 255) continue;
    if (leafChroma[k] === 0) {
      // No leaf is near: the middle of a wide hole.
      isBare[k] = seen[k]!;
      continue;
    }
    pale[k] = 1 - chroma[k]! / Math.max(1, leafChroma[k]!);
    bright[k] = (crop.L[k]! - leafLight[k]!) / Math.max(5, ground.L - leafLight[k]!);
    if (bright[k]! > HALF_BRIGHT || (pale[k]! > MOSTLY_PALE && bright[k]! > SHADED)) isBare[k] = 1;
  }
  const remaining = growHoles(within, seen, isBare, width, Math.max(2, Math.round(SHADOW_REACH * size)));
  addSmallHoles(crop, remaining, { isBare, bright, pale }, area);
  const out = outline.slice();
  for (let y = 0, k = 0; y < height; y++) {
    for (let x = 0, i = (box.top + y) * lab.width + box.left; x < width; x++, i++, k++) {
      if (within[k] === 255) out[i] = remaining[k]!;
    }
  }
  return out;
}

/** Reach of what counts as the leaf around, over the root of the leaf's area. */
const AROUND = 0.06;
/** Share of the way to the ground in lightness; share of chroma lost; darker than the leaf by more is not ground. */
const HALF_BRIGHT = 0.45;
const MOSTLY_PALE = 0.62;
const SHADED = -0.25;
/** How far a shadow reaches into a hole, over the root of the leaf's area. */
const SHADOW_REACH = 0.03;
/** A pixel of a small hole, where all is border, and the least means of a piece of such. */
const FAINT = { each: 0.3, together: 0.8, pale: 0.4, bright: 0.25 } as const;
/** Shares of the leaf between which a piece without a middle of pure ground counts as a hole, and its border's least step. */
const LEAST_SMALL = 1e-4;
const MOST_SMALL = 2e-3;
const SMALL_STEP = 14;

interface Bareness {
  readonly isBare: Uint8Array;
  readonly bright: Float32Array;
  readonly pale: Float32Array;
}

/** The outline less the holes seen, their border moved to where bare pixels end, outwards by at most `reach` px. */
function growHoles(
  within: Uint8Array,
  seen: Uint8Array,
  isBare: Uint8Array,
  width: number,
  reach: number,
): Uint8Array {
  const remaining = within.slice();
  let rim: number[] = [];
  for (let k = 0; k < within.length; k++) {
    if (seen[k] !== 1 || isBare[k] !== 1) continue;
    remaining[k] = 0;
    rim.push(k);
  }
  for (let step = 0; step < reach && rim.length > 0; step++) {
    const next: number[] = [];
    for (const k of rim) {
      for (const d of [1, -1, width, -width]) {
        if (remaining[k + d] !== 255 || isBare[k + d] !== 1) continue;
        remaining[k + d] = 0;
        next.push(k + d);
      }
    }
    rim = next;
  }
  return remaining;
}

/** Takes out of `remaining` small pieces that are nearly bare and sharply bounded. */
function addSmallHoles(crop: LabPlanes, remaining: Uint8Array, bareness: Bareness, area: number): void {
  const { width, height } = crop;
  const { isBare, bright, pale } = bareness;
  const faint = new Uint8Array(remaining.length);
  for (let k = 0; k < faint.length; k++) {
    if (remaining[k] !== 255) continue;
    const isFaint =
      pale[k]! > FAINT.each && bright[k]! > FAINT.each && pale[k]! + bright[k]! > FAINT.together;
    if (isBare[k] === 1 || isFaint) faint[k] = 1;
  }
  const { labels, sizes, count } = labelRegions(faint, width, height, 1, 8);
  const sums = new Float32Array((count + 1) * 4);
  for (let k = 0; k < labels.length; k++) {
    const label = labels[k]!;
    if (label === 0) continue;
    sums[label * 4]! += pale[k]!;
    sums[label * 4 + 1]! += bright[k]!;
    for (const d of [1, -1, width, -width]) {
      if (faint[k + d] === 1 || remaining[k + 2 * d] !== 255) continue;
      sums[label * 4 + 2]! += colourStep(crop, labels[k - d] === label ? k - d : k, k + 2 * d);
      sums[label * 4 + 3]!++;
    }
  }
  const isHole = Uint8Array.from(sizes, (size, label) => {
    if (label === 0 || size < Math.max(4, LEAST_SMALL * area) || size > MOST_SMALL * area) return 0;
    const steps = sums[label * 4 + 3]!;
    const isNearlyBare = sums[label * 4]! > FAINT.pale * size && sums[label * 4 + 1]! > FAINT.bright * size;
    return isNearlyBare && steps > 0 && sums[label * 4 + 2]! > SMALL_STEP * steps ? 1 : 0;
  });
  for (let k = 0; k < labels.length; k++) if (isHole[labels[k]!] === 1) remaining[k] = 0;
}
