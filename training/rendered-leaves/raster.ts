import { type Bend, bendPlace } from './bend-blade.ts';
import type { Blade } from './blade.ts';

/** Where a body stands: heading of its tip, tilt about two axes, length and place in scene units. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly heading: number;
  readonly length: number;
}

/** The whole leaf's tilt towards and across the view, and turn in the picture. */
export interface View {
  readonly turn: number;
  readonly tilt: number;
  readonly lean: number;
  /** Scene units to the eye. */
  readonly away: number;
  /** Pixels a scene unit, and the pixel of the scene's origin. */
  readonly scale: number;
  readonly cx: number;
  readonly cy: number;
}

/** What each sample of the picture shows. */
export interface Samples {
  readonly width: number;
  readonly height: number;
  /** Number of the body + 1; 0 = background. */
  readonly body: Uint8Array;
  readonly depth: Float32Array;
  /** Texel of the blade, and the normal of the bent blade (towards the eye). */
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly nx: Float32Array;
  readonly ny: Float32Array;
  /** 1 where the lower side is seen. */
  readonly under: Uint8Array;
  /** Body + 1 of tissue that is missing here. */
  readonly missing: Uint8Array;
}

/** Kept for the next picture of this size: several megabytes that need not be cleared but for what is read before it is written. */
let kept: Samples | undefined;

/** Empty samples; they are those of the picture before, if it had this size. */
export function makeSamples(width: number, height: number): Samples {
  const size = width * height;
  if (kept?.width !== width || kept.height !== height) {
    kept = {
      width,
      height,
      body: new Uint8Array(size),
      depth: new Float32Array(size),
      x: new Float32Array(size),
      y: new Float32Array(size),
      nx: new Float32Array(size),
      ny: new Float32Array(size),
      under: new Uint8Array(size),
      missing: new Uint8Array(size),
    };
  }
  kept.body.fill(0);
  kept.depth.fill(-1e9);
  kept.under.fill(0);
  kept.missing.fill(0);
  return kept;
}

type Triple = [number, number, number];

/** From the blade's bent place to scene units, before the view. */
function pose([a, b, c]: readonly [number, number, number], p: Pose): Triple {
  const cos = Math.cos(p.heading) * p.length;
  const sin = Math.sin(p.heading) * p.length;
  return [p.x + a * cos - b * sin, p.y + a * sin + b * cos, p.z + c * p.length];
}

/** Turns, tilts and projects; returns pixel x, y and height towards the eye. */
export function look([x, y, z]: readonly [number, number, number], view: View): Triple {
  const cosTurn = Math.cos(view.turn);
  const sinTurn = Math.sin(view.turn);
  const x1 = x * cosTurn - y * sinTurn;
  const y1 = x * sinTurn + y * cosTurn;
  const y2 = y1 * Math.cos(view.tilt) - z * Math.sin(view.tilt);
  const z2 = y1 * Math.sin(view.tilt) + z * Math.cos(view.tilt);
  const x3 = x1 * Math.cos(view.lean) + z2 * Math.sin(view.lean);
  const z3 = -x1 * Math.sin(view.lean) + z2 * Math.cos(view.lean);
  const s = (view.scale * view.away) / (view.away - z3);
  return [view.cx + x3 * s, view.cy + y2 * s, z3];
}

export const placeInPicture = (
  u: number,
  v: number,
  blade: { readonly halfWidth: number },
  bend: Bend,
  p: Pose,
  view: View,
): Triple => look(pose(bendPlace(u, v, bend, blade.halfWidth), p), view);

