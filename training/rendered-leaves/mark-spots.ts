import { type Blade, TAG } from './blade.ts';
import type { Dice } from './dice.ts';
import { bleach, eachTexel, type PutOn } from './mark-yellowing.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';

interface SpotStyle {
  /** On a single blade; leaflets get their share by area. */
  readonly count: number;
  /** Radius in lengths: median, and spread of its logarithm. */
  readonly radius: number;
  readonly spread: number;
  readonly outline: 'round' | 'ragged' | 'angular';
  /** Brown at the centre and towards the rim; red adds anthocyanin. */
  readonly centre: number;
  readonly rim: number;
  readonly rimWidth: number;
  readonly red: number;
  readonly rings: number;
  /** Width of the halo over the radius, and how yellow. 0 = none. */
  readonly halo: number;
  readonly haloYellow: number;
  /** A thin dark or pale line where dead and living tissue meet. */
  readonly raised: number;
  /** Carotenoid within: rust is orange. */
  readonly orange: number;
  readonly cluster: number;
}

/** Dies: chlorophyll gone, brown in its place. */
export function kill(blade: Blade, i: number, share: number, brown: number, red: number): void {
  blade.chlorophyll[i]! *= 1 - 0.985 * share;
  blade.carotenoid[i]! *= 1 - 0.9 * share;
  blade.anthocyanin[i]! = blade.anthocyanin[i]! * (1 - share) + red * share;
  blade.brown[i]! = blade.brown[i]! * (1 - share) + brown * share;
  blade.gloss[i]! *= 1 - 0.8 * share;
  if (share > 0.5) {
    blade.tags[i]! |= TAG.dead;
    blade.tags[i]! &= ~TAG.purple;
  }
}

/** Where fields between veins have their middles, and how large they are (texels). */
function findFields(blade: Blade): { x: Float32Array; y: Float32Array; size: Int32Array } {
  const x = new Float32Array(blade.fields + 1);
  const y = new Float32Array(blade.fields + 1);
  const size = new Int32Array(blade.fields + 1);
  for (let i = 0; i < blade.field.length; i++) {
    const field = blade.field[i]!;
    if (field === 0) continue;
    x[field]! += i % blade.width;
    y[field]! += Math.floor(i / blade.width);
    size[field]!++;
  }
  for (let k = 1; k <= blade.fields; k++) {
    x[k]! /= size[k]!;
    y[k]! /= size[k]!;
  }
  return { x, y, size };
}

