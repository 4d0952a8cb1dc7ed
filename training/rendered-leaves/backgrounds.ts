import { blurChannels } from './camera.ts';
import type { Dice } from './dice.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';
import { colourOfPigments } from './pigments.ts';

export const GROUNDS = ['soil', 'straw', 'paper', 'foliage', 'cloth', 'dark'] as const;
export type Ground = (typeof GROUNDS)[number];

type Rgb = readonly [number, number, number];

/** Linear reflectances of grounds as they lie about a bed. */
const SOILS: readonly Rgb[] = [
  [0.22, 0.08, 0.05],
  [0.3, 0.13, 0.08],
  [0.14, 0.09, 0.06],
  [0.08, 0.055, 0.04],
  [0.2, 0.16, 0.12],
  [0.34, 0.26, 0.18],
  [0.035, 0.028, 0.024],
];
const SKINS: readonly Rgb[] = [
  [0.58, 0.36, 0.27],
  [0.45, 0.25, 0.17],
  [0.25, 0.13, 0.08],
  [0.1, 0.055, 0.038],
  [0.68, 0.45, 0.36],
];

/** Light that comes back from the ground behind the leaf, at one sample a pixel. `unit` is the leaf's length in px. */
export function drawGround(
  ground: Ground,
  width: number,
  height: number,
  unit: number,
  dice: Dice,
): Float32Array {
  const rgb = new Float32Array(width * height * 3);
  switch (ground) {
    case 'soil':
      drawSoil(rgb, width, height, unit, dice);
      break;
    case 'straw':
      drawSoil(rgb, width, height, unit, dice);
      drawStraws(rgb, width, height, unit, Math.round(dice.between(90, 260)), dice);
      break;
    case 'paper':
      drawSheet(rgb, width, height, unit, [0.78, 0.77, 0.75], dice);
      break;
    case 'cloth':
      drawSheet(
        rgb,
        width,
        height,
        unit,
        dice.pick([
          [0.03, 0.04, 0.12],
          [0.25, 0.24, 0.22],
          [0.12, 0.12, 0.13],
          [0.4, 0.3, 0.2],
          [0.6, 0.55, 0.62],
        ]),
        dice,
      );
      break;
    case 'dark':
      drawSheet(rgb, width, height, unit, [0.012, 0.014, 0.01], dice);
      break;
    case 'foliage':
      drawFoliage(rgb, width, height, unit, dice);
      break;
  }
  if (ground === 'soil' && dice.chance(0.4)) drawStraws(rgb, width, height, unit, dice.whole(4, 40), dice);
  if (ground !== 'paper' && ground !== 'cloth') {
    const soft = dice.chance(0.5) ? dice.between(0, 0.012) : dice.between(0.012, 0.07);
    blurChannels(rgb, width, height, 3, soft * unit);
  }
  return rgb;
}

function drawSoil(rgb: Float32Array, width: number, height: number, unit: number, dice: Dice): void {
  const colour = dice.pick(SOILS);
  const clod = dice.between(5, 16) / unit;
  const rough = dice.between(0.5, 2.2);
  const at = dice.between(0, 60);
  const lx = dice.between(-1, 1);
  const ly = dice.between(-1, 1);
  const dry = dice.between(0, 0.5);
  const step = 1.5 * clod;
  for (let y = 0, k = 0; y < height; y++) {
    for (let x = 0; x < width; x++, k += 3) {
      const u = x * clod + at;
      const v = y * clod + at;
      const here = cloudAt(0, u, v, 4);
      const lit = 1 + rough * 5 * (cloudAt(0, u + step * lx, v + step * ly, 4) - here);
      const hollow = smoothStep(0.22, 0.5, here * 0.7 + 0.3 * cloudAt(2, 2.7 * u, 2.7 * v, 3));
      const speck = 1 + 0.7 * (noiseAt(1, x * 0.45, y * 0.45) - 0.5);
      const shade = Math.max(0.12, lit) * (0.5 + 0.55 * hollow) * speck;
      const pale = dry * noiseAt(2, u * 0.4, v * 0.4);
      for (let c = 0; c < 3; c++) rgb[k + c] = (colour[c]! * (1 - pale) + 0.35 * pale) * shade;
    }
  }
}

