import { labelRegions } from '../../src/leaf/label-regions.ts';
import type { MeasureId } from '../../src/leaf/measures.ts';
import { convertLinearToLab } from '../../src/photo/convert-srgb-to-lab.ts';
import { measureHue } from '../../src/photo/measure-hue.ts';
import { drawGround, drawHand, type Ground } from './backgrounds.ts';
import { type Bend, drawBend } from './bend-blade.ts';
import { type Blade, growBlade, TAG } from './blade.ts';
import { blurChannels, type Camera, takePicture } from './camera.ts';
import type { LeafPlan } from './crops.ts';
import { type Dice, rollDice } from './dice.ts';
import { type Light, makeSkin, readSkin, SKIN_STRIDE, shade, sunAt } from './light-scene.ts';
import type { PutOn } from './mark-yellowing.ts';
import { colourOfPigments } from './pigments.ts';
import {
  look,
  makeSamples,
  type Pose,
  placeInPicture,
  rasterBlade,
  type Samples,
  type View,
} from './raster.ts';

/** What a picture is made of, all draws but those of details settled. */
export interface Scene {
  readonly seed: number;
  readonly width: number;
  readonly height: number;
  readonly plan: LeafPlan;
  /** Put on in this order, on every blade of the leaf. */
  readonly marks: readonly PutOn[];
  /** Bends every blade beyond its own small ones. */
  readonly bend: Partial<Bend>;
  readonly bendStrength: number;
  readonly tilt: number;
  readonly lean: number;
  readonly turn: number;
  readonly ground: Ground;
  readonly hand: boolean;
  /** Other leaves of the plant: behind, and reaching over the leaf. */
  readonly behind: number;
  readonly inFront: number;
  readonly neighboursShareMarks: boolean;
  readonly light: Light;
  readonly camera: Camera;
  /** Longer side of the leaf's box over the frame, and shift of its middle as shares of the frame. */
  readonly fill: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

export interface RenderedScene {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8ClampedArray;
  /** 255 = the leaf as it is to be seen; and with what is missing of it. */
  readonly mask: Uint8Array;
  readonly whole: Uint8Array;
  readonly measures: { readonly [Id in MeasureId]?: number };
}

interface Body {
  readonly blade: Blade;
  readonly bend: Bend;
  readonly pose: Pose;
  readonly isLeaf: boolean;
  readonly skin: Float32Array;
  /** Blade lost within (1) or from the rim (2), per texel; undefined where nothing is. */
  readonly loss: Uint8Array | undefined;
  /** How yellow, 0–1 a texel. */
  readonly yellow: Float32Array;
}

/** Samples a pixel and side: edges mix as a camera's do. */
const SAMPLES = 2;
/** Texels a sample. */
const FINENESS = 0.62;

export function renderScene(scene: Scene): RenderedScene {
  const dice = rollDice(scene.seed ^ 0x51ab7e);
  const { width, height, plan } = scene;
  const bends = plan.blades.map((): Bend => {
    const own = drawBend(dice, scene.bendStrength);
    return { ...own, ...scene.bend, phase: own.phase };
  });
  const poses = plan.blades.map(
    ({ x, y, heading, length }, k): Pose => ({
      x,
      y,
      heading,
      length,
      z: 0.012 * k * (plan.blades.length > 1 ? 1 : 0),
    }),
  );
  const view = frame(scene, bends, poses);
  const unitPx = view.scale;

  const bodies: Body[] = [];
  const grow = (
    shape: LeafPlan['blades'][number]['shape'],
    pose: Pose,
    bend: Bend,
    isLeaf: boolean,
    isMarked: boolean,
  ): void => {
    const fineness = isLeaf ? FINENESS : 0.36;
    const scale = Math.max(40, Math.min(1400, unitPx * pose.length * SAMPLES * fineness));
    const blade = growBlade(shape, plan.look, scale, Math.min(1, pose.length), dice);
    if (isMarked) for (const put of scene.marks) put(blade, dice);
    const gloss = dice.between(plan.look.gloss[0], plan.look.gloss[1]);
    bodies.push({
      blade,
      bend,
      pose,
      isLeaf,
      skin: makeSkin(blade, gloss),
      loss: findLosses(blade),
      yellow: isLeaf ? findYellow(blade) : new Float32Array(0),
    });
  };
  plan.blades.forEach(({ shape }, k) => {
    grow(shape, poses[k]!, bends[k]!, true, true);
  });
  for (let n = 0; n < scene.behind + scene.inFront; n++) {
    const isBehind = n < scene.behind;
    const { shape, length } = dice.pick(plan.blades);
    const around = dice.between(0, 2 * Math.PI);
    const out = isBehind ? dice.between(0.2, 0.75) : dice.between(0.55, 0.75);
    const heading = isBehind ? dice.between(0, 2 * Math.PI) : around + Math.PI + dice.normal(0.5);
    const size = Math.max(0.45, length) * dice.between(0.6, 1.15);
    grow(
      shape,
      {
        x: 0.5 + out * Math.cos(around) - 0.4 * size * Math.cos(heading) * (isBehind ? 1 : 0),
        y: out * Math.sin(around) - 0.4 * size * Math.sin(heading) * (isBehind ? 1 : 0),
        z: isBehind ? -0.55 - 0.08 * n : 0.5,
        heading: isBehind ? heading : around + dice.normal(0.3),
        length: size,
      },
      { ...drawBend(dice, scene.bendStrength), ...(scene.neighboursShareMarks ? scene.bend : {}) },
      false,
      scene.neighboursShareMarks,
    );
  }

  const samples = makeSamples(width * SAMPLES, height * SAMPLES);
  const sampleView: View = {
    ...view,
    scale: view.scale * SAMPLES,
    cx: view.cx * SAMPLES,
    cy: view.cy * SAMPLES,
  };
  bodies.forEach(({ blade, bend, pose }, k) => {
    rasterBlade(samples, blade, bend, pose, sampleView, k);
  });
  const rgb = drawBehind(scene, view, samples, dice);
  const { mask, whole } = lightLeaves(scene, view, samples, bodies, rgb);
  const measures = measureTruth(samples, bodies);
  return {
    width,
    height,
    rgb: takePicture({ width, height, rgb }, mask, scene.camera, dice),
    mask,
    whole,
    measures,
  };
}

/** Scale and place of the picture, so that the leaf's box fills what it should. */
function frame(scene: Scene, bends: readonly Bend[], poses: readonly Pose[]): View {
  const plain: View = {
    turn: scene.turn,
    tilt: scene.tilt,
    lean: scene.lean,
    away: 4,
    scale: 1,
    cx: 0,
    cy: 0,
  };
  let left = 1e9;
  let right = -1e9;
  let top = 1e9;
  let bottom = -1e9;
  scene.plan.blades.forEach(({ shape }, k) => {
    const halfWidth = Math.max(...shape.outline.map(({ v }) => Math.abs(v)));
    for (const { u, v } of shape.outline) {
      const [x, y] = placeInPicture(u, v, { halfWidth }, bends[k]!, poses[k]!, plain);
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  });
  const scale = scene.fill * Math.min(scene.width / (right - left), scene.height / (bottom - top));
  return {
    ...plain,
    scale,
    cx: scene.width * (0.5 + scene.shiftX) - (scale * (left + right)) / 2,
    cy: scene.height * (0.5 + scene.shiftY) - (scale * (top + bottom)) / 2,
  };
}

function findLosses(blade: Blade): Uint8Array | undefined {
  if (!blade.gone.includes(1)) return undefined;
  const { labels, count } = labelRegions(blade.gone, blade.width, blade.height, 1, 8);
  const isOpen = new Uint8Array(count + 1);
  const { width, height } = blade;
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    if (label === 0 || isOpen[label] === 1) continue;
    const x = i % width;
    const y = Math.floor(i / width);
    if (x === 0 || y === 0 || x === width - 1 || y === height - 1) isOpen[label] = 1;
    else if (
      blade.inside[i - 1] === 0 ||
      blade.inside[i + 1] === 0 ||
      blade.inside[i - width] === 0 ||
      blade.inside[i + width] === 0
    ) {
      isOpen[label] = 1;
    }
  }
  const losses = new Uint8Array(labels.length);
  for (let i = 0; i < labels.length; i++) if (labels[i]! > 0) losses[i] = 1 + isOpen[labels[i]!]!;
  return losses;
}

/** As `chlorotic-fraction` counts: by how far the hue of the tissue itself lies below 120, wholly at 108. */
function findYellow(blade: Blade): Float32Array {
  const yellow = new Float32Array(blade.inside.length);
  for (let i = 0; i < yellow.length; i++) {
    if (blade.inside[i] === 0 || (blade.tags[i]! & (TAG.dead | TAG.purple | TAG.white)) !== 0) continue;
    const [r, g, b] = colourOfPigments({
      chlorophyll: blade.chlorophyll[i]!,
      carotenoid: blade.carotenoid[i]!,
      anthocyanin: blade.anthocyanin[i]!,
      brown: blade.brown[i]!,
    });
    const [, labA, labB] = convertLinearToLab(r, g, b);
    yellow[i] = Math.min(1, Math.max(0, (120 - measureHue(labA, labB)) / 12));
  }
  return yellow;
}

/** Ground, hand, stalks, and the leaf's own shadow on them. */
function drawBehind(scene: Scene, view: View, samples: Samples, dice: Dice): Float32Array {
  const { width, height, light, plan } = scene;
  const rgb = drawGround(scene.ground, width, height, view.scale, dice);
  if (scene.hand) {
    const [x, y] = look([dice.between(-0.05, 0.3), dice.normal(0.08), 0], view);
    drawHand(rgb, width, height, view.scale, x, y, dice);
  }
  drawStalks(rgb, plan, view, width, height, dice);
  const depth = scene.ground === 'paper' ? dice.between(0.003, 0.025) : dice.between(0.02, 0.35);
  const shadow = new Float32Array(width * height);
  const dx = Math.round((-light.sun[0] * depth * view.scale) / Math.max(0.4, light.sun[2]));
  const dy = Math.round((-light.sun[1] * depth * view.scale) / Math.max(0.4, light.sun[2]));
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const fx = x - dx;
      const fy = y - dy;
      if (fx < 0 || fy < 0 || fx >= width || fy >= height) continue;
      shadow[y * width + x] = samples.body[fy * SAMPLES * samples.width + fx * SAMPLES]! > 0 ? 1 : 0;
    }
  }
  blurChannels(shadow, width, height, 1, 0.6 + 0.2 * depth * view.scale);
  const side = Math.max(width, height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const sun = (1 - 0.95 * shadow[i]!) * sunAt(light, (x - width / 2) / side, (y - height / 2) / side);
      const facing = Math.max(0.15, light.sun[2]);
      for (let c = 0; c < 3; c++) {
        rgb[3 * i + c]! *= light.sunColour[c]! * facing * sun + light.sky[c]! * (1 - 0.45 * shadow[i]!);
      }
    }
  }
  return rgb;
}

