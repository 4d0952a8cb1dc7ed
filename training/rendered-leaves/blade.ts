import { labelRegions } from '../../src/leaf/label-regions.ts';
import { measureDistances } from '../../src/leaf/measure-distances.ts';
import type { CropLook } from './crops.ts';
import type { Dice } from './dice.ts';
import { type BladeGrid, growVeins } from './grow-veins.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';
import type { BladeShape, Place } from './shape-outlines.ts';

/** What a texel is, for the truth; bits of `Blade.tags`. */
export const TAG = { dead: 1, purple: 2, white: 4, spot: 8, mottle: 16, pale: 32, vein: 64 } as const;

/** Anthocyanin from which tissue looks purple, red or bronze: it then takes more green light than chlorophyll does. */
export const PURPLE_FROM = 0.4;

/**
 * One blade as rasters: where it is, its veins, what its tissue holds, how its surface stands. Marks write to these; distances
 * are in lengths of the blade.
 */
export interface Blade extends BladeGrid {
  readonly look: CropLook;
  /** Length of the blade over that of the leaf: a leaflet's spots are no smaller than a leaf's. */
  readonly size: number;
  /** 1 = within the outline, holes and bites included. */
  readonly inside: Uint8Array;
  /** Distance to the outline, to the nearest main or side vein, to the nearest vein of any rank. */
  readonly edge: Float32Array;
  readonly main: Float32Array;
  readonly fine: Float32Array;
  /** Number of the field between veins that a texel lies in, 0 on a vein. */
  readonly field: Int32Array;
  readonly fields: number;
  /** Veins run along the blade side by side. */
  readonly isParallel: boolean;
  /** Smallest meshes: a random number of each (0–1) and the distance to its rim over its size. */
  readonly islet: Float32Array;
  readonly isletRim: Float32Array;
  /** How much of a texel is vein, 0–1. */
  readonly vein: Float32Array;
  readonly chlorophyll: Float32Array;
  readonly carotenoid: Float32Array;
  readonly anthocyanin: Float32Array;
  readonly brown: Float32Array;
  /** Cover by something light on top (powder, air under the skin), and its linear colour. */
  readonly cover: Float32Array;
  readonly coverColour: Float32Array;
  /** Height of the surface over the bent blade. */
  readonly relief: Float32Array;
  readonly gloss: Float32Array;
  /** 1 = eaten or fallen out. */
  readonly gone: Uint8Array;
  readonly tags: Uint8Array;
  /** Widest half, and a place in the noise of its own. */
  readonly halfWidth: number;
  /** Distance between side veins, in lengths. */
  readonly gap: number;
  readonly noiseU: number;
  readonly noiseV: number;
}

export const uOf = (blade: BladeGrid, x: number): number => blade.u0 + x / blade.scale;
export const vOf = (blade: BladeGrid, y: number): number => blade.v0 + y / blade.scale;

/** Fills a polygon by the rule of even and odd, at texel centres. */
export function fillPolygon(places: readonly Place[], grid: BladeGrid, into: Uint8Array): void {
  const n = places.length;
  const crossings: number[] = [];
  for (let y = 0; y < grid.height; y++) {
    const v = vOf(grid, y);
    crossings.length = 0;
    for (let k = 0; k < n; k++) {
      const a = places[k]!;
      const b = places[(k + 1) % n]!;
      if (a.v <= v === b.v <= v) continue;
      crossings.push((a.u + ((v - a.v) / (b.v - a.v)) * (b.u - a.u) - grid.u0) * grid.scale);
    }
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(crossings[k]!));
      const to = Math.min(grid.width - 1, Math.floor(crossings[k + 1]!));
      if (to >= from) into.fill(1, y * grid.width + from, y * grid.width + to + 1);
    }
  }
}

/** Distances in lengths from every texel that is not `to` to the nearest that is. */
function distancesTo(marked: Uint8Array, grid: BladeGrid): Float32Array {
  const distances = measureDistances(marked, grid.width, grid.height, 0);
  for (let i = 0; i < distances.length; i++) distances[i]! /= grid.scale;
  return distances;
}