function putSpots(style: SpotStyle): PutOn {
  return (blade, dice) => {
    const { width, height, scale } = blade;
    const fields = style.outline === 'angular' ? findFields(blade) : undefined;
    const area = blade.halfWidth / 0.3;
    const grown = Math.sqrt(blade.size);
    const count = Math.max(1, Math.round(style.count * Math.min(1.3, area) * grown * dice.between(0.6, 1.3)));
    const radius = style.radius / grown;
    const hubs = Array.from({ length: 3 }, () => [dice.next(), dice.next()] as const);
    for (let n = 0; n < count; n++) {
      let x = 0;
      let y = 0;
      let tries = 0;
      do {
        x = dice.next() * width;
        y = dice.next() * height;
        if (dice.chance(style.cluster)) {
          const hub = dice.pick(hubs);
          x = (hub[0] + dice.normal(0.12)) * width;
          y = (hub[1] + dice.normal(0.12)) * height;
        }
        tries++;
      } while (
        tries < 40 &&
        (x < 0 ||
          y < 0 ||
          x >= width ||
          y >= height ||
          blade.inside[Math.floor(y) * width + Math.floor(x)] === 0)
      );
      if (tries === 40) continue;
      const r = Math.max(0.9, Math.min(0.16, radius * Math.exp(dice.normal(style.spread))) * scale);
      const reach = r * (1.5 + style.halo * 1.5) + 2;
      const turn = dice.between(0, 50);
      const squash = dice.between(0.75, 1.15);
      const lean = dice.between(0, Math.PI);
      const cos = Math.cos(lean);
      const sin = Math.sin(lean);
      const soft = Math.min(0.45, 0.7 / r + 0.05);
      const home = blade.field[Math.floor(y) * width + Math.floor(x)]!;
      const tone = dice.between(0.75, 1.3);
      const top = Math.max(0, Math.floor(y - reach));
      const bottom = Math.min(height - 1, Math.ceil(y + reach));
      const left = Math.max(0, Math.floor(x - reach));
      const right = Math.min(width - 1, Math.ceil(x + reach));
      for (let py = top; py <= bottom; py++) {
        for (let px = left; px <= right; px++) {
          const i = py * width + px;
          if (blade.inside[i] === 0) continue;
          const dx = (px - x) * cos + (py - y) * sin;
          const dy = ((py - y) * cos - (px - x) * sin) / squash;
          let d = Math.sqrt(dx * dx + dy * dy) / r;
          if (d > reach / r) continue;
          const plain = d;
          if (style.outline === 'ragged') {
            d *= 1 + 0.9 * (cloudAt(1, (px - x) / r + turn, (py - y) / r + turn, 2) - 0.5);
          } else if (style.outline === 'round') {
            d *= 1 + 0.3 * (noiseAt(2, (px - x) / r + turn, (py - y) / r + turn) - 0.5);
          } else if (fields) {
            const field = blade.field[i]!;
            d += 0.7 * (blade.islet[i]! - 0.5);
            if (field > 0 && field !== home) {
              // A small field goes as a whole, a large neighbour stays on its side of the vein.
              const small = fields.size[field]! < 1.6 * r * r;
              const away = Math.sqrt((fields.x[field]! - x) ** 2 + (fields.y[field]! - y) ** 2) / r;
              d = small ? away + 0.15 : d + 0.45;
            } else if (field === home && d < 1.35) d *= 0.8;
          }
          if (style.halo > 0 && d > 0.8) {
            const fade = 1 - smoothStep(1, 1 + style.halo * 1.4, Math.min(d, plain + 0.2));
            bleach(blade, i, style.haloYellow * fade, 0.12, 0.9);
          }
          const share = 1 - smoothStep(1 - soft, 1 + soft, d);
          if (share <= 0) continue;
          const toRim = smoothStep(1 - style.rimWidth - 0.2, 1 - 0.4 * style.rimWidth, d);
          let brown = style.centre + (style.rim - style.centre) * toRim;
          if (style.rings > 0) brown *= 1 + 0.75 * Math.sin(2 * Math.PI * style.rings * d);
          brown *= tone * (0.8 + 0.4 * noiseAt(3, px * 0.35, py * 0.35));
          kill(blade, i, share, Math.max(0.015, brown), style.red * (0.4 + 0.6 * toRim));
          if (style.orange > 0) blade.carotenoid[i]! += style.orange * share;
          if (share > 0.5) blade.tags[i]! |= TAG.spot;
          blade.relief[i]! += (style.raised * r * share * (style.raised > 0 ? 1 - 0.5 * d : 1)) / scale;
        }
      }
    }
  };
}

const PLAIN_SPOT: SpotStyle = {
  count: 20,
  radius: 0.012,
  spread: 0.45,
  outline: 'round',
  centre: 1,
  rim: 1.6,
  rimWidth: 0.3,
  red: 0.08,
  rings: 0,
  halo: 0,
  haloYellow: 0,
  raised: -0.05,
  orange: 0,
  cluster: 0.25,
};

export function drawBrownSpots(dice: Dice): PutOn {
  const kind = dice.pick(['dark', 'dark', 'frogeye', 'tan', 'angular'] as const);
  if (kind === 'angular') return drawAngularSpots(dice);
  const few = dice.chance(0.4);
  const style: SpotStyle = {
    ...PLAIN_SPOT,
    count: few ? dice.logBetween(3, 15) : dice.logBetween(15, 160),
    radius: few ? dice.between(0.013, 0.032) : dice.between(0.0065, 0.014),
    spread: dice.between(0.2, 0.65),
    outline: dice.pick(['round', 'round', 'ragged']),
    red: dice.chance(0.4) ? dice.between(0, 0.6) : 0,
    rimWidth: dice.between(0.15, 0.5),
    // A trace of halo is common; the rest of them is another mark.
    halo: dice.between(0, 0.25),
    haloYellow: dice.between(0, 0.4),
  };
  if (kind === 'frogeye')
    return putSpots({ ...style, centre: dice.between(0.02, 0.1), rim: dice.between(0.8, 2.5) });
  if (kind === 'tan')
    return putSpots({ ...style, centre: dice.between(0.08, 0.25), rim: dice.between(0.2, 0.8) });
  return putSpots({ ...style, centre: dice.between(0.8, 2.6), rim: dice.between(1, 4) });
}

