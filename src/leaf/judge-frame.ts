import { convertPixelsToLab } from '../photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../photo/scale-to-working-frame.ts';
import { hasSheet } from '../photo/settle-white.ts';
import type { Pixels } from '../photo/types.ts';
import { judgeExposure, judgeSharpness } from './judge-photo.ts';
import { judgePlantColour } from './judge-plant.ts';

/**
 * What to do before the shutter, the most pressing first; `ready` when there is nothing to do. `lay-label`: good enough to
 * take, but nothing white lies beside the leaf to tell its colours by.
 */
export type FrameHint =
  | 'too-dark'
  | 'burnt-out'
  | 'no-leaf'
  | 'come-closer'
  | 'hold-still'
  | 'lay-label'
  | 'ready';

/** One frame of a viewfinder, judged. */
export interface FrameJudgement {
  readonly hint: FrameHint;
  /** Median L* of the frame. */
  readonly lightness: number;
  /** Share of pixels, of the plant if there is one, that have lost their colour to a full channel. */
  readonly burnt: number;
  /** Share of the frame that is plant-like and hangs together with its middle. */
  readonly leafShare: number;
  /** 0–1, as `judgeSharpness` gives it, over the leaf. */
  readonly sharpness: number;
}

/** Longest side a frame is judged at, px: enough to see a blur that costs the veins, small enough for ten frames a second. */
export const JUDGED_SIDE_PX = 480;
/** Cells of the grid on which the leaf is looked for, along the longest side. */
const GRID_CELLS = 48;

/** Median L* below which colours are mostly noise; see `training/measure-photo-thresholds.ts`. */
const DARK_L = 16;
/** Share of burnt pixels from which too much of the leaf is gone; see `read-leaf.ts`. */
const BURNT_SHARE = 0.4;
/** A leaf that fills less of the frame than this wastes the camera's pixels; under the lesser, nothing there looks like one. */
const CLOSE_SHARE = 0.15;
const LEAF_SHARE = 0.02;
/** Below this, spots and veins run together. */
const SHARP = 0.4;

/**
 * Judges one frame of a viewfinder, for a hint while the person still holds the camera. It does not outline the leaf: it
 * only asks whether something plant-like lies under the middle and how much of the frame it takes. Some 15 ms for 480 × 360.
 *
 * @param pixels frame of any size; larger ones are scaled down to 480 px first, best done by whoever draws the frame
 */
export function judgeFrame(pixels: Pixels): FrameJudgement {
  const frame = scaleToWorkingFrame(pixels, JUDGED_SIDE_PX);
  const lab = convertPixelsToLab(frame);
  const { share, mask } = findMiddlePlant(lab);
  const whole = judgeExposure(frame, lab);
  const { medianL } = whole;
  const { burnt } = share < LEAF_SHARE ? whole : judgeExposure(frame, lab, mask);
  const sharpness = judgeSharpness(lab, share >= LEAF_SHARE ? mask : undefined);
  const hint = chooseHint(medianL, burnt, share, sharpness);
  return {
    hint: hint === 'ready' && !hasSheet(frame, mask) ? 'lay-label' : hint,
    lightness: medianL,
    burnt,
    leafShare: share,
    sharpness,
  };
}

function chooseHint(lightness: number, burnt: number, leafShare: number, sharpness: number): FrameHint {
  if (lightness < DARK_L) return 'too-dark';
  if (burnt > BURNT_SHARE) return 'burnt-out';
  if (leafShare < LEAF_SHARE) return 'no-leaf';
  if (leafShare < CLOSE_SHARE) return 'come-closer';
  return sharpness < SHARP ? 'hold-still' : 'ready';
}

/** Plant-like cells that hang together with the middle fifth of the frame, as a share and as a mask of its pixels. */
function findMiddlePlant(lab: ReturnType<typeof convertPixelsToLab>): { share: number; mask: Uint8Array } {
  const { width, height } = lab;
  const cell = Math.max(1, Math.ceil(Math.max(width, height) / GRID_CELLS));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  const sums = new Float32Array(columns * rows);
  const counts = new Float32Array(columns * rows);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const k = Math.floor(y / cell) * columns + Math.floor(x / cell);
      sums[k]! += judgePlantColour(lab.a[y * width + x]!, lab.b[y * width + x]!);
      counts[k]!++;
    }
  }
  const reached = new Uint8Array(columns * rows);
  const queue: number[] = [];
  const enter = (x: number, y: number): void => {
    const k = y * columns + x;
    if (x < 0 || y < 0 || x >= columns || y >= rows || reached[k] === 1 || sums[k]! < 0.5 * counts[k]!)
      return;
    reached[k] = 1;
    queue.push(k);
  };
  for (let y = Math.floor(0.4 * rows); y <= Math.floor(0.6 * rows); y++) {
    for (let x = Math.floor(0.4 * columns); x <= Math.floor(0.6 * columns); x++) enter(x, y);
  }
  while (queue.length > 0) {
    const k = queue.pop()!;
    const x = k % columns;
    const y = Math.floor(k / columns);
    enter(x + 1, y);
    enter(x - 1, y);
    enter(x, y + 1);
    enter(x, y - 1);
  }
  const mask = new Uint8Array(width * height);
  let inside = 0;
  for (let i = 0; i < mask.length; i++) {
    const x = i % width;
    const y = (i - x) / width;
    if (reached[Math.floor(y / cell) * columns + Math.floor(x / cell)] !== 1) continue;
    mask[i] = 255;
    inside++;
  }
  return { share: inside / mask.length, mask };
}
