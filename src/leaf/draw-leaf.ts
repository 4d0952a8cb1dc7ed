/**
 * Draws leaves whose truth is known: shape, veins, yellow, dead, purple and white tissue, spots, holes and bites over a
 * background of choice. Everything is seeded, so the same options give the same picture on every machine.
 */

import type { Pixels } from '../photo/types.ts';
import type { Mask } from './types.ts';

type Rgb = readonly [number, number, number];

/** `palmate` has five fingers about the end of its stalk, `heart` a notch at the base and a drawn-out tip. */
export type LeafShape = 'oval' | 'lobed' | 'toothed' | 'palmate' | 'heart' | 'none';

export interface LeafPicture {
  /** Size of the picture, px. Default 640 × 480. */
  readonly width?: number;
  readonly height?: number;
  readonly seed?: number;
  readonly background?: 'soil' | 'straw' | 'paper' | 'grey' | 'leaves' | 'black';
  /** Outline of the leaf. Default `oval`. */
  readonly shape?: LeafShape;
  /** How far the halves differ, 0 for a perfect mirror image: one is this share wider, and the outline wavers by as much. */
  readonly uneven?: number;
  /** Centre as fractions of the frame. Default the middle. */
  readonly centre?: { readonly x: number; readonly y: number };
  /** Length over the longest side of the frame. Default 0.7. */
  readonly length?: number;
  /** Width over length. Default 0.55. */
  readonly slender?: number;
  /** Turn of the tip, clockwise from pointing right. Default 0. */
  readonly angleDegrees?: number;
  /** Colour of healthy tissue (sRGB) and of the veins. */
  readonly green?: Rgb;
  readonly veins?: Rgb;
  readonly yellow?: {
    readonly where: 'all' | 'between-veins' | 'edges' | 'tip' | 'patches';
    readonly rgb?: Rgb;
  };
  readonly spots?: {
    readonly count: number;
    /** Radius over the leaf's length. Default 0.02. */
    readonly radius?: number;
    readonly rgb?: Rgb;
  };
  readonly holes?: { readonly count: number; readonly radius?: number };
  readonly bites?: { readonly count: number; readonly radius?: number };
  /** Patch over the half of the leaf nearer the base, or powder in blotches. */
  readonly purple?: boolean;
  readonly powder?: boolean;
  /** Dimples all over: how much the light rises and falls, as a share. Default 0. */
  readonly dimples?: number;
  /** White plant label in the upper left corner. */
  readonly label?: boolean;
  /** Multipliers of linear R, G, B: the colour of the light. */
  readonly light?: Rgb;
  /** Dark shadow over the right part of the frame. */
  readonly shadow?: boolean;
}

export interface LeafTruth {
  /** Tissue that is there; and the leaf as it would be without holes and bites. */
  readonly remaining: Mask;
  readonly whole: Mask;
  readonly chloroticFraction: number;
  readonly necroticFraction: number;
  readonly purpleFraction: number;
  readonly whiteFraction: number;
  readonly lostFraction: number;
  readonly holeFraction: number;
  readonly edgeLossFraction: number;
  readonly holeCount: number;
  readonly spotCount: number;
}

export interface DrawnLeaf {
  readonly pixels: Pixels;
  readonly truth: LeafTruth;
}

interface Disc {
  readonly u: number;
  readonly v: number;
  readonly r: number;
}

/** Small seeded generator (mulberry32), uniform on 0–1. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Smooth noise on 0–1 with features of one unit, from hashed lattice points. */
function noiseOf(seed: number): (x: number, y: number) => number {
  const at = (ix: number, iy: number): number => {
    let h = Math.imul(ix, 374761393) + Math.imul(iy, 668265263) + Math.imul(seed, 144665);
    h = Math.imul(h ^ (h >>> 13), 1274126177);
    return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
  };
  return (x, y) => {
    const ix = Math.floor(x);
    const iy = Math.floor(y);
    const fx = (x - ix) ** 2 * (3 - 2 * (x - ix));
    const fy = (y - iy) ** 2 * (3 - 2 * (y - iy));
    const top = at(ix, iy) * (1 - fx) + at(ix + 1, iy) * fx;
    const bottom = at(ix, iy + 1) * (1 - fx) + at(ix + 1, iy + 1) * fx;
    return top * (1 - fy) + bottom * fy;
  };
}