/** Draws one bent blade into the samples, nearest first. */
export function rasterBlade(
  samples: Samples,
  blade: Blade,
  bend: Bend,
  p: Pose,
  view: View,
  body: number,
): void {
  const columns = 36;
  const rows = Math.max(10, Math.min(28, Math.round((36 * blade.height) / blade.width)));
  const n = (columns + 1) * (rows + 1);
  const sx = new Float32Array(n);
  const sy = new Float32Array(n);
  const sz = new Float32Array(n);
  const wx = new Float32Array(n);
  const wy = new Float32Array(n);
  const wz = new Float32Array(n);
  const unit: View = { ...view, scale: 1, away: 1e9, cx: 0, cy: 0 };
  for (let r = 0, k = 0; r <= rows; r++) {
    const v = blade.v0 + (r / rows) * ((blade.height - 1) / blade.scale);
    for (let c = 0; c <= columns; c++, k++) {
      const u = blade.u0 + (c / columns) * ((blade.width - 1) / blade.scale);
      const posed = pose(bendPlace(u, v, bend, blade.halfWidth), p);
      const [x, y, z] = look(posed, view);
      sx[k] = x;
      sy[k] = y;
      sz[k] = z;
      [wx[k], wy[k], wz[k]] = look(posed, unit) as [number, number, number];
    }
  }
  const nx = new Float32Array(n);
  const ny = new Float32Array(n);
  const back = new Uint8Array(n);
  for (let r = 0, k = 0; r <= rows; r++) {
    for (let c = 0; c <= columns; c++, k++) {
      const left = c > 0 ? k - 1 : k;
      const right = c < columns ? k + 1 : k;
      const up = r > 0 ? k - columns - 1 : k;
      const down = r < rows ? k + columns + 1 : k;
      const ax = wx[right]! - wx[left]!;
      const ay = wy[right]! - wy[left]!;
      const az = wz[right]! - wz[left]!;
      const bx = wx[down]! - wx[up]!;
      const by = wy[down]! - wy[up]!;
      const bz = wz[down]! - wz[up]!;
      let x = ay * bz - az * by;
      let y = az * bx - ax * bz;
      let z = ax * by - ay * bx;
      const length = Math.sqrt(x * x + y * y + z * z) || 1;
      x /= length;
      y /= length;
      z /= length;
      back[k] = z < 0 ? 1 : 0;
      nx[k] = z < 0 ? -x : x;
      ny[k] = z < 0 ? -y : y;
    }
  }
  const du = (blade.width - 1) / columns;
  const dv = (blade.height - 1) / rows;
  const { width, height } = samples;
  const triangle = (
    a: number,
    b: number,
    c: number,
    ua: number,
    va: number,
    ub: number,
    vb: number,
    uc: number,
    vc: number,
  ): void => {
    const x0 = sx[a]!;
    const y0 = sy[a]!;
    const x1 = sx[b]!;
    const y1 = sy[b]!;
    const x2 = sx[c]!;
    const y2 = sy[c]!;
    const area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
    if (Math.abs(area) < 1e-6) return;
    const inverse = 1 / area;
    const top = Math.max(0, Math.ceil(Math.min(y0, y1, y2) - 0.5));
    const bottom = Math.min(height - 1, Math.floor(Math.max(y0, y1, y2) - 0.5));
    const left = Math.max(0, Math.ceil(Math.min(x0, x1, x2) - 0.5));
    const right = Math.min(width - 1, Math.floor(Math.max(x0, x1, x2) - 0.5));
    const flipped = back[a]! + back[b]! + back[c]! >= 2 ? 1 : 0;
    for (let y = top; y <= bottom; y++) {
      const py = y + 0.5;
      for (let x = left; x <= right; x++) {
        const px = x + 0.5;
        const w1 = ((px - x0) * (y2 - y0) - (x2 - x0) * (py - y0)) * inverse;
        const w2 = ((x1 - x0) * (py - y0) - (px - x0) * (y1 - y0)) * inverse;
        const w0 = 1 - w1 - w2;
        if (w0 < -1e-5 || w1 < -1e-5 || w2 < -1e-5) continue;
        const z = w0 * sz[a]! + w1 * sz[b]! + w2 * sz[c]!;
        const at = y * width + x;
        if (z <= samples.depth[at]!) continue;
        const tx = w0 * ua + w1 * ub + w2 * uc;
        const ty = w0 * va + w1 * vb + w2 * vc;
        const texel = Math.round(ty) * blade.width + Math.round(tx);
        if (blade.inside[texel] !== 1) continue;
        if (blade.gone[texel] === 1) {
          samples.missing[at] = body + 1;
          if (samples.body[at] === 0) {
            samples.x[at] = tx;
            samples.y[at] = ty;
          }
          continue;
        }
        samples.depth[at] = z;
        samples.body[at] = body + 1;
        samples.x[at] = tx;
        samples.y[at] = ty;
        samples.nx[at] = w0 * nx[a]! + w1 * nx[b]! + w2 * nx[c]!;
        samples.ny[at] = w0 * ny[a]! + w1 * ny[b]! + w2 * ny[c]!;
        samples.under[at] = flipped;
      }
    }
  };
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const a = r * (columns + 1) + c;
      const b = a + 1;
      const d = a + columns + 1;
      const e = d + 1;
      triangle(a, b, d, c * du, r * dv, (c + 1) * du, r * dv, c * du, (r + 1) * dv);
      triangle(b, e, d, (c + 1) * du, r * dv, (c + 1) * du, (r + 1) * dv, c * du, (r + 1) * dv);
    }
  }
}
