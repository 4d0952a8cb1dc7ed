import { convertPixelsToLab, type LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { scaleByBoxes } from '../photo/scale-to-working-frame.ts';
import type { Pixels } from '../photo/types.ts';
import { measureDistances } from './measure-distances.ts';

/** Largest leaf, in pixels of the sample, that measures are taken on: side veins stay several pixels wide. */
export const FULL_SAMPLE_PX = 60_000;
/** Enough to see how far a measure moves when light, mask or bounds do. */
export const SMALL_SAMPLE_PX = 10_000;

/**
 * The leaf cut out of the working frame and brought to one size, so that measures do not depend on how near the camera
 * was. `sizePx` is the root of the leaf's area: the unit of every length in the measures.
 */
export interface LeafSample {
  readonly width: number;
  readonly height: number;
  readonly pixels: Pixels;
  /** 255 = tissue, 255 = inside the filled outline. */
  readonly tissue: Uint8Array;
  readonly outline: Uint8Array;
  /** Distance of each pixel inside the outline from it, px. */
  readonly depth: Float32Array;
  readonly sizePx: number;
  /** Place and size in the working frame. */
  readonly left: number;
  readonly top: number;
  readonly cropWidth: number;
  readonly cropHeight: number;
}

/** Cuts the leaf out. `outline` must hold at least one pixel. */
export function sampleLeaf(
  frame: Pixels,
  outline: Uint8Array,
  remaining: Uint8Array,
  mostPx: number = FULL_SAMPLE_PX,
): LeafSample {
  const box = boundsOf(outline, frame.width, frame.height);
  let area = 0;
  for (let i = 0; i < outline.length; i++) if (outline[i] === 255) area++;
  const shrink = Math.min(1, Math.sqrt(mostPx / area));
  const width = Math.max(4, Math.round(box.width * shrink));
  const height = Math.max(4, Math.round(box.height * shrink));
  const crop = cropPixels(frame, box);
  const pixels = shrink < 1 ? scaleByBoxes(crop, width, height) : crop;
  const size = { width: pixels.width, height: pixels.height };
  const small = (mask: Uint8Array): Uint8Array => scaleMask(mask, frame.width, box, size);
  const outlineSmall = small(outline);
  const tissue = small(remaining);
  let smallArea = 0;
  for (let i = 0; i < tissue.length; i++) {
    if (outlineSmall[i] === 0) tissue[i] = 0;
    else smallArea++;
  }
  return {
    ...size,
    pixels,
    tissue,
    outline: outlineSmall,
    depth: measureDistances(outlineSmall, size.width, size.height, 255),
    sizePx: Math.sqrt(Math.max(1, smallArea)),
    left: box.left,
    top: box.top,
    cropWidth: box.width,
    cropHeight: box.height,
  };
}

/** CIELAB planes of a sample under gains. */
export function colourSample(sample: LeafSample, gains: readonly [number, number, number]): LabPlanes {
  return convertPixelsToLab(sample.pixels, gains);
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Bounds of a mask with a margin of two pixels, within the frame. */
export function boundsOf(mask: Uint8Array, width: number, height: number): Box {
  let left = width;
  let right = 0;
  let top = height;
  let bottom = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (mask[y * width + x] !== 255) continue;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  left = Math.max(0, left - 2);
  top = Math.max(0, top - 2);
  return {
    left,
    top,
    width: Math.min(width - 1, right + 2) - left + 1,
    height: Math.min(height - 1, bottom + 2) - top + 1,
  };
}

/** Cuts a box out of a picture. */
export function cropPixels(frame: Pixels, box: Box): Pixels {
  const data = new Uint8ClampedArray(box.width * box.height * 4);
  for (let y = 0; y < box.height; y++) {
    const from = ((box.top + y) * frame.width + box.left) * 4;
    data.set(frame.data.subarray(from, from + box.width * 4), y * box.width * 4);
  }
  return { width: box.width, height: box.height, data };
}

/** Cuts a box out of a mask or plane of the given row length. */
export function cropMask(mask: Uint8Array, width: number, box: Box): Uint8Array {
  const out = new Uint8Array(box.width * box.height);
  for (let y = 0; y < box.height; y++) {
    const from = (box.top + y) * width + box.left;
    out.set(mask.subarray(from, from + box.width), y * box.width);
  }
  return out;
}

/** A sample pixel belongs where at least half of the frame's pixels under it do. */
function scaleMask(
  mask: Uint8Array,
  frameWidth: number,
  box: Box,
  size: { width: number; height: number },
): Uint8Array {
  const out = new Uint8Array(size.width * size.height);
  const stepX = box.width / size.width;
  const stepY = box.height / size.height;
  for (let y = 0; y < size.height; y++) {
    const top = Math.floor(y * stepY);
    const bottom = Math.max(top + 1, Math.floor((y + 1) * stepY));
    for (let x = 0; x < size.width; x++) {
      const left = Math.floor(x * stepX);
      const right = Math.max(left + 1, Math.floor((x + 1) * stepX));
      let inside = 0;
      for (let sy = top; sy < bottom; sy++) {
        for (let sx = left; sx < right; sx++) {
          if (mask[(box.top + sy) * frameWidth + box.left + sx] === 255) inside++;
        }
      }
      if (2 * inside >= (bottom - top) * (right - left)) out[y * size.width + x] = 255;
    }
  }
  return out;
}
