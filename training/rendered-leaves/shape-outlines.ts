import type { Dice } from './dice.ts';
import { noiseAt } from './noise.ts';

/** A place on a blade in lengths of the blade: `u` from the end of its stalk towards the tip, `v` across. */
export interface Place {
  readonly u: number;
  readonly v: number;
}

/** A vein from its start to its end; `width` at the start in lengths of the blade, it tapers to a third. */
export interface Vein {
  readonly places: readonly Place[];
  readonly width: number;
}

/** How veins branch: `angleDegrees` from the vein they leave, `bend` towards its tip in degrees a length. */
export interface Venation {
  readonly angleDegrees: number;
  readonly bend: number;
  /** Side veins on each side of a main vein one length long. */
  readonly sideVeins: number;
  /** Distance between third veins, in lengths. */
  readonly mesh: number;
  readonly parallel?: boolean;
}

export interface BladeShape {
  /** Closed, without the first place again at its end. */
  readonly outline: readonly Place[];
  readonly mainVeins: readonly Vein[];
  readonly venation: Venation;
}

export interface SimpleBlade {
  /** Widest over length. */
  readonly width: number;
  /** Powers of the profile t^base · (1 − t)^tip: small base = blunt, large tip = pointed. */
  readonly base: number;
  readonly tip: number;
  /** Extra length drawn out at the tip. */
  readonly drawn?: number;
  /** Depth of the notch at the base. */
  readonly heart?: number;
  readonly teeth?: { readonly count: number; readonly depth: number };
  readonly lobes?: { readonly count: number; readonly depth: number };
  /** How unlike the halves are. */
  readonly uneven?: number;
  /** Unrest of the margin. */
  readonly ragged?: number;
  readonly ribWidth?: number;
}

const STEPS = 150;

/** A blade about one midrib. */
export function drawSimpleBlade(shape: SimpleBlade, dice: Dice): Place[] {
  const { base, tip } = shape;
  const widest = base / (base + tip);
  const most = widest ** base * (1 - widest) ** tip;
  const uneven = (shape.uneven ?? 0.06) * dice.normal(1);
  const at = dice.between(0, 60);
  const drawn = shape.drawn ?? 0;
  const side = (sign: number): Place[] => {
    const places: Place[] = [];
    const shift = dice.between(0, 1);
    for (let k = 1; k < STEPS; k++) {
      const t = 0.5 - 0.5 * Math.cos((Math.PI * k) / STEPS);
      const profile = (t ** base * (1 - t) ** tip) / most;
      let half = (shape.width / 2) * profile * (1 + sign * uneven);
      half *= 1 + (shape.ragged ?? 0.06) * (noiseAt(1, at + 5 * t, at + sign * 9) - 0.5) * 2;
      if (shape.lobes) {
        const { count, depth } = shape.lobes;
        half *= 1 - depth * (0.5 + 0.5 * Math.cos(2 * Math.PI * (count * t ** 0.9 + 0.25 * shift))) ** 1.5;
      }
      if (shape.teeth) {
        const { count, depth } = shape.teeth;
        const saw = (count * t + shift) % 1;
        half *= 1 - depth * (1 - saw) * (0.6 + 0.8 * noiseAt(2, at + count * t, sign * 4 + at));
      }
      const u = t + drawn * t ** 9 - (shape.heart ?? 0) * profile * (1 - t) ** 3;
      places.push({ u: u / (1 + drawn), v: sign * half });
    }
    return places;
  };
  return [{ u: 0, v: 0 }, ...side(1), { u: 1, v: 0 }, ...side(-1).reverse()];
}

export interface FingeredBlade {
  /** Lengths of the fingers from the middle one outwards; all but the first stand on both sides. */
  readonly fingers: readonly number[];
  /** Angle between neighbours, degrees. */
  readonly spread: number;
  /** How far in the bays reach, as a share of the fingers left between them. */
  readonly bay: number;
  /** Power of the fingers' flanks: 1 = rounded, 3 = slim. */
  readonly slim: number;
  readonly teeth?: { readonly count: number; readonly depth: number };
}

/** A palmate blade about the end of its stalk; the middle finger is one length long. */
export function drawFingeredBlade(shape: FingeredBlade, dice: Dice): Place[] {
  const step = (shape.spread * Math.PI) / 180;
  const at = dice.between(0, 60);
  const places: Place[] = [];
  const reach = Math.min(Math.PI - 0.12, step * (shape.fingers.length - 0.42));
  const total = 2 * STEPS;
  for (let k = 0; k <= total; k++) {
    const angle = -reach + (2 * reach * k) / total;
    const turn = Math.abs(angle);
    const finger = Math.min(shape.fingers.length - 1, Math.round(turn / step));
    const off = Math.min(1, Math.abs(turn - finger * step) / (step / 2));
    const here = shape.fingers[finger]!;
    const next =
      shape.fingers[
        Math.min(shape.fingers.length - 1, Math.max(0, finger + (turn > finger * step ? 1 : -1)))
      ]!;
    const bay = shape.bay * Math.min(here, next);
    let r = bay + (here - bay) * Math.cos((off * Math.PI) / 2) ** shape.slim;
    r *= 1 + 0.12 * (noiseAt(0, at + 2.2 * angle, at) - 0.5);
    if (shape.teeth) {
      const saw = (shape.teeth.count * (angle + reach)) / (2 * reach);
      r *= 1 - shape.teeth.depth * Math.abs(2 * (saw % 1) - 1) * (0.5 + noiseAt(3, saw + at, at));
    }
    places.push({ u: r * Math.cos(angle), v: r * Math.sin(angle) });
  }
  places.push({ u: -0.015, v: 0 });
  return places;
}

/** A midrib from stalk to tip with a slight bend. */
export const drawMidrib = (width: number, dice: Dice): Vein => {
  const sway = dice.normal(0.008);
  return {
    width,
    places: Array.from({ length: 41 }, (_, k) => ({
      u: (k / 40) * 0.985,
      v: sway * Math.sin((Math.PI * k) / 40),
    })),
  };
};

/** One main vein into each finger. */
export const drawFingerRibs = (shape: FingeredBlade, width: number): Vein[] => {
  const step = (shape.spread * Math.PI) / 180;
  return shape.fingers.flatMap((length, k) =>
    (k === 0 ? [0] : [-1, 1]).map((sign) => ({
      width: width * (k === 0 ? 1 : 0.85),
      places: Array.from({ length: 31 }, (_, n) => {
        const r = (n / 30) * length * 0.96;
        const angle = sign * k * step * (1 + 0.06 * (1 - n / 30));
        return { u: r * Math.cos(angle), v: r * Math.sin(angle) };
      }),
    })),
  );
};
