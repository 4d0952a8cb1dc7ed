import { type Blade, TAG, uOf, vOf } from './blade.ts';
import type { Dice } from './dice.ts';
import { kill } from './mark-spots.ts';
import { bleach, eachTexel, type PutOn } from './mark-yellowing.ts';
import { cloudAt, noiseAt, smoothStep } from './noise.ts';

/** Something light lies on a texel: the more covers it, the less shows through. */
function lay(blade: Blade, i: number, share: number): void {
  blade.cover[i] = 1 - (1 - blade.cover[i]!) * (1 - share);
  blade.gloss[i]! *= 1 - 0.9 * share;
  if (blade.cover[i]! > 0.4) blade.tags[i]! |= TAG.white;
}

/** Where a random place on the blade is; undefined after too many misses. */
function findPlace(blade: Blade, dice: Dice): readonly [number, number] | undefined {
  for (let n = 0; n < 40; n++) {
    const x = Math.floor(dice.next() * blade.width);
    const y = Math.floor(dice.next() * blade.height);
    if (blade.inside[y * blade.width + x] === 1) return [x, y];
  }
  return undefined;
}

export function drawPowder(dice: Dice): PutOn {
  const thick = dice.between(0.45, 0.95);
  const allOver = dice.chance(0.5);
  const colonies = Math.round(dice.logBetween(3, 22));
  const radius = dice.between(0.035, 0.13);
  const grain = dice.between(0.3, 0.9);
  const bound = dice.between(0.32, 0.54);
  /** A thin film between the colonies. */
  const film = dice.chance(0.6) ? dice.between(0.1, 0.4) : 0;
  const grey = dice.between(0.42, 0.66);
  const yellowed = dice.chance(0.35) ? dice.between(0.2, 0.6) : 0;
  const browned = dice.chance(0.3) ? dice.between(0.3, 0.8) : 0;
  return (blade, own) => {
    const { width, height, scale } = blade;
    const cover = new Float32Array(width * height);
    if (!allOver) {
      for (let n = 0; n < colonies; n++) {
        const place = findPlace(blade, own);
        if (!place) continue;
        const r = radius * own.between(0.4, 1.3) * scale;
        const strength = own.between(0.5, 1);
        for (let y = Math.max(0, Math.floor(place[1] - r)); y < Math.min(height, place[1] + r); y++) {
          for (let x = Math.max(0, Math.floor(place[0] - r)); x < Math.min(width, place[0] + r); x++) {
            const d = Math.hypot(x - place[0], y - place[1]) / r;
            if (d >= 1) continue;
            const i = y * width + x;
            cover[i] = Math.max(cover[i]!, strength * (1 - smoothStep(0.15, 1, d)));
          }
        }
      }
    }
    blade.coverColour.set([grey * 0.98, grey, grey * own.between(0.93, 1.05)]);
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(0, 7 * u + blade.noiseU, 7 * v + blade.noiseV, 3);
      const own = allOver
        ? smoothStep(bound - 0.12, bound + 0.12, cloud)
        : Math.min(1, cover[i]! * (0.5 + 1.1 * cloud));
      const base = Math.max(own, film * (0.4 + cloud));
      if (base <= 0.01) return;
      const fine = cloudAt(2, u * scale * 0.28 + blade.noiseV, v * scale * 0.28, 2);
      const speck = smoothStep(0.62 - 0.5 * base, 0.72 - 0.25 * base, fine);
      const share = thick * base * (1 - grain + grain * speck) * (1 - 0.45 * blade.vein[i]!);
      bleach(blade, i, yellowed * base, 0.2, 0.8);
      if (browned > 0) {
        const old =
          browned * base * smoothStep(0.55, 0.7, cloudAt(3, 12 * u + blade.noiseV, 12 * v + blade.noiseU, 3));
        blade.brown[i]! += 0.5 * old;
        blade.chlorophyll[i]! *= 1 - 0.7 * old;
      }
      lay(blade, i, share);
    });
  };
}

/** Very many pale dots, thickest along the veins. */
export function drawStipple(dice: Dice): PutOn {
  const per = dice.logBetween(500, 2600);
  const radius = dice.between(0.0016, 0.003);
  const left = dice.between(0.06, 0.25);
  const cluster = dice.between(0.5, 0.95);
  const light = dice.between(0, 0.16);
  return (blade, own) => {
    const count = Math.round(per * Math.min(1.2, blade.halfWidth / 0.3) * Math.sqrt(blade.size));
    for (let n = 0; n < count; n++) {
      const place = findPlace(blade, own);
      if (!place) continue;
      const [x, y] = place;
      const u = uOf(blade, x);
      const v = vOf(blade, y);
      const likely = smoothStep(0.35, 0.62, cloudAt(1, 4 * u + blade.noiseU, 4 * v + blade.noiseV, 2));
      if (own.chance(cluster) && !own.chance(likely)) continue;
      dab(blade, x, y, Math.max(0.5, radius * blade.scale * own.between(0.6, 1.4)), (i, share) => {
        bleach(blade, i, share, left, 0.6);
        blade.cover[i] = Math.max(blade.cover[i]!, light * share);
      });
    }
  };
}