/** One to three specks such as nearly every leaf has: nothing wrong. */
export function drawBlemish(dice: Dice): PutOn {
  return putSpots({
    ...PLAIN_SPOT,
    count: dice.between(1, 3),
    radius: dice.between(0.003, 0.006),
    centre: dice.logBetween(0.1, 2),
    rim: dice.logBetween(0.3, 2),
  });
}

export function drawAngularSpots(dice: Dice): PutOn {
  return putSpots({
    ...PLAIN_SPOT,
    count: dice.logBetween(6, 60),
    radius: dice.between(0.012, 0.034),
    spread: 0.4,
    outline: 'angular',
    centre: dice.between(0.25, 1.2),
    rim: dice.between(0.7, 2.2),
    rimWidth: dice.between(0.2, 0.6),
    red: dice.between(0, 0.3),
    halo: dice.between(0, 0.5),
    haloYellow: dice.between(0, 0.6),
  });
}

export function drawHaloedSpots(dice: Dice): PutOn {
  const small = dice.chance(0.6);
  return putSpots({
    ...PLAIN_SPOT,
    count: small ? dice.logBetween(8, 70) : dice.logBetween(3, 20),
    radius: small ? dice.between(0.005, 0.014) : dice.between(0.013, 0.03),
    spread: dice.between(0.2, 0.5),
    outline: dice.pick(['round', 'ragged', 'angular']),
    centre: dice.chance(0.3) ? dice.between(0.04, 0.15) : dice.between(0.5, 2),
    rim: dice.between(0.8, 2.5),
    red: dice.between(0, 0.3),
    halo: dice.between(0.7, 1.8),
    haloYellow: dice.between(0.75, 1),
  });
}

export function drawRingedSpots(dice: Dice): PutOn {
  return putSpots({
    ...PLAIN_SPOT,
    count: dice.logBetween(2, 12),
    radius: dice.between(0.028, 0.065),
    spread: 0.3,
    outline: dice.pick(['round', 'ragged']),
    centre: dice.between(0.35, 1.1),
    rim: dice.between(0.8, 1.8),
    rings: dice.between(2.4, 4.2),
    halo: dice.between(0, 0.7),
    haloYellow: dice.between(0.3, 0.9),
  });
}

export function drawRust(dice: Dice): PutOn {
  const dense = dice.chance(0.45);
  const colour = dice.pick(['orange', 'brown', 'brown', 'black'] as const);
  const brown = {
    orange: dice.between(0.12, 0.4),
    brown: dice.between(0.35, 1.3),
    black: dice.between(1.5, 3),
  }[colour];
  return putSpots({
    ...PLAIN_SPOT,
    count: dense ? dice.logBetween(70, 300) : dice.logBetween(10, 60),
    radius: dense ? dice.between(0.0035, 0.006) : dice.between(0.0055, 0.0105),
    spread: dice.between(0.15, 0.3),
    centre: brown,
    rim: brown * (dice.chance(0.4) ? 0.3 : 1),
    rimWidth: 0.45,
    red: colour === 'orange' ? dice.between(0.3, 0.8) : dice.between(0, 0.5),
    halo: dice.between(0.6, 1.8),
    haloYellow: dice.between(0.5, 1),
    raised: dice.between(0.15, 0.5),
    orange: colour === 'orange' ? dice.between(0.4, 1) : 0.1,
    cluster: 0.35,
  });
}