/** A healthy blade; `scale` is texels a length, `size` its length over the leaf's. */
export function growBlade(shape: BladeShape, look: CropLook, scale: number, size: number, dice: Dice): Blade {
  let uLow = 0;
  let uHigh = 1;
  let vLow = 0;
  let vHigh = 0;
  for (const { u, v } of shape.outline) {
    uLow = Math.min(uLow, u);
    uHigh = Math.max(uHigh, u);
    vLow = Math.min(vLow, v);
    vHigh = Math.max(vHigh, v);
  }
  const pad = 2 / scale;
  const grid: BladeGrid = {
    u0: uLow - pad,
    v0: vLow - pad,
    scale,
    width: Math.ceil((uHigh - uLow + 2 * pad) * scale) + 1,
    height: Math.ceil((vHigh - vLow + 2 * pad) * scale) + 1,
  };
  const texels = grid.width * grid.height;
  const inside = new Uint8Array(texels);
  fillPolygon(shape.outline, grid, inside);
  const outside = new Uint8Array(texels);
  for (let i = 0; i < texels; i++) outside[i] = 1 - inside[i]!;
  const edge = distancesTo(outside, grid);
  const ranks = growVeins(shape, grid, inside, edge, dice);
  const isMain = new Uint8Array(texels);
  const isVein = new Uint8Array(texels);
  const between = new Uint8Array(texels);
  for (let i = 0; i < texels; i++) {
    const rank = ranks[i]!;
    if (rank === 1 || rank === 2) isMain[i] = 1;
    if (rank > 0) isVein[i] = 1;
    else if (inside[i] === 1) between[i] = 255;
  }
  const main = distancesTo(isMain, grid);
  const fine = distancesTo(isVein, grid);
  const { labels: field, count: fields } = labelRegions(between, grid.width, grid.height, 255, 4);
  const { islet, isletRim } = drawIslets(grid, dice.between(0.5, 1) * shape.venation.mesh, dice);

  const blade: Blade = {
    ...grid,
    look,
    size,
    inside,
    edge,
    main,
    fine,
    field,
    fields,
    isParallel: shape.venation.parallel === true,
    islet,
    isletRim,
    vein: new Float32Array(texels),
    chlorophyll: new Float32Array(texels),
    carotenoid: new Float32Array(texels),
    anthocyanin: new Float32Array(texels),
    brown: new Float32Array(texels),
    cover: new Float32Array(texels),
    coverColour: new Float32Array([0.6, 0.61, 0.6]),
    relief: new Float32Array(texels),
    gloss: new Float32Array(texels).fill(1),
    gone: new Uint8Array(texels),
    tags: new Uint8Array(texels),
    halfWidth: Math.max(vHigh, -vLow),
    gap: shape.venation.parallel ? shape.venation.mesh : 0.85 / shape.venation.sideVeins,
    noiseU: dice.between(0, 60),
    noiseV: dice.between(0, 60),
  };
  paintHealthy(blade, ranks, shape, dice);
  return blade;
}

/** Voronoi cells about jittered points (Worley 1996): the smallest meshes of the net. */
function drawIslets(
  grid: BladeGrid,
  mesh: number,
  dice: Dice,
): { islet: Float32Array; isletRim: Float32Array } {
  const cell = Math.max(2.5, mesh * grid.scale);
  const columns = Math.ceil(grid.width / cell) + 2;
  const rows = Math.ceil(grid.height / cell) + 2;
  const px = new Float32Array(columns * rows);
  const py = new Float32Array(columns * rows);
  const tone = new Float32Array(columns * rows);
  for (let k = 0; k < px.length; k++) {
    px[k] = ((k % columns) - 1 + dice.next()) * cell;
    py[k] = (Math.floor(k / columns) - 1 + dice.next()) * cell;
    tone[k] = dice.next();
  }
  const islet = new Float32Array(grid.width * grid.height);
  const isletRim = new Float32Array(islet.length);
  for (let y = 0, i = 0; y < grid.height; y++) {
    const row = Math.floor(y / cell) + 1;
    for (let x = 0; x < grid.width; x++, i++) {
      const column = Math.floor(x / cell) + 1;
      let nearest = 1e9;
      let second = 1e9;
      let which = 0;
      for (let r = Math.max(0, row - 1); r <= row + 1 && r < rows; r++) {
        for (let c = column - 1; c <= column + 1 && c < columns; c++) {
          const k = r * columns + c;
          const dx = px[k]! - x;
          const dy = py[k]! - y;
          const d = dx * dx + dy * dy;
          if (d < nearest) {
            second = nearest;
            nearest = d;
            which = k;
          } else if (d < second) second = d;
        }
      }
      islet[i] = tone[which]!;
      isletRim[i] = (Math.sqrt(second) - Math.sqrt(nearest)) / cell;
    }
  }
  return { islet, isletRim };
}