function drawStalks(
  rgb: Float32Array,
  plan: LeafPlan,
  view: View,
  width: number,
  height: number,
  dice: Dice,
): void {
  const tone = colourOfPigments({
    chlorophyll: dice.between(0.15, 0.5),
    carotenoid: 0.7,
    anthocyanin: plan.look.ribs?.purple ?? (dice.chance(0.2) ? 0.6 : 0),
    brown: 0,
  });
  for (const { points, width: thick } of plan.stalks) {
    const half = Math.max(0.8, (thick * view.scale) / 2);
    for (let k = 1; k < points.length; k++) {
      const [x0, y0] = look([points[k - 1]![0], points[k - 1]![1], -0.01], view);
      const [x1, y1] = look([points[k]![0], points[k]![1], -0.01], view);
      const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0)));
      const nx = -(y1 - y0) / steps;
      const ny = (x1 - x0) / steps;
      for (let s = 0; s <= steps; s++) {
        for (let w = -half; w <= half; w += 0.6) {
          const x = Math.round(x0 + ((x1 - x0) * s) / steps + w * nx);
          const y = Math.round(y0 + ((y1 - y0) * s) / steps + w * ny);
          if (x < 0 || y < 0 || x >= width || y >= height) continue;
          const round = 0.55 + 0.5 * Math.sqrt(Math.max(0, 1 - (w / half) ** 2));
          for (let c = 0; c < 3; c++) rgb[(y * width + x) * 3 + c] = tone[c]! * round;
        }
      }
    }
  }
}