/** Tissue dead in one piece where `value` exceeds a bound. */
function killWhere(
  value: (blade: Blade, i: number, u: number, v: number) => number,
  brown: number,
  red: number,
  { soft, rim, fringe }: { readonly soft: number; readonly rim: number; readonly fringe: number },
): PutOn {
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const one = value(blade, i, u, v);
      if (fringe > 0) bleach(blade, i, smoothStep(-fringe, 0, one), 0.12, 0.9);
      const share = smoothStep(-soft, soft, one);
      if (share <= 0) return;
      const texture = cloudAt(3, 30 * u + blade.noiseU, 30 * v + blade.noiseV, 2);
      const nearRim = 1 - smoothStep(0, 0.06, one);
      kill(blade, i, share, brown * (0.45 + 1.1 * texture) * (1 + rim * nearRim), red);
      blade.relief[i]! += 0.004 * share * (texture - 0.5);
    });
}

export function drawBrownEdges(dice: Dice): PutOn {
  const reach = dice.between(0.03, 0.2);
  const fromTip = dice.between(0, 0.35);
  const wave = dice.between(0.3, 1.1);
  return killWhere(
    (blade, i, u, v) => {
      const cloud = cloudAt(2, 4 * u + blade.noiseU, 4 * v + blade.noiseV, 3) - 0.5;
      return reach * (1 + fromTip * 4 * (u - 0.6)) - blade.edge[i]! / blade.halfWidth + wave * cloud;
    },
    dice.logBetween(0.12, 1.6),
    dice.between(0, 0.15),
    { soft: 0.02, rim: dice.between(0, 1), fringe: dice.chance(0.7) ? dice.between(0.05, 0.25) : 0 },
  );
}

export function drawPatches(dice: Dice, brown: number): PutOn {
  const size = dice.between(2.2, 4.5);
  const bound = dice.between(0.56, 0.64);
  return killWhere(
    (blade, i, u, v) => {
      const cloud = cloudAt(3, size * u + blade.noiseU, size * v + blade.noiseV, 3);
      return cloud + 0.05 * (blade.islet[i]! - 0.5) - bound;
    },
    brown,
    dice.between(0, 0.3),
    { soft: 0.008, rim: dice.between(0, 1.5), fringe: dice.chance(0.5) ? dice.between(0.02, 0.07) : 0 },
  );
}

export const drawBrownPatches = (dice: Dice): PutOn => drawPatches(dice, dice.logBetween(0.25, 1.6));
export const drawBleachedPatches = (dice: Dice): PutOn => drawPatches(dice, dice.logBetween(0.012, 0.08));

export function drawBlotches(dice: Dice): PutOn {
  const size = dice.between(2.5, 5);
  const bound = dice.between(0.54, 0.6);
  const brown = dice.between(1.2, 3);
  const green = dice.between(0.1, 0.5);
  const pale = dice.between(0.02, 0.06);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const one = cloudAt(3, size * u + blade.noiseU, size * v + blade.noiseV, 4) - bound;
      bleach(blade, i, 0.7 * smoothStep(-2 * pale, 0, one), 0.3, 0.8);
      const share = smoothStep(-0.012, 0.03, one);
      if (share <= 0) return;
      const keep = green * blade.chlorophyll[i]!;
      kill(blade, i, share, brown * (0.8 + 0.4 * blade.islet[i]!), 0.1);
      blade.chlorophyll[i]! += keep * share;
      blade.gloss[i]! = 1;
    });
}

export function drawBlackened(dice: Dice): PutOn {
  const reach = dice.between(0.12, 0.5);
  const fromTip = dice.chance(0.5);
  return killWhere(
    (blade, i, u, v) => {
      const cloud = cloudAt(2, 4 * u + blade.noiseU, 4 * v + blade.noiseV, 3) - 0.5;
      const far = fromTip ? 1 - u : blade.edge[i]! / blade.halfWidth;
      return reach - far + 0.35 * cloud;
    },
    dice.between(4, 10),
    0.3,
    { soft: 0.03, rim: -0.3, fringe: 0 },
  );
}

export function drawDead(dice: Dice): PutOn {
  const brown = dice.logBetween(0.1, 1.2);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(3, 7 * u + blade.noiseU, 7 * v + blade.noiseV, 4);
      kill(
        blade,
        i,
        smoothStep(0.28, 0.36, cloud),
        brown * (0.4 + 1.2 * cloud) * (1 + 0.6 * blade.vein[i]!),
        0.15,
      );
      bleach(blade, i, 0.9, 0.1, 0.7);
      blade.relief[i]! += 0.012 * cloud;
    });
}