function paintHealthy(blade: Blade, ranks: Uint8Array, shape: BladeShape, dice: Dice): void {
  const { look, width, height, scale } = blade;
  const deep = dice.between(look.chlorophyll[0], look.chlorophyll[1]);
  const carotenoid = dice.between(0.8, 1.3);
  const young = dice.between(-0.25, 0.25);
  const blotch = dice.between(0.05, 0.22);
  const grain = dice.between(0.05, 0.24);
  const mainSoft = 0.8 + 0.0022 * scale;
  const paleVein = dice.between(look.veinGreen[0], look.veinGreen[1]);
  const thirdPale = dice.between(0.15, 0.7);
  const quilt = 1.5 * dice.between(look.quilt[0], look.quilt[1]);
  const netQuilt = quilt * dice.between(0.2, 0.6);
  const bump = dice.between(0.25, 0.8);
  const groove = dice.normal(0.003);
  const rib = look.ribs;
  for (let y = 0, i = 0; y < height; y++) {
    const v = vOf(blade, y);
    for (let x = 0; x < width; x++, i++) {
      if (blade.inside[i] === 0) continue;
      const u = uOf(blade, x);
      const nu = u + blade.noiseU;
      const nv = v + blade.noiseV;
      const patch = cloudAt(0, nu * 5, nv * 5, 3) - 0.5;
      const fleck = noiseAt(2, nu * scale * 0.3, nv * scale * 0.3) - 0.5;
      const alpha = shape.venation.parallel
        ? 0.55 * (0.5 + 0.5 * Math.cos((2 * Math.PI * v) / (shape.venation.mesh * (1 + 0.04 * patch))))
        : Math.max(
            1 - smoothStep(0, mainSoft, blade.main[i]! * scale),
            ranks[i] === 3 ? thirdPale : thirdPale * 0.8 * (1 - smoothStep(0, 1.6, blade.fine[i]! * scale)),
          );
      const inMain = ranks[i] === 1 ? 1 : 1 - smoothStep(0, mainSoft, blade.main[i]! * scale);
      blade.vein[i] = alpha;
      if (alpha > 0.6) blade.tags[i] = TAG.vein;
      const green = deep * (1 + young * (u - 0.5)) * (1 + 2 * blotch * patch + 2 * grain * fleck);
      blade.chlorophyll[i] = green * (1 - alpha * (1 - paleVein)) * (rib && ranks[i] === 1 ? rib.green : 1);
      blade.carotenoid[i] = carotenoid * (1 - 0.45 * alpha) * (rib && ranks[i] === 1 ? rib.carotenoid : 1);
      blade.anthocyanin[i] =
        look.purple * (1 + patch) + (rib ? rib.purple * (ranks[i] === 1 ? 1 : 0.7 * inMain * inMain) : 0);
      if (blade.anthocyanin[i]! > PURPLE_FROM) blade.tags[i]! |= TAG.purple;
      const bulge = Math.min(1, blade.main[i]! / 0.045) ** 0.8;
      const net = Math.min(1, blade.fine[i]! / 0.014);
      blade.relief[i] =
        quilt * bulge +
        netQuilt * net +
        0.35 * quilt * patch +
        groove * inMain +
        (bump / scale) * look.grain * fleck;
    }
  }
}
