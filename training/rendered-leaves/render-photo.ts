import type { MeasureId } from '../../src/leaf/measures.ts';
import type { Mask } from '../../src/leaf/types.ts';
import type { Pixels, Spot } from '../../src/photo/types.ts';
import type { Ground } from './backgrounds.ts';
import { type Camera, drawCamera } from './camera.ts';
import { drawMarks, type RenderedMark } from './choose-marks.ts';
import { LEAF_KINDS, type LeafKind, planLeaf, takeLeaflet } from './crops.ts';
import { rollDice } from './dice.ts';
import { drawLight } from './light-scene.ts';
import { renderScene } from './render-scene.ts';

/** A photograph as a grower takes it: a leaf in a frame of any shape, held still. */
export interface LeafPhoto {
  readonly seed: number;
  /** Seed of the leaf itself and of how its marks look: the same in two photographs of one leaf. Default `seed`. */
  readonly plant?: number;
  /** Size of the picture, px. Default 1,024 × 768. */
  readonly width?: number;
  readonly height?: number;
  /** Default drawn from the seed. */
  readonly leaf?: LeafKind;
  /** One leaflet of a compound leaf instead of the whole. Default false. */
  readonly leaflet?: boolean;
  readonly marks?: readonly RenderedMark[];
  readonly ground?: Ground;
  readonly hand?: boolean;
  /** Other leaves of the plant behind it. Default 0. */
  readonly behind?: number;
  /** Longer side of the leaf's box over the frame. Default 0.75. */
  readonly fill?: number;
  /** Turn of the tip, clockwise from pointing right. Default drawn. */
  readonly turnDegrees?: number;
  /** Even light and a good camera. Default false: both are drawn. */
  readonly plain?: boolean;
}

export interface RenderedPhoto {
  readonly pixels: Pixels;
  /** Tissue that is there; and the leaf with what is missing of it. */
  readonly remaining: Mask;
  readonly whole: Mask;
  readonly measures: { readonly [Id in MeasureId]?: number };
  readonly leaf: LeafKind;
  readonly marks: readonly RenderedMark[];
  /** A place well within the leaf, as a person would tap it. */
  readonly tap: Spot;
}

const GOOD_CAMERA: Partial<Camera> = {
  exposure: 0.26,
  gains: [1, 1, 1],
  contrast: 0.15,
  saturation: 1,
  blur: 0.6,
  sharpen: 0.3,
  noise: 0.003,
  colourNoise: 0.001,
  vignette: 0,
  quality: 0,
  haze: 0,
};

export function renderPhoto(photo: LeafPhoto): RenderedPhoto {
  const plant = rollDice(photo.plant ?? photo.seed);
  const leaf = photo.leaf ?? plant.pick(LEAF_KINDS);
  const plan = photo.leaflet ? takeLeaflet(planLeaf(leaf, plant)) : planLeaf(leaf, plant);
  const marks = photo.marks ?? [];
  const { putOn, bend } = drawMarks(marks, plant);
  const dice = rollDice(photo.seed + 1_000_003);
  const width = photo.width ?? 1024;
  const height = photo.height ?? 768;
  const light = drawLight(dice);
  const camera = { ...drawCamera(dice, Math.min(width, height)), quality: 0 };
  const scene = renderScene({
    seed: photo.seed,
    width,
    height,
    plan,
    marks: putOn,
    bend,
    bendStrength: dice.logBetween(0.3, 0.8),
    tilt: dice.normal(0.15),
    lean: dice.normal(0.15),
    turn:
      photo.turnDegrees === undefined ? dice.between(0, 2 * Math.PI) : (photo.turnDegrees * Math.PI) / 180,
    ground: photo.ground ?? dice.pick(['soil', 'straw', 'paper', 'foliage']),
    hand: photo.hand ?? false,
    behind: photo.behind ?? 0,
    inFront: 0,
    neighboursShareMarks: true,
    light: photo.plain ? { ...light, sun: PLAIN_SUN, mirror: 0.4 * light.mirror, shadow: 'none' } : light,
    camera: photo.plain ? { ...camera, ...GOOD_CAMERA } : camera,
    fill: photo.fill ?? 0.75,
    shiftX: 0,
    shiftY: 0,
  });
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) {
    for (let c = 0; c < 3; c++) data[4 * i + c] = scene.rgb[3 * i + c]!;
  }
  return {
    pixels: { width, height, data },
    remaining: { width, height, data: scene.mask },
    whole: { width, height, data: scene.whole },
    measures: scene.measures,
    leaf,
    marks,
    tap: findTap(scene.mask, width, height),
  };
}

/** High from the left, so that relief shows and nothing is burnt. */
const PLAIN_SUN = [-0.45, -0.35, 0.82] as const;

/** The middle of the longest row of the leaf. */
function findTap(mask: Uint8Array, width: number, height: number): Spot {
  let best = 0;
  let spot: Spot = { x: 0.5, y: 0.5 };
  for (let y = 0; y < height; y += 4) {
    let run = 0;
    for (let x = 0; x < width; x++) {
      run = mask[y * width + x] === 255 ? run + 1 : 0;
      // Not along the stalk or a rib: the rows above and below belong too.
      const reach = Math.min(12, height - 1 - y, y);
      const middle = x - (run >> 1);
      if (
        run > best &&
        mask[(y - reach) * width + middle] === 255 &&
        mask[(y + reach) * width + middle] === 255
      ) {
        best = run;
        spot = { x: (middle + 0.5) / width, y: (y + 0.5) / height };
      }
    }
  }
  return spot;
}
