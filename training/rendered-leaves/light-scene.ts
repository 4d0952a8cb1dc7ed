import type { Blade } from './blade.ts';
import type { Dice } from './dice.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';
import { mixPigments } from './pigments.ts';

type Triple = readonly [number, number, number];

/** Where the light comes from; directions point to it, z towards the eye. */
export interface Light {
  readonly sun: Triple;
  readonly sunColour: Triple;
  readonly sky: Triple;
  /** Brightest part of the sky, how narrow it is, and how strongly leaves mirror it. */
  readonly bright: Triple;
  readonly narrow: number;
  readonly mirror: number;
  readonly shadow: 'none' | 'edge' | 'dapple';
  readonly shadowAt: readonly [number, number, number];
  readonly shadowSoft: number;
}

const unit = (x: number, y: number, z: number): Triple => {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
};

export function drawLight(dice: Dice): Light {
  const sunny = dice.chance(0.55);
  const from = dice.between(0, 2 * Math.PI);
  const height = dice.between(0.35, 2.2);
  const sun = sunny ? dice.between(0.7, 1.3) : dice.between(0.05, 0.45);
  const warm = dice.between(-0.02, 0.16);
  const sky = sunny ? dice.between(0.12, 0.4) : dice.between(0.6, 1);
  const cool = dice.between(0, sunny ? 0.3 : 0.12);
  const other = dice.between(0, 2 * Math.PI);
  return {
    sun: unit(Math.cos(from), Math.sin(from), dice.chance(0.05) ? -0.5 : height),
    sunColour: [sun * (1 + warm), sun, sun * (1 - 1.6 * warm)],
    sky: [sky * (1 - 0.6 * cool), sky, sky * (1 + cool)],
    bright: unit(Math.cos(other), Math.sin(other), dice.between(0.2, 2.5)),
    narrow: dice.logBetween(2, 14),
    mirror: dice.chance(0.7) ? dice.logBetween(0.03, 0.3) : dice.between(0.25, 0.6),
    shadow: sunny && dice.chance(0.4) ? dice.pick(['edge', 'dapple'] as const) : 'none',
    shadowAt: [dice.between(0, 2 * Math.PI), dice.between(-0.3, 0.35), dice.between(0, 60)],
    shadowSoft: dice.logBetween(0.004, 0.06),
  };
}

/** How much sun reaches a place of the picture, 0–1; x and y as shares of the longer side, from the middle. */
export function sunAt(light: Light, x: number, y: number): number {
  if (light.shadow === 'none') return 1;
  const [angle, shift, at] = light.shadowAt;
  const along = x * Math.cos(angle) + y * Math.sin(angle) - shift;
  if (light.shadow === 'edge') {
    const wave = 0.16 * (noiseAt(0, 4 * (y * Math.cos(angle) - x * Math.sin(angle)) + at, at) - 0.5);
    return 1 - smoothStep(-light.shadowSoft, light.shadowSoft, along + wave);
  }
  return smoothStep(
    -2 * light.shadowSoft,
    2 * light.shadowSoft,
    cloudAt(1, 3.5 * x + at, 3.5 * y + at, 2) - 0.47,
  );
}

const WAX: Triple = [0.3, 0.36, 0.36];
/** Paler and duller than the upper side; and what comes through a leaf, as a share of what comes back. */
const UNDERSIDE: Triple = [0.05, 0.065, 0.04];
const THROUGH: Triple = [1, 1.4, 0.4];

/** Colour, slope and shine of each texel, side by side: r, g, b, slope along, slope across, gloss. */
export const SKIN_STRIDE = 6;

export function makeSkin(blade: Blade, gloss: number): Float32Array {
  const { width, height, scale, look } = blade;
  const skin = new Float32Array(width * height * SKIN_STRIDE);
  const colour = new Float32Array(3);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      // One texel beyond the outline too, because colours are read between texels.
      const from = blade.inside[i] === 1 ? i : nearestInside(blade, x, y);
      if (from < 0) continue;
      const at = i * SKIN_STRIDE;
      mixPigments(
        colour,
        0,
        blade.chlorophyll[from]!,
        blade.carotenoid[from]!,
        blade.anthocyanin[from]!,
        blade.brown[from]!,
      );
      const cover = blade.cover[from]!;
      for (let c = 0; c < 3; c++) {
        const waxed = colour[c]! * (1 - look.wax) + look.wax * WAX[c]!;
        skin[at + c] = waxed * (1 - cover) + cover * blade.coverColour[c]!;
      }
      if (blade.inside[i] === 1) {
        const left = x > 0 && blade.inside[i - 1] === 1 ? i - 1 : i;
        const right = x < width - 1 && blade.inside[i + 1] === 1 ? i + 1 : i;
        const up = y > 0 && blade.inside[i - width] === 1 ? i - width : i;
        const down = y < height - 1 && blade.inside[i + width] === 1 ? i + width : i;
        if (right > left)
          skin[at + 3] = ((blade.relief[right]! - blade.relief[left]!) * scale) / (right - left);
        if (down > up)
          skin[at + 4] = ((blade.relief[down]! - blade.relief[up]!) * scale * width) / (down - up);
      }
      skin[at + 5] = gloss * blade.gloss[from]!;
    }
  }
  return skin;
}