/** Half the width of the leaf, in leaf lengths, at `u` from base (0) to tip (1). */
function halfWidthAt(u: number, shape: LeafShape, slender: number): number {
  if (u <= 0 || u >= 1) return 0;
  const oval = (slender / 2) * Math.sin(Math.PI * u ** 0.8) ** 0.75;
  if (shape === 'lobed') return oval * (0.72 + 0.38 * Math.cos(2 * Math.PI * 2.5 * (u - 0.3)));
  if (shape === 'toothed') return oval * (0.94 + 0.12 * ((u * 14) % 1));
  return oval;
}

/** Where the stalk meets a palmate leaf, along its length. */
const STALK_U = 0.32;

/**
 * Reach of a palmate or heart-shaped leaf from the end of its stalk, in leaf lengths; `angle` from the tip. The fingers of
 * the palmate one point every 62 degrees.
 */
function reachAt(angle: number, shape: LeafShape, slender: number): number {
  const turn = Math.abs(angle);
  if (shape === 'heart') {
    const body = (0.5 + 0.5 * Math.cos(turn)) ** 1.6 * (1 - STALK_U) * 0.62;
    const tip = (1 - STALK_U) * 0.38 * Math.exp(-((turn / 0.16) ** 2));
    const lobes = slender * 0.75 * Math.sin(Math.min(Math.PI, turn * 0.82)) ** 1.3;
    const notch = turn > 2.6 ? 1 - ((turn - 2.6) / (Math.PI - 2.6)) * 0.75 : 1;
    return (body + tip + lobes * 0.8) * notch;
  }
  const step = 1.08;
  const finger = Math.min(2, Math.round(turn / step));
  const off = (turn - finger * step) / (step / 2);
  const length = (1 - STALK_U) * [1, 0.85, 0.55][finger]!;
  return length * (0.42 + 0.58 * Math.max(0, Math.cos((Math.min(1, Math.abs(off)) * Math.PI) / 2)) ** 1.4);
}

/** Distance to the nearest vein in leaf lengths: the midrib and seven pairs of side veins leaving it forwards. */
function distanceToVein(u: number, v: number): number {
  let nearest = Math.abs(v);
  for (let k = 0; k < 7; k++) {
    const start = 0.06 + k * 0.12;
    const along = (u - start) * 0.75 + Math.abs(v) * 0.66;
    if (along < 0) continue;
    nearest = Math.min(nearest, Math.abs(-(u - start) * 0.66 + Math.abs(v) * 0.75) + 0.002);
  }
  return nearest;
}

/** Discs strewn over the leaf without touching each other or the midrib, `margin` from the outline. */
function strewDiscs(
  count: number,
  radius: number,
  random: () => number,
  shape: LeafShape,
  slender: number,
  taken: Disc[],
): Disc[] {
  const discs: Disc[] = [];
  for (let attempt = 0; attempt < 8000 && discs.length < count; attempt++) {
    const disc = { u: 0.08 + random() * 0.84, v: (random() - 0.5) * slender, r: radius };
    const room = Math.min(
      ...[-1, -0.5, 0, 0.5, 1].map((k) => halfWidthAt(disc.u + k * 1.6 * radius, shape, slender)),
    );
    if (Math.abs(disc.v) + 1.6 * radius > room || Math.abs(disc.v) < 1.4 * radius) continue;
    if (taken.some((o) => Math.hypot(o.u - disc.u, o.v - disc.v) < 1.25 * (o.r + disc.r))) continue;
    discs.push(disc);
    taken.push(disc);
  }
  return discs;
}

function strewBites(
  count: number,
  radius: number,
  random: () => number,
  shape: LeafShape,
  slender: number,
  taken: Disc[],
): Disc[] {
  const discs: Disc[] = [];
  for (let attempt = 0; attempt < 4000 && discs.length < count; attempt++) {
    const along = random();
    const side = random() < 0.5 ? -1 : 1;
    const u = 0.2 + along * 0.55;
    const angle = side * (0.2 + 2 * along);
    const reach = reachAt(angle, shape, slender);
    const disc =
      shape === 'palmate' || shape === 'heart'
        ? { u: STALK_U + reach * Math.cos(angle), v: reach * Math.sin(angle), r: radius }
        : { u, v: side * halfWidthAt(u, shape, slender), r: radius };
    if (taken.some((o) => Math.hypot(o.u - disc.u, o.v - disc.v) < 1.3 * (o.r + disc.r))) continue;
    discs.push(disc);
    taken.push(disc);
  }
  return discs;
}