/** Lights every sample that shows a leaf and puts their mean over what lies behind. */
function lightLeaves(
  scene: Scene,
  view: View,
  samples: Samples,
  bodies: readonly Body[],
  rgb: Float32Array,
): { mask: Uint8Array; whole: Uint8Array } {
  const { width, height, light } = scene;
  const mask = new Uint8Array(width * height);
  const whole = new Uint8Array(width * height);
  const read = new Float32Array(SKIN_STRIDE);
  const sum = new Float32Array(3);
  const side = Math.max(width, height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const first = 2 * y * samples.width + 2 * x;
      let covered = 0;
      let leaf = 0;
      let lost = 0;
      let alike = true;
      for (let s = 0; s < 4; s++) {
        const k = first + (s >> 1) * samples.width + (s & 1);
        const which = samples.body[k]!;
        const missing = samples.missing[k]!;
        const isLeaf = which > 0 && bodies[which - 1]!.isLeaf;
        if (which > 0) covered++;
        if (isLeaf) leaf++;
        else if (missing > 0 && bodies[missing - 1]!.isLeaf) lost++;
        if (which !== samples.body[first] || samples.under[k] !== samples.under[first]) alike = false;
      }
      if (covered > 0) {
        sum.fill(0);
        const sun = sunAt(light, (x - width / 2) / side, (y - height / 2) / side);
        // One surface all over the pixel is read once, in its middle; where surfaces meet, each sample counts.
        for (let s = 0; s < (alike ? 1 : 4); s++) {
          const k = first + (s >> 1) * samples.width + (s & 1);
          const which = samples.body[k]!;
          if (which === 0) continue;
          const { blade, skin, pose } = bodies[which - 1]!;
          const across = k + 1;
          const down = k + samples.width;
          const tx = alike ? (samples.x[across]! + samples.x[down]!) / 2 : samples.x[k]!;
          const ty = alike ? (samples.y[across]! + samples.y[down]!) / 2 : samples.y[k]!;
          readSkin(skin, blade.width, blade.height, tx, ty, read);
          const heading = pose.heading + view.turn;
          shade(light, read, samples.nx[k]!, samples.ny[k]!, heading, samples.under[k] === 1, sun, sum, 0);
        }
        const each = alike ? 1 : 0.25;
        const open = 1 - covered / 4;
        for (let c = 0; c < 3; c++) rgb[3 * i + c] = sum[c]! * each + rgb[3 * i + c]! * open;
      }
      if (leaf >= 2) mask[i] = 255;
      if (leaf + lost >= 2) whole[i] = 255;
    }
  }
  return { mask, whole };
}