/** Stalks, twigs and dry blades lying about. */
function drawStraws(
  rgb: Float32Array,
  width: number,
  height: number,
  unit: number,
  count: number,
  dice: Dice,
): void {
  for (let n = 0; n < count; n++) {
    const x0 = dice.between(-0.1, 1.1) * width;
    const y0 = dice.between(-0.1, 1.1) * height;
    const heading = dice.between(0, Math.PI);
    const length = unit * dice.logBetween(0.1, 1);
    const half = Math.max(0.7, unit * dice.logBetween(0.004, 0.02));
    const colour: Rgb = dice.pick([
      [0.5, 0.38, 0.2],
      [0.62, 0.5, 0.3],
      [0.3, 0.22, 0.13],
      [0.16, 0.11, 0.07],
      [0.42, 0.4, 0.22],
    ]);
    const bend = dice.normal(0.5);
    const tone = dice.between(0.5, 1.15);
    strokeArc(width, height, x0, y0, heading, length, bend, half, (across, along, k) => {
      const shade = tone * (0.75 + 0.35 * across) * (0.85 + 0.3 * noiseAt(0, along * 9, n));
      for (let c = 0; c < 3; c++) rgb[k + c] = colour[c]! * shade;
    });
  }
}

/** Walks along an arc and paints a band; `across` runs from −1 to 1, `along` from 0 to 1. */
function strokeArc(
  width: number,
  height: number,
  x0: number,
  y0: number,
  heading: number,
  length: number,
  bend: number,
  half: number,
  paint: (across: number, along: number, k: number) => void,
): void {
  let x = x0;
  let y = y0;
  const steps = Math.max(1, Math.ceil(length));
  for (let s = 0; s < steps; s++) {
    const angle = heading + (bend * s) / steps;
    x += Math.cos(angle);
    y += Math.sin(angle);
    const reach = Math.ceil(half);
    for (let w = -reach; w <= reach; w += 0.7) {
      if (Math.abs(w) > half) continue;
      const px = Math.round(x - w * Math.sin(angle));
      const py = Math.round(y + w * Math.cos(angle));
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      paint(w / half, s / steps, (py * width + px) * 3);
    }
  }
}

function drawSheet(
  rgb: Float32Array,
  width: number,
  height: number,
  unit: number,
  colour: Rgb,
  dice: Dice,
): void {
  const tint: Rgb = [dice.between(0.88, 1.06), 1, dice.between(0.88, 1.08)];
  const slopeX = dice.normal(0.15);
  const slopeY = dice.normal(0.15);
  const weave = dice.chance(0.4) ? dice.between(0.02, 0.12) : 0;
  const pitch = dice.between(0.6, 2.4);
  const grain = dice.between(0.005, 0.05);
  const crease = dice.chance(0.35) ? dice.between(0.03, 0.2) : 0;
  const print = dice.chance(0.12);
  const turn = dice.between(0, 1.57);
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  for (let y = 0, k = 0; y < height; y++) {
    for (let x = 0; x < width; x++, k += 3) {
      const a = x * cos + y * sin;
      const b = y * cos - x * sin;
      let shade = 1 + slopeX * (x / width - 0.5) + slopeY * (y / height - 0.5);
      shade *=
        1 + weave * Math.sin(a * pitch) * Math.sin(b * pitch) + grain * (noiseAt(2, x * 0.7, y * 0.7) - 0.5);
      if (crease > 0) shade *= 1 + crease * (cloudAt(1, (a / unit) * 2, (b / unit) * 6, 2) - 0.5);
      const isPrint = print && b / unit > 0.9 && b / unit < 1.02 && noiseAt(3, (a / unit) * 22, 3) > 0.5;
      for (let c = 0; c < 3; c++)
        rgb[k + c] = (isPrint ? [0.05, 0.12, 0.35][c]! : colour[c]! * tint[c]!) * shade;
    }
  }
}