const within = (discs: readonly Disc[], u: number, v: number): boolean =>
  discs.some((d) => (d.u - u) ** 2 + (d.v - v) ** 2 < d.r * d.r);

const BACKGROUNDS: Record<NonNullable<LeafPicture['background']>, Rgb> = {
  soil: [96, 72, 54],
  straw: [196, 172, 118],
  paper: [236, 235, 232],
  grey: [128, 128, 128],
  leaves: [66, 104, 52],
  black: [0, 0, 0],
};

const toLinear = (u: number): number => (u <= 0.04045 ? u / 12.92 : ((u + 0.055) / 1.055) ** 2.4);
const toCoded = (v: number): number => (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055);

/** Draws one leaf at twice the size and averages down, so that edges mix as a camera's do. */
export function drawLeaf(picture: LeafPicture = {}): DrawnLeaf {
  const width = picture.width ?? 640;
  const height = picture.height ?? 480;
  const shape = picture.shape ?? 'oval';
  const slender = picture.slender ?? 0.55;
  const uneven = picture.uneven ?? 0;
  const isRound = shape === 'palmate' || shape === 'heart';
  const seed = picture.seed ?? 1;
  const random = seededRandom(seed);
  const noise = noiseOf(seed);
  const lengthPx = (picture.length ?? 0.7) * Math.max(width, height);
  const angle = ((picture.angleDegrees ?? 0) * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const cx = (picture.centre?.x ?? 0.5) * width;
  const cy = (picture.centre?.y ?? 0.5) * height;
  const green = picture.green ?? [62, 110, 48];
  const veinRgb = picture.veins ?? [88, 132, 66];
  const yellowRgb = picture.yellow?.rgb ?? [196, 190, 62];
  const spotRgb = picture.spots?.rgb ?? [112, 74, 42];
  const taken: Disc[] = [];
  const bites = strewBites(
    picture.bites?.count ?? 0,
    picture.bites?.radius ?? 0.07,
    random,
    shape,
    slender,
    taken,
  );
  const holes = strewDiscs(
    picture.holes?.count ?? 0,
    picture.holes?.radius ?? 0.03,
    random,
    shape,
    slender,
    taken,
  );
  const spots = strewDiscs(
    picture.spots?.count ?? 0,
    picture.spots?.radius ?? 0.02,
    random,
    shape,
    slender,
    taken,
  );

  const data = new Uint8ClampedArray(width * height * 4);
  const remaining = new Uint8Array(width * height);
  const whole = new Uint8Array(width * height);
  const area = { whole: 0, remaining: 0, hole: 0, bite: 0, yellow: 0, dead: 0, purple: 0, white: 0 };
  const sum = [0, 0, 0];
  const rgb = [0, 0, 0];
  const light = picture.light ?? [1, 1, 1];
  const base = BACKGROUNDS[picture.background ?? 'soil'];

  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      sum[0] = sum[1] = sum[2] = 0;
      let inWhole = 0;
      let inRemaining = 0;
      for (let sub = 0; sub < 4; sub++) {
        const px = x + 0.25 + (sub & 1) * 0.5;
        const py = y + 0.25 + (sub >> 1) * 0.5;
        const u = ((px - cx) * cos + (py - cy) * sin) / lengthPx + 0.5;
        const v = (-(px - cx) * sin + (py - cy) * cos) / lengthPx;
        const half = halfWidthAt(u, shape, slender);
        const waver =
          uneven === 0 ? 1 : 1 + uneven * ((v > 0 ? 0.5 : -0.5) + noise(u * 7 + 20, v > 0 ? 3 : 60) - 0.5);
        const isWhole =
          shape !== 'none' &&
          (isRound
            ? Math.hypot(u - STALK_U, v) < waver * reachAt(Math.atan2(v, u - STALK_U), shape, slender)
            : Math.abs(v) < waver * half);
        const isBite = isWhole && within(bites, u, v);
        const isHole = isWhole && !isBite && within(holes, u, v);
        const isLeaf = isWhole && !isBite && !isHole;
        if (isWhole) {
          inWhole++;
          area.whole++;
          if (isBite) area.bite++;
          if (isHole) area.hole++;
        }
        if (isLeaf) {
          inRemaining++;
          area.remaining++;
          const vein = distanceToVein(u, v);
          const isSpot = within(spots, u, v);
          let isYellow = false;
          switch (picture.yellow?.where) {
            case 'all':
              isYellow = true;
              break;
            case 'between-veins':
              isYellow = vein > 0.011;
              break;
            case 'edges':
              isYellow = half - Math.abs(v) < 0.045 || u > 0.9 || u < 0.06;
              break;
            case 'tip':
              isYellow = u > 0.66;
              break;
            case 'patches':
              isYellow = noise(u * 14 + 40, v * 14 + 40) > 0.56;
              break;
          }
          const isPurple = picture.purple === true && u < 0.5;
          const isPowder = picture.powder === true && noise(u * 11 + 7, v * 11 + 3) > 0.6;
          const veinShare = vein < 0.006 ? 1 - vein / 0.006 : 0;
          const from = isYellow ? yellowRgb : green;
          for (let c = 0; c < 3; c++) {
            rgb[c] = from[c]! * (1 - veinShare) + (isYellow ? yellowRgb[c]! : veinRgb[c]!) * veinShare;
            if (isPurple) rgb[c] = [106, 52, 84][c]!;
            if (isPowder) rgb[c] = [204, 208, 202][c]!;
            if (isSpot) rgb[c] = spotRgb[c]!;
          }
          if (isSpot) area.dead++;
          else if (isPowder) area.white++;
          else if (isPurple) area.purple++;
          else if (isYellow) area.yellow++;
          const dimple = 1 + (picture.dimples ?? 0) * (2 * noise(u * 40 + 9, v * 40 + 9) - 1);
          const shade =
            dimple * (0.94 + 0.12 * noise(px * 0.01, py * 0.01) + 0.03 * (noise(px * 0.9, py * 0.9) - 0.5));
          for (let c = 0; c < 3; c++) sum[c]! += rgb[c]! * shade;
        } else {
          const grain =
            picture.background === 'paper' || picture.background === 'grey'
              ? 0.99 + 0.02 * noise(px * 0.5, py * 0.5)
              : 0.7 + 0.35 * noise(px * 0.045, py * 0.045) + 0.25 * noise(px * 0.35, py * 0.35);
          const isLabel =
            picture.label === true &&
            px > 0.02 * width &&
            px < 0.17 * width &&
            py > 0.03 * height &&
            py < 0.15 * height;
          for (let c = 0; c < 3; c++) sum[c]! += isLabel ? 238 : base[c]! * grain;
        }
      }
      const at = y * width + x;
      const dim = picture.shadow === true && x > 0.62 * width + 0.1 * y ? 0.35 : 1;
      for (let c = 0; c < 3; c++) {
        const lit = toLinear(Math.min(255, sum[c]! / 4) / 255) * light[c]! * dim;
        data[at * 4 + c] = Math.min(255, 255 * toCoded(Math.min(1, lit)) + (random() - 0.5) * 3);
      }
      data[at * 4 + 3] = 255;
      if (inWhole >= 2) whole[at] = 255;
      if (inRemaining >= 2) remaining[at] = 255;
    }
  }
  const per = (part: number, of: number): number => (of > 0 ? part / of : 0);
  return {
    pixels: { width, height, data },
    truth: {
      remaining: { width, height, data: remaining },
      whole: { width, height, data: whole },
      chloroticFraction: per(area.yellow, area.remaining),
      necroticFraction: per(area.dead, area.remaining),
      purpleFraction: per(area.purple, area.remaining),
      whiteFraction: per(area.white, area.remaining),
      lostFraction: per(area.hole + area.bite, area.whole),
      holeFraction: per(area.hole, area.whole),
      edgeLossFraction: per(area.bite, area.whole),
      holeCount: holes.length,
      spotCount: spots.length,
    },
  };
}
