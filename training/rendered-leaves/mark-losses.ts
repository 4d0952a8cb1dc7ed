import { type Blade, uOf, vOf } from './blade.ts';
import type { Dice } from './dice.ts';
import { bleach, eachTexel, type PutOn } from './mark-yellowing.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';

/** Takes a ragged disc out of the blade; `rough` 0 = round. The rim dries a little. */
function biteOut(
  blade: Blade,
  x: number,
  y: number,
  r: number,
  rough: number,
  at: number,
  dry: number,
): void {
  const reach = r * 1.5 + 2;
  const { width, height } = blade;
  for (let py = Math.max(0, Math.floor(y - reach)); py < Math.min(height, y + reach); py++) {
    for (let px = Math.max(0, Math.floor(x - reach)); px < Math.min(width, x + reach); px++) {
      const i = py * width + px;
      if (blade.inside[i] === 0) continue;
      const wave = rough * (cloudAt(2, (px - x) / r + at, (py - y) / r + at, 2) - 0.5) * 2;
      const d = (Math.hypot(px - x, py - y) / r) * (1 + wave);
      if (d < 1) blade.gone[i] = 1;
      else if (d < 1 + 2.2 / r + 0.1) {
        bleach(blade, i, 0.7 * dry, 0.3, 0.7);
        blade.brown[i]! += 0.5 * dry;
      }
    }
  }
}

function findSpot(blade: Blade, dice: Dice, margin: number): readonly [number, number] | undefined {
  for (let n = 0; n < 60; n++) {
    const x = Math.floor(dice.next() * blade.width);
    const y = Math.floor(dice.next() * blade.height);
    const i = y * blade.width + x;
    if (blade.inside[i] === 1 && blade.edge[i]! > margin) return [x, y];
  }
  return undefined;
}

export function drawShotHoles(dice: Dice): PutOn {
  const count = Math.round(dice.logBetween(8, 70));
  const radius = dice.between(0.006, 0.014);
  const dry = dice.next();
  return (blade, own) => {
    for (let n = 0; n < count; n++) {
      const r = radius * own.between(0.5, 1.4);
      const spot = findSpot(blade, own, r + 0.008);
      if (spot)
        biteOut(blade, spot[0], spot[1], Math.max(1.2, r * blade.scale), 0.25, own.between(0, 50), dry);
    }
  };
}

export function drawRaggedHoles(dice: Dice): PutOn {
  const count = Math.round(dice.logBetween(2, 10));
  const radius = dice.between(0.025, 0.07);
  const rough = dice.between(0.2, 0.6);
  const dry = dice.next();
  return (blade, own) => {
    for (let n = 0; n < count; n++) {
      const r = radius * own.between(0.5, 1.3);
      const spot = findSpot(blade, own, 0.02);
      if (spot) biteOut(blade, spot[0], spot[1], r * blade.scale, rough, own.between(0, 50), dry);
    }
  };
}

export function drawEdgeBites(dice: Dice): PutOn {
  const runs = Math.round(dice.logBetween(1, 6));
  const radius = dice.between(0.03, 0.1);
  const rough = dice.between(0.05, 0.4);
  const dry = dice.next();
  return (blade, own) => {
    for (let n = 0; n < runs; n++) {
      let x = 0;
      let y = 0;
      let found = false;
      for (let k = 0; k < 400 && !found; k++) {
        x = Math.floor(own.next() * blade.width);
        y = Math.floor(own.next() * blade.height);
        const i = y * blade.width + x;
        const u = uOf(blade, x);
        found = blade.inside[i] === 1 && blade.edge[i]! < 0.012 && u > 0.08 && Math.abs(vOf(blade, y)) > 0.02;
      }
      if (!found) continue;
      const heading = own.between(0, 2 * Math.PI);
      const bites = own.whole(1, 3);
      const r = radius * own.between(0.6, 1.3) * blade.scale;
      for (let k = 0; k < bites; k++) {
        biteOut(
          blade,
          x + 1.1 * r * k * Math.cos(heading),
          y + 1.1 * r * k * Math.sin(heading),
          r * own.between(0.7, 1.1),
          rough,
          own.between(0, 50),
          dry,
        );
      }
    }
  };
}

/** Tissue eaten between the veins; the ribs stand. */
export function drawVeinsLeft(dice: Dice): PutOn {
  const size = dice.between(2, 5);
  const bound = dice.between(0.42, 0.56);
  const rib = dice.between(0.0035, 0.008);
  const net = dice.chance(0.5) ? dice.between(0.0015, 0.003) : 0;
  const browned = dice.between(0, 0.7);
  return (blade) =>
    eachTexel(blade, (i, u, v) => {
      const cloud =
        cloudAt(0, size * u + blade.noiseU, size * v + blade.noiseV, 2) + 0.08 * (blade.islet[i]! - 0.5);
      const near = smoothStep(bound - 0.08, bound, cloud);
      if (near <= 0) return;
      if (cloud > bound && blade.main[i]! > rib && blade.fine[i]! > net && noiseAt(1, 40 * u, 40 * v) > 0.12)
        blade.gone[i] = 1;
      else {
        blade.brown[i]! += 0.6 * browned * near;
        blade.chlorophyll[i]! *= 1 - 0.6 * browned * near;
      }
    });
}
