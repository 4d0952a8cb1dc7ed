import { meanOfMeasured } from '../leaf/mean-of-measured.ts';
import type { Measured, Measures } from '../leaf/measures.ts';
import { measureColourDifference } from '../photo/measure-colour-difference.ts';

/** Mean colour of a leaf's living tissue as CIELAB polar coordinates, each with its standard error. */
interface LeafColour {
  readonly lightness: Measured;
  readonly chroma: Measured;
  readonly hue: Measured;
}

function colourOf({ lightness, chroma, hue }: Measures): LeafColour | undefined {
  return lightness && chroma && hue ? { lightness, chroma, hue } : undefined;
}

/**
 * The mean colour of several leaves, with its error. Hues of leaves lie within a third of the circle, so they are averaged as
 * they stand.
 */
export function meanColourOf(leaves: readonly Measures[]): Measures {
  const mean = (id: 'lightness' | 'chroma' | 'hue'): Measures => {
    const measured = meanOfMeasured(leaves.flatMap((leaf) => leaf[id] ?? []));
    return measured ? { [id]: measured } : {};
  };
  return { ...mean('lightness'), ...mean('chroma'), ...mean('hue') };
}

const RADIANS = Math.PI / 180;

function toLab(lightness: number, chroma: number, hue: number): [number, number, number] {
  return [lightness, chroma * Math.cos(hue * RADIANS), chroma * Math.sin(hue * RADIANS)];
}

/**
 * How far two leaves' mean colours lie apart: CIEDE2000 (ISO/CIE 11664-6) with the standard error that the six stated errors
 * add up to (first order, each moved by its error in turn; between equal colours, where the difference has no slope,
 * the difference that one error of each makes).
 * @returns nothing where one of the leaves has no colour
 */
export function colourApart(leaf: Measures, normal: Measures): Measured | undefined {
  const a = colourOf(leaf);
  const b = colourOf(normal);
  if (!a || !b) return undefined;
  const at = [a.lightness, a.chroma, a.hue, b.lightness, b.chroma, b.hue];
  const apart = (v: readonly number[]): number =>
    measureColourDifference(toLab(v[0]!, v[1]!, v[2]!), toLab(v[3]!, v[4]!, v[5]!));
  const values = at.map(({ value }) => value);
  const value = apart(values);
  const variance = at.reduce((sum, { se }, i) => {
    const moved = (by: number): number => apart(values.map((v, k) => (k === i ? v + by : v))) - value;
    return sum + Math.max(Math.abs(moved(se)), Math.abs(moved(-se))) ** 2;
  }, 0);
  return { value, se: Math.sqrt(variance) };
}
