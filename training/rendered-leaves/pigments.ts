/**
 * Colour of leaf tissue from what is in it. Diffuse reflectance of a thick layer after Kubelka and Munk (1931):
 * R = 1 + q − √(q² + 2q) with q = absorption over scattering, in three bands (red, green, blue of linear sRGB). Absorption adds
 * over pigments, so thinning chlorophyll goes from dark green over light green to yellow as it does in leaves, and never
 * through the muddy greys of mixed colours. Which bands a pigment takes: chlorophyll red and blue, carotenoids blue,
 * anthocyanins green (Merzlyak et al. 2003); the numbers were set so that full, pale, yellow, brown and tan tissue have the
 * colours met on photographs under open licences (`../shared/photos`): sound tissue of bean, chilli and papaya at CIELAB hues of 124 to
 * 138, yellow mosaic of blackgram at 91 to 109.
 */

export type Bands = readonly [number, number, number];

/** What a texel of tissue holds; 1 of each is what a plain healthy (or plainly brown, purple) leaf holds. */
export interface Pigments {
  readonly chlorophyll: number;
  readonly carotenoid: number;
  readonly anthocyanin: number;
  /** Oxidised phenols of dead tissue: 1 chestnut, 0.15 tan, 4 near black. */
  readonly brown: number;
}

/** Cell walls without pigment. */
const BARE: Bands = [0.11, 0.19, 0.3];
const CHLOROPHYLL: Bands = [9.4, 2.0, 8.5];
const CAROTENOID: Bands = [0.02, 0.15, 7.5];
const ANTHOCYANIN: Bands = [0.4, 8, 3.6];
const BROWN: Bands = [2.4, 5.6, 14];

const reflect = (q: number): number => 1 + q - Math.sqrt(q * q + 2 * q);

/** Writes the linear reflectance of tissue to `out[at … at + 2]`. */
export function mixPigments(
  out: Float32Array,
  at: number,
  chlorophyll: number,
  carotenoid: number,
  anthocyanin: number,
  brown: number,
): void {
  const mix = (band: 0 | 1 | 2): number =>
    BARE[band] +
    chlorophyll * CHLOROPHYLL[band] +
    carotenoid * CAROTENOID[band] +
    anthocyanin * ANTHOCYANIN[band] +
    brown * BROWN[band];
  // Anthocyanins sit in the skin above the green: some violet comes back before the light gets there.
  const skin = Math.min(1.5, anthocyanin);
  out[at] = reflect(mix(0)) + 0.018 * skin;
  out[at + 1] = reflect(mix(1));
  out[at + 2] = reflect(mix(2)) + 0.022 * skin;
}

/** Linear reflectance of tissue. */
export function colourOfPigments({ chlorophyll, carotenoid, anthocyanin, brown }: Pigments): Bands {
  const out = new Float32Array(3);
  mixPigments(out, 0, chlorophyll, carotenoid, anthocyanin, brown);
  return [out[0]!, out[1]!, out[2]!];
}