/** Calls `put` for the texels of a soft disc. */
function dab(blade: Blade, x: number, y: number, r: number, put: (i: number, share: number) => void): void {
  const reach = Math.ceil(r + 1);
  for (let dy = -reach; dy <= reach; dy++) {
    for (let dx = -reach; dx <= reach; dx++) {
      const px = Math.round(x + dx);
      const py = Math.round(y + dy);
      if (px < 0 || py < 0 || px >= blade.width || py >= blade.height) continue;
      const i = py * blade.width + px;
      if (blade.inside[i] === 0) continue;
      const share = Math.min(1, Math.max(0, r + 0.5 - Math.hypot(px - x, py - y)));
      if (share > 0) put(i, share);
    }
  }
}

/** Silvery streaks where the cells under the skin are emptied, with black specks of droppings. */
export function drawSilverFlecks(dice: Dice): PutOn {
  const count = Math.round(dice.logBetween(25, 180));
  const length = dice.between(0.012, 0.05);
  const specks = Math.round(dice.logBetween(10, 80));
  const light = dice.between(0.4, 0.85);
  return (blade, own) => {
    blade.coverColour.set([0.5, 0.52, 0.48]);
    for (let n = 0; n < count; n++) {
      const place = findPlace(blade, own);
      if (!place) continue;
      let heading = own.between(0, Math.PI);
      let [x, y] = place;
      const steps = length * own.between(0.4, 1.6) * blade.scale;
      const r = Math.max(0.8, 0.0035 * blade.scale * own.between(0.6, 1.4));
      for (let s = 0; s < steps; s++) {
        dab(blade, x, y, r, (i, share) => {
          bleach(blade, i, share, 0.25, 0.5);
          blade.cover[i] = Math.max(blade.cover[i]!, light * share);
          blade.tags[i]! |= share > 0.5 ? TAG.white : 0;
        });
        heading += own.normal(0.25);
        x += Math.cos(heading);
        y += Math.sin(heading);
      }
    }
    for (let n = 0; n < specks; n++) {
      const place = findPlace(blade, own);
      if (place)
        dab(blade, place[0], place[1], Math.max(0.7, 0.002 * blade.scale), (i, share) =>
          kill(blade, i, share, 6, 0),
        );
    }
  };
}

/** The grey marbling between the veins that many squashes are born with. */
export function drawSilverPattern(dice: Dice): PutOn {
  const light = dice.between(0.25, 0.6);
  const reach = dice.between(0.12, 0.3);
  return (blade) => {
    blade.coverColour.set([0.34, 0.4, 0.32]);
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(2, 9 * u + blade.noiseU, 9 * v + blade.noiseV, 2);
      const near = 1 - smoothStep(reach * 0.6, reach, blade.main[i]! / blade.gap + 0.25 * (cloud - 0.5));
      const share = light * near * smoothStep(0.36, 0.5, cloud);
      blade.cover[i] = Math.max(blade.cover[i]!, share);
    });
  };
}

/** Winding mines that widen as the maggot grows, now and then ending in a blister. */
export function drawMines(dice: Dice): PutOn {
  const count = Math.round(dice.logBetween(2, 9));
  const wide = dice.between(0.006, 0.013);
  const long = dice.between(0.5, 1.8);
  const light = dice.between(0.45, 0.9);
  const frass = dice.chance(0.7);
  const blister = dice.chance(0.3);
  const tan = dice.between(0, 0.15);
  return (blade, own) => {
    blade.coverColour.set([0.62, 0.62, 0.5]);
    const put = (i: number, share: number): void => {
      bleach(blade, i, share, 0.12, 0.35);
      blade.brown[i] = Math.max(blade.brown[i]!, tan * share);
      blade.cover[i] = Math.max(blade.cover[i]!, light * share);
      if (share > 0.5) blade.tags[i]! |= TAG.white;
    };
    for (let n = 0; n < count; n++) {
      const place = findPlace(blade, own);
      if (!place) continue;
      let [x, y] = place;
      let heading = own.between(0, 2 * Math.PI);
      let turn = 0;
      const steps = long * own.between(0.3, 1) * blade.scale;
      for (let s = 0; s < steps; s++) {
        const r = Math.max(0.8, (wide / 2) * blade.scale * (0.35 + (0.65 * s) / steps));
        const i = Math.round(y) * blade.width + Math.round(x);
        // Turns back at the margin and mostly at thick veins.
        if (blade.inside[i] !== 1 || blade.edge[i]! < 0.015) {
          heading += Math.PI * own.between(0.6, 1.1);
          x += 2 * Math.cos(heading);
          y += 2 * Math.sin(heading);
          continue;
        }
        dab(blade, x, y, r, put);
        if (frass && s % 3 < 2) {
          dab(blade, x, y, Math.max(0.5, 0.22 * r), (k, share) => {
            blade.cover[k]! *= 1 - 0.7 * share;
            blade.brown[k] = Math.max(blade.brown[k]!, 2.5 * share);
          });
        }
        turn = 0.88 * turn + own.normal(0.07);
        heading += turn;
        x += Math.cos(heading);
        y += Math.sin(heading);
      }
      if (blister) dab(blade, x, y, own.between(0.02, 0.06) * blade.scale, put);
    }
  };
}

