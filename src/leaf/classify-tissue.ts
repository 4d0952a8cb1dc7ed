import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { measureHue } from '../photo/measure-hue.ts';
import { TISSUES, type Tissue } from './types.ts';

/** Bounds between the kinds of tissue, CIELAB under D65 after the white is set. */
export interface TissueBounds {
  /** Below this hue green counts as gone pale or yellow. */
  readonly chloroticHue: number;
  /** Below this hue tissue is brown rather than yellow, unless it is bright and strong in colour. */
  readonly deadHue: number;
  /** Above this hue (turning backwards through red) it is purple. */
  readonly purpleHue: number;
  /** Chroma under which light tissue is on the way to white. */
  readonly whiteChroma: number;
}

/**
 * Where the bounds come from. Chlorotic: on papaya leaves under a chlorophyll meter (`papaya-spad`, on paper), half
 * of the surface lies below a hue of 114 at a reading of 24; 96 in 100 do at 10–20, 5 in 100 at 30–35. Photochemistry of
 * papaya falls below readings of 40 (Torres Netto et al. 2002), and 24 is plainly pale by eye (common practice, no source). Dead: the brown and tan spots of
 * `bean-uganda` and `blackgram-india` lie at hues of 30–80, the yellowest living leaves at 83 and more. Purple: red
 * cabbage, anthocyanin of cold and of phosphorus shortage turn towards 0 and beyond it (common practice, no source).
 * White: see `PALE_SHARE`; its bound is moved with that of chroma.
 */
export const TISSUE_BOUNDS: TissueBounds = {
  chloroticHue: 114,
  deadHue: 82,
  purpleHue: 22,
  whiteChroma: 12,
};

const INDEX = Object.fromEntries(TISSUES.map((tissue, i) => [tissue, i])) as Record<Tissue, number>;
export const TISSUE_INDEX: Readonly<Record<Tissue, number>> = INDEX;

/**
 * What each pixel of a leaf is, one tissue index a pixel; outside the leaf 0. Veins and missing parts are added
 * elsewhere. `medianL` is the leaf's own lightness: black and white are told against it.
 */
export function classifyTissue(
  lab: LabPlanes,
  leaf: Uint8Array,
  medianL: number,
  bounds: TissueBounds = TISSUE_BOUNDS,
): Uint8Array {
  const out = new Uint8Array(leaf.length);
  const dark = Math.min(16, 0.4 * medianL);
  const light = Math.max(45, medianL + 4);
  const typical = typicalStrength(lab, leaf);
  for (let i = 0; i < leaf.length; i++) {
    if (leaf[i] !== 255) continue;
    const L = lab.L[i]!;
    const a = lab.a[i]!;
    const b = lab.b[i]!;
    const chroma = Math.sqrt(a * a + b * b);
    let hue = measureHue(a, b);
    if (hue < 0) hue += 360;
    if (L > light && isWhite(chroma, a, L, typical, bounds.whiteChroma)) out[i] = INDEX.white;
    else if (L < dark && chroma < 8) out[i] = INDEX.necrotic;
    else if (chroma > 7 && (hue > 290 || hue < bounds.purpleHue)) out[i] = INDEX.purple;
    else if (hue < bounds.deadHue) out[i] = L > 55 && chroma > 36 ? INDEX.chlorotic : INDEX.necrotic;
    else if (hue < bounds.deadHue + 10 && chroma < 24) out[i] = INDEX.necrotic;
    else if (hue < bounds.chloroticHue) out[i] = INDEX.chlorotic;
    else out[i] = INDEX.healthy;
  }
  return out;
}

/**
 * Powder lets some green through: what is lighter than the leaf, this much weaker in colour and hardly greener than grey counts
 * as white. A share and not a level, because the glare of a waxy leaf takes some colour from all of it, powder nearly all
 * from where it lies; and glare stays green.
 */
const PALE_SHARE = 0.3;
const STILL_GREEN = -6;
/** Of the bound of white: so weak a colour is white on any leaf. */
const PLAINLY = 0.4;

/** A part of colour freed of shading (both it and L* + 16 grow with the cube root of the light), as at L* 50. */
const strengthOf = (colour: number, L: number): number => (66 * colour) / (L + 16);

function isWhite(chroma: number, a: number, L: number, typical: number, whiteChroma: number): boolean {
  if (chroma < PLAINLY * whiteChroma) return true;
  const share = (PALE_SHARE * whiteChroma) / TISSUE_BOUNDS.whiteChroma;
  return strengthOf(chroma, L) < share * typical && strengthOf(a, L) > STILL_GREEN;
}

/** Strength of colour that a fifth of the leaf exceeds. */
function typicalStrength(lab: LabPlanes, leaf: Uint8Array): number {
  const histogram = new Int32Array(128);
  let n = 0;
  for (let i = 0; i < leaf.length; i++) {
    if (leaf[i] !== 255) continue;
    n++;
    const a = lab.a[i]!;
    const b = lab.b[i]!;
    histogram[Math.min(127, strengthOf(Math.sqrt(a * a + b * b), lab.L[i]!) | 0)]!++;
  }
  let seen = 0;
  for (let c = 127; c > 0; c--) {
    seen += histogram[c]!;
    if (seen > n / 5) return c;
  }
  return 0;
}
