import type { Measures } from '../../../../leaf/measures.ts';
import { convertLabToXyz } from '../../../../photo/convert-lab-to-xyz.ts';

const RADIANS = Math.PI / 180;

/** A measured leaf's own mean colour as CSS, with the light taken out; nothing where it has none. */
export function cssColourOf({ lightness, chroma, hue }: Measures): string | undefined {
  if (!lightness || !chroma || !hue) return undefined;
  const angle = hue.value * RADIANS;
  const xyz = convertLabToXyz(
    lightness.value,
    chroma.value * Math.cos(angle),
    chroma.value * Math.sin(angle),
  );
  return `color(xyz-d65 ${xyz.map((part) => part.toFixed(4)).join(' ')})`;
}

/** The colour that was measured, as a patch; the numbers beside it say the same. */
export function LeafSwatch({ measures }: { readonly measures: Measures }) {
  const background = cssColourOf(measures);
  return background ? <span class="leaf-swatch" style={{ background }} aria-hidden="true" /> : null;
}