/** One skin scraped off between the veins: a thin pale window is left. */
export function drawGrazed(dice: Dice): PutOn {
  const size = dice.between(4, 9);
  const bound = dice.between(0.54, 0.62);
  const light = dice.between(0.25, 0.6);
  return (blade) => {
    blade.coverColour.set([0.5, 0.47, 0.34]);
    eachTexel(blade, (i, u, v) => {
      const cloud =
        cloudAt(1, size * u + blade.noiseU, size * v + blade.noiseV, 2) + 0.1 * (blade.islet[i]! - 0.5);
      const share = smoothStep(bound - 0.01, bound + 0.015, cloud) * (1 - 0.8 * blade.vein[i]!);
      if (share <= 0) return;
      bleach(blade, i, share, 0.06, 0.3);
      blade.brown[i]! += 0.05 * share;
      blade.cover[i] = Math.max(blade.cover[i]!, light * share);
      blade.relief[i]! -= 0.003 * share;
    });
  };
}

/** A crinkled, blistered surface. */
export function drawPucker(dice: Dice): PutOn {
  const deep = dice.between(0.022, 0.055);
  const size = dice.between(7, 18);
  const byField = dice.between(0.2, 1);
  return (blade) => {
    const dome = Float32Array.from({ length: 257 }, (_, k) => noiseAt(2, k * 1.7, blade.noiseU) * 2);
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(1, size * u + blade.noiseU, size * v + blade.noiseV, 2);
      const field = blade.field[i]! > 0 ? dome[blade.field[i]! & 255]! : 0;
      const up = Math.min(1, blade.fine[i]! / 0.016) ** 0.8;
      const between = Math.min(1, (2.6 * blade.main[i]!) / blade.gap) ** 0.8;
      blade.relief[i]! += deep * (0.9 * cloud + byField * 0.6 * field * up + 0.8 * between);
      blade.chlorophyll[i]! *= 0.8 + 0.4 * cloud;
    });
  };
}

/** Brownish dust, thin and grainy: nothing wrong. */
export function drawDust(dice: Dice): PutOn {
  const thick = dice.between(0.05, 0.3);
  return (blade) => {
    // One colour of cover a blade: over powder dust is not seen.
    if (blade.cover.some((cover) => cover > 0.05)) return;
    blade.coverColour.set([0.42, 0.34, 0.26]);
    eachTexel(blade, (i, u, v) => {
      const cloud = cloudAt(3, 5 * u + blade.noiseV, 5 * v + blade.noiseU, 2);
      const fine = noiseAt(1, u * blade.scale * 0.4, v * blade.scale * 0.4);
      blade.cover[i] = Math.max(blade.cover[i]!, thick * cloud * (0.4 + fine));
      blade.gloss[i]! *= 0.6;
    });
  };
}

/** Drops of water: each bulges, darkens one side and shines on the other. Nothing wrong. */
export function drawDew(dice: Dice): PutOn {
  const count = Math.round(dice.logBetween(15, 220));
  const radius = dice.between(0.004, 0.014);
  return (blade, own) => {
    for (let n = 0; n < count; n++) {
      const place = findPlace(blade, own);
      if (!place) continue;
      const r = Math.max(1.2, radius * blade.scale * own.between(0.4, 1.4));
      const reach = Math.ceil(r);
      for (let dy = -reach; dy <= reach; dy++) {
        for (let dx = -reach; dx <= reach; dx++) {
          const x = place[0] + dx;
          const y = place[1] + dy;
          const d = Math.hypot(dx, dy) / r;
          if (d > 1 || x < 0 || y < 0 || x >= blade.width || y >= blade.height) continue;
          const i = y * blade.width + x;
          blade.relief[i]! += (0.8 * r * Math.sqrt(1 - d * d)) / blade.scale;
          blade.gloss[i] = 5;
        }
      }
    }
  };
}
