import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { measureHull } from './measure-hull.ts';

/** How good an outline looks as the outline of one leaf; parts are kept for tests and tuning. */
export interface OutlineScore {
  readonly total: number;
  /** Mean and weakest fifth of the colour contrast across the outline, 0–1. */
  readonly contrast: number;
  readonly weakest: number;
  /** Share of the frame, and share of the outline that lies on the frame's rim. */
  readonly share: number;
  readonly onRim: number;
  /** Area over the area of the convex hull. */
  readonly solid: number;
  /** Mean plant-likeness of the colours inside. */
  readonly green: number;
  /** Overlap over union with what the network guesses, each pixel by its odds; absent without a guess. */
  readonly agreed?: number;
}

/**
 * Scores an outline on the coarse frame. A leaf differs from what lies beyond its whole outline, so the contrast between
 * the mean colours just inside and just outside is taken all along it; a cut through a leaf, or round a leaf and its
 * neighbour, has stretches without contrast.
 */
export function scoreOutline(lab: LabPlanes, mask: Uint8Array, plant: Float32Array): OutlineScore {
  const { width, height } = lab;
  const contrasts: number[] = [];
  let area = 0;
  let rim = 0;
  let green = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (mask[i] !== 255) continue;
      area++;
      green += plant[i]!;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) rim++;
      else if (mask[i - 1] === 0 || mask[i + 1] === 0 || mask[i - width] === 0 || mask[i + width] === 0) {
        contrasts.push(contrastAt(lab, mask, x, y));
      }
    }
  }
  if (area === 0 || contrasts.length === 0) {
    return {
      total: -9,
      contrast: 0,
      weakest: 0,
      share: area / (width * height),
      onRim: 1,
      solid: 0,
      green: 0,
    };
  }
  contrasts.sort((p, q) => p - q);
  const mean = contrasts.reduce((s, v) => s + v, 0) / contrasts.length;
  const fifth = Math.max(1, Math.floor(contrasts.length / 5));
  const weakest = contrasts.slice(0, fifth).reduce((s, v) => s + v, 0) / fifth;
  const share = area / (width * height);
  const onRim = rim / (rim + contrasts.length);
  const solid = area / measureHull(mask, width, height).areaPx;
  const corners = [0, width - 1, (height - 1) * width, width * height - 1].filter(
    (i) => mask[i] === 255,
  ).length;
  const total =
    mean +
    0.8 * weakest +
    0.13 * Math.log(Math.min(share, 0.35) / 0.05) +
    1.1 * solid +
    0.3 * (green / area) -
    0.3 * onRim -
    // A leaf may be cut by the frame; what is mostly bounded by it is the whole scene.
    Math.max(0, onRim - 0.45) -
    0.07 * corners -
    (share < 0.02 ? 0.5 : 0) -
    (share > 0.9 ? 1 : 0);
  return {
    total,
    contrast: mean,
    weakest,
    share,
    onRim,
    solid,
    green: green / area,
  };
}

/** A hundredth of disagreement with the network weighs six times as much as one of contrast. */
const AGREED_WEIGHT = 6;

/** A proposal with its score raised by how far it agrees with the network, as much as the network is trusted (0–1). */
export function addAgreement<T extends { readonly score: OutlineScore }>(
  proposal: T,
  agreed: number,
  trust: number,
): T {
  const { score } = proposal;
  return { ...proposal, score: { ...score, agreed, total: score.total + trust * AGREED_WEIGHT * agreed } };
}

/** Overlap over union of a mask with the network's guess (log odds), each pixel by its chance. */
export function measureAgreement(mask: Uint8Array, guess: Float32Array): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < mask.length; i++) {
    const chance = 1 / (1 + Math.exp(-guess[i]!));
    if (mask[i] === 255) both += chance;
    either += mask[i] === 255 ? 1 : chance;
  }
  return both / Math.max(1, either);
}

/** Colour step at which contrast counts half. */
const HALF_CONTRAST = 5;
const REACH_PX = 3;

/** Contrast 0–1 between the mean colours inside and outside within 3 px of a place on the outline. */
function contrastAt(lab: LabPlanes, mask: Uint8Array, x: number, y: number): number {
  let inL = 0;
  let inA = 0;
  let inB = 0;
  let inside = 0;
  let outL = 0;
  let outA = 0;
  let outB = 0;
  let outside = 0;
  for (let dy = -REACH_PX; dy <= REACH_PX; dy++) {
    const ny = y + dy;
    if (ny < 0 || ny >= lab.height) continue;
    for (let dx = -REACH_PX; dx <= REACH_PX; dx++) {
      const nx = x + dx;
      if (nx < 0 || nx >= lab.width || dx * dx + dy * dy > 10) continue;
      const i = ny * lab.width + nx;
      if (mask[i] === 255) {
        inL += lab.L[i]!;
        inA += lab.a[i]!;
        inB += lab.b[i]!;
        inside++;
      } else {
        outL += lab.L[i]!;
        outA += lab.a[i]!;
        outB += lab.b[i]!;
        outside++;
      }
    }
  }
  if (inside === 0 || outside === 0) return 0;
  const dL = 0.7 * (inL / inside - outL / outside);
  const da = inA / inside - outA / outside;
  const db = inB / inside - outB / outside;
  const step = Math.sqrt(dL * dL + da * da + db * db);
  return (step * step) / (step * step + HALF_CONTRAST * HALF_CONTRAST);
}