/** Leaves of other plants, back to front, the nearer ones lighter. */
function drawFoliage(rgb: Float32Array, width: number, height: number, unit: number, dice: Dice): void {
  const isDark = dice.chance(0.5);
  if (dice.chance(0.4)) drawSoil(rgb, width, height, unit, dice);
  else rgb.fill(isDark ? 0.008 : 0.03);
  const size = dice.logBetween(0.16, 0.9);
  const count = Math.min(
    160,
    Math.round(dice.between(3.5, 7) * ((width * height) / (unit * unit * size * size))),
  );
  const grown = dice.between(0.45, 1.4);
  const yellow = dice.chance(0.25) ? dice.between(0.05, 0.4) : 0.02;
  const grassy = dice.chance(0.15);
  for (let n = 0; n < count; n++) {
    const nearness = n / count;
    const length = unit * size * dice.between(0.6, 1.3);
    const slim = grassy ? dice.between(0.04, 0.1) : dice.between(0.35, 0.8);
    const cx = dice.between(-0.15, 1.15) * width;
    const cy = dice.between(-0.15, 1.15) * height;
    const turn = dice.between(0, 2 * Math.PI);
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    const isYellow = dice.chance(yellow);
    const colour = colourOfPigments({
      chlorophyll: isYellow ? dice.between(0.03, 0.2) : grown * dice.between(0.5, 1.5),
      carotenoid: dice.between(0.7, 1.2),
      anthocyanin: 0,
      brown: dice.chance(0.03) ? 0.6 : 0,
    });
    const light = (0.15 + 0.85 * nearness) * dice.logBetween(0.45, 1.5);
    const fold = dice.normal(0.35);
    const sheen = dice.chance(0.35) ? dice.between(0.02, 0.16) : 0.01;
    const at = dice.between(0, 60);
    const reach = length / 2 + 1;
    for (let y = Math.max(0, Math.floor(cy - reach)); y < Math.min(height, cy + reach); y++) {
      for (let x = Math.max(0, Math.floor(cx - reach)); x < Math.min(width, cx + reach); x++) {
        const a = ((x - cx) * cos + (y - cy) * sin) / length + 0.5;
        if (a <= 0 || a >= 1) continue;
        const b = ((y - cy) * cos - (x - cx) * sin) / length;
        const half = (slim / 2) * 2.1 * a ** 0.7 * (1 - a);
        if (Math.abs(b) > half) continue;
        const k = (y * width + x) * 3;
        const across = b / half;
        const rib = Math.abs(b) < 0.012 ? 0.35 : 0;
        const side = ((a - Math.abs(b) * 0.8) * 9) % 1;
        const shade =
          light *
          (1 +
            fold * Math.sign(across) * (1 - 0.4 * Math.abs(across)) +
            0.35 * (noiseAt(1, a * 5 + at, b * 5 + at) - 0.5)) *
          (1 + rib + (side < 0.14 ? 0.14 : 0));
        for (let c = 0; c < 3; c++)
          rgb[k + c] = Math.max(0, colour[c]! * shade + sheen * (0.5 + across * 0.5));
      }
    }
  }
}

/** Fingers from the rim towards a place near the leaf's base; behind the leaf, in front of the ground. */
export function drawHand(
  rgb: Float32Array,
  width: number,
  height: number,
  unit: number,
  toX: number,
  toY: number,
  dice: Dice,
): void {
  const skin = dice.pick(SKINS);
  const wide = unit * dice.between(0.09, 0.16);
  const from = Math.atan2(toY - height / 2, toX - width / 2) + dice.normal(0.3);
  const fingers = dice.whole(1, 4);
  const lx = dice.between(-1, 1);
  for (let n = fingers - 1; n >= 0; n--) {
    const offset = (n - (fingers - 1) / 2) * 1.9 * wide;
    const angle = from + dice.normal(0.12);
    const tipX = toX - offset * Math.sin(from) - Math.cos(from) * dice.between(0, 2.4) * wide;
    const tipY = toY + offset * Math.cos(from) - Math.sin(from) * dice.between(0, 2.4) * wide;
    const tone = dice.between(0.8, 1.1);
    const half = wide * dice.between(0.85, 1.1);
    const length = 2.2 * Math.max(width, height);
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const isNail = dice.chance(0.4);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const a = (x - tipX) * cos + (y - tipY) * sin;
        if (a < -half || a > length) continue;
        const b = (y - tipY) * cos - (x - tipX) * sin;
        const d = (a < 0 ? Math.hypot(a, b) : Math.abs(b)) / (half * (1 + 0.12 * Math.sin(a / half)));
        if (d > 1) continue;
        const k = (y * width + x) * 3;
        const round = Math.sqrt(1 - d * d);
        const crease =
          1 -
          0.25 * Math.max(0, Math.sin(a / (0.16 * half)) - 0.85) * (Math.sin(a / (1.7 * half)) > 0.6 ? 1 : 0);
        const shade =
          tone *
          (0.35 + 0.5 * round + 0.25 * lx * (b / half)) *
          crease *
          (0.94 + 0.12 * noiseAt(1, x * 0.3, y * 0.3));
        const nail = isNail && a < 0.9 * half && a > -0.6 * half && Math.abs(b) < 0.55 * half ? 0.16 : 0;
        for (let c = 0; c < 3; c++)
          rgb[k + c] = skin[c]! * shade + nail * round * (c === 1 ? 0.75 : c === 2 ? 0.7 : 1);
      }
    }
  }
}