/** Smaller pieces are not counted: as a share of the leaf (`count-holes.ts`). */
const LEAST_HOLE = 0.0002;
const LEAST_SPOT = 0.00004;

function measureTruth(samples: Samples, bodies: readonly Body[]): RenderedScene['measures'] {
  let remaining = 0;
  let hole = 0;
  let edge = 0;
  let yellow = 0;
  const tagged = { dead: 0, purple: 0, white: 0, spot: 0 };
  for (let k = 0; k < samples.body.length; k++) {
    const which = samples.body[k]!;
    const missing = samples.missing[k]!;
    if (which > 0 && bodies[which - 1]!.isLeaf) {
      const { blade, yellow: yellows } = bodies[which - 1]!;
      const texel = Math.round(samples.y[k]!) * blade.width + Math.round(samples.x[k]!);
      const tags = blade.tags[texel]!;
      remaining++;
      yellow += yellows[texel]!;
      if (tags & TAG.dead) tagged.dead++;
      else if (tags & TAG.white) tagged.white++;
      else if (tags & TAG.purple) tagged.purple++;
      if (tags & TAG.spot) tagged.spot++;
    } else if (which === 0 && missing > 0 && bodies[missing - 1]!.isLeaf) {
      const { blade, loss } = bodies[missing - 1]!;
      const texel = Math.round(samples.y[k]!) * blade.width + Math.round(samples.x[k]!);
      if (loss?.[texel] === 1) hole++;
      else edge++;
    }
  }
  const whole = Math.max(1, remaining + hole + edge);
  const per = (part: number): number => part / Math.max(1, remaining);
  return {
    'chlorotic-fraction': per(yellow),
    'necrotic-fraction': per(tagged.dead),
    'purple-fraction': per(tagged.purple),
    'white-fraction': per(tagged.white),
    'spot-fraction': per(tagged.spot),
    'lost-fraction': (hole + edge) / whole,
    'hole-fraction': hole / whole,
    'edge-loss-fraction': edge / whole,
    'hole-count': countPieces(bodies, LEAST_HOLE, ({ loss }) => loss, 1),
    'spot-count': countPieces(bodies, LEAST_SPOT, findSpots, 1),
    'frame-share': remaining / samples.body.length,
  };
}

function findSpots({ blade: { tags } }: Body): Uint8Array {
  const spots = new Uint8Array(tags.length);
  for (let i = 0; i < tags.length; i++) if ((tags[i]! & TAG.spot) !== 0) spots[i] = 1;
  return spots;
}

function countPieces(
  bodies: readonly Body[],
  least: number,
  mapOf: (body: Body) => Uint8Array | undefined,
  wanted: number,
): number {
  let area = 0;
  for (const { blade, isLeaf, pose } of bodies) {
    if (!isLeaf) continue;
    let texels = 0;
    for (let i = 0; i < blade.inside.length; i++) texels += blade.inside[i]!;
    area += (texels * pose.length ** 2) / blade.scale ** 2;
  }
  let count = 0;
  for (const body of bodies) {
    const map = body.isLeaf ? mapOf(body) : undefined;
    if (!map?.includes(1)) continue;
    const { sizes } = labelRegions(map, body.blade.width, body.blade.height, wanted, 8);
    const texels = (least * area * body.blade.scale ** 2) / body.pose.length ** 2;
    for (let k = 1; k < sizes.length; k++) if (sizes[k]! >= texels) count++;
  }
  return count;
}