function nearestInside(blade: Blade, x: number, y: number): number {
  const { inside, width, height } = blade;
  const i = y * width + x;
  if (x > 0 && inside[i - 1] === 1) return i - 1;
  if (x < width - 1 && inside[i + 1] === 1) return i + 1;
  if (y > 0 && inside[i - width] === 1) return i - width;
  return y < height - 1 && inside[i + width] === 1 ? i + width : -1;
}

/** Reads the skin between texels into `out`. */
export function readSkin(
  skin: Float32Array,
  width: number,
  height: number,
  x: number,
  y: number,
  out: Float32Array,
): void {
  const ix = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const iy = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const fx = Math.min(1, Math.max(0, x - ix));
  const fy = Math.min(1, Math.max(0, y - iy));
  const a = (iy * width + ix) * SKIN_STRIDE;
  const b = a + SKIN_STRIDE;
  const c = a + width * SKIN_STRIDE;
  const d = c + SKIN_STRIDE;
  const wa = (1 - fx) * (1 - fy);
  const wb = fx * (1 - fy);
  const wc = (1 - fx) * fy;
  const wd = fx * fy;
  for (let k = 0; k < SKIN_STRIDE; k++)
    out[k] = wa * skin[a + k]! + wb * skin[b + k]! + wc * skin[c + k]! + wd * skin[d + k]!;
}

/**
 * Light that a place of the leaf sends to the eye, added to `out[at … at + 2]`: sun and sky scattered by the tissue, sun that
 * shines through, what its skin mirrors of sun and sky.
 */
export function shade(
  light: Light,
  skin: Float32Array,
  nx: number,
  ny: number,
  heading: number,
  under: boolean,
  sunShare: number,
  out: Float32Array,
  at: number,
): void {
  const cos = Math.cos(heading);
  const sin = Math.sin(heading);
  const turn = under ? -1 : 1;
  const along = turn * skin[3]!;
  const across = turn * skin[4]!;
  const nz = Math.sqrt(Math.max(0.02, 1 - nx * nx - ny * ny));
  let x = nx - (along * cos - across * sin);
  let y = ny - (along * sin + across * cos);
  let z = nz;
  const length = Math.sqrt(x * x + y * y + z * z);
  x /= length;
  y /= length;
  z /= length;
  const facing = x * light.sun[0] + y * light.sun[1] + z * light.sun[2];
  const lit = Math.max(0, facing) * sunShare;
  const through = Math.max(0, -facing) * sunShare;
  const half = 0.5 + 0.5 * z;
  const open = half * Math.sqrt(half);
  // Mirrored view: towards where the skin throws the line of sight.
  const rx = 2 * z * x;
  const ry = 2 * z * y;
  const rz = 2 * z * z - 1;
  const gloss = under ? 0.25 * skin[5]! : skin[5]!;
  const towardsSky = Math.max(
    0,
    0.5 + 0.5 * (rx * light.bright[0] + ry * light.bright[1] + rz * light.bright[2]),
  );
  const grazing = 0.35 + 2 * (1 - z) ** 2;
  const mirrored = light.mirror * gloss * Math.exp(light.narrow * Math.log(towardsSky + 1e-6)) * grazing;
  const towardsSun = Math.max(0, rx * light.sun[0] + ry * light.sun[1] + rz * light.sun[2]);
  const square = towardsSun * towardsSun;
  const shine = square * square * square * square;
  const glint = Math.min(1.6, 0.35 * gloss * shine * shine * shine * sunShare);
  for (let c = 0; c < 3; c++) {
    let own = skin[c]!;
    if (under) own = 0.72 * own + UNDERSIDE[c]!;
    const scattered = own * (light.sunColour[c]! * lit + light.sky[c]! * open);
    const shone = through > 0 ? 0.5 * own * THROUGH[c]! * light.sunColour[c]! * through : 0;
    out[at + c]! += scattered + shone + mirrored * light.sky[c]! * 1.4 + glint * light.sunColour[c]! * 0.6;
  }
}
