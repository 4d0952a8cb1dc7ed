/**
 * The measures the camera takes of a leaf. Fractions are 0–1; colours are CIELAB under D65 (IEC 61966-2-1 sRGB primaries).
 * `says` is the one-line definition a person can read.
 */
export const MEASURES = [
  { id: 'chlorotic-fraction', unit: '0–1 of the leaf that remains', says: 'pale to yellow' },
  { id: 'necrotic-fraction', unit: '0–1 of the leaf that remains', says: 'brown, black or straw-dead' },
  { id: 'purple-fraction', unit: '0–1 of the leaf that remains', says: 'purple, red or bronze' },
  { id: 'white-fraction', unit: '0–1 of the leaf that remains', says: 'white or silvery on the surface' },
  { id: 'lost-fraction', unit: '0–1 of the whole leaf', says: 'eaten or torn away: holes and edge together' },
  { id: 'hole-fraction', unit: '0–1 of the whole leaf', says: 'holes inside the outline' },
  { id: 'edge-loss-fraction', unit: '0–1 of the whole leaf', says: 'missing from the outline' },
  { id: 'hole-count', unit: 'number', says: 'separate holes' },
  { id: 'lightness', unit: 'CIELAB L*', says: 'mean lightness of living tissue' },
  { id: 'chroma', unit: 'CIELAB C*', says: 'mean chroma of living tissue' },
  {
    id: 'hue',
    unit: 'degrees, CIELAB h',
    says: 'mean hue of living tissue (yellow about 95, leaf green about 120 to 135)',
  },
  {
    id: 'dark-green-index',
    unit: '0–1',
    says: 'dark green colour index of living tissue (Karcher and Richardson 2003)',
  },
  { id: 'evenness', unit: '0–1', says: '1 when the whole leaf has one colour' },
  {
    id: 'vein-contrast',
    unit: 'CIELAB b*',
    says: 'how much greener the veins are than the tissue between them; below 0 when they are paler',
  },
  { id: 'edge-contrast', unit: 'CIELAB hue degrees', says: 'how much greener the middle is than the edge' },
  { id: 'tip-contrast', unit: 'CIELAB hue degrees', says: 'how much greener the base is than the tip' },
  { id: 'spot-count', unit: 'number', says: 'separate dead spots' },
  { id: 'spot-fraction', unit: '0–1 of the leaf that remains', says: 'in dead spots' },
  { id: 'stipple-density', unit: 'per 1,000 px of leaf at the working frame', says: 'tiny pale dots' },
  {
    id: 'mottle',
    unit: '0–1',
    says: 'patchiness between light and dark green, in patches of a fiftieth to a tenth of the leaf',
  },
  { id: 'ribs-left', unit: '0–1', says: 'share of the lost edge along which ribs still stand' },
  { id: 'frame-share', unit: '0–1', says: 'share of the frame that the leaf fills' },
  { id: 'sharpness', unit: '0–1', says: '1 when fine detail is crisp' },
  // Those above are the agreed ones; the project's own follow.
  {
    id: 'surface-relief',
    unit: 'per cent of light',
    says: 'how deep the hollows of a crinkled surface look, folds and veins left out',
  },
] as const;

export type MeasureId = (typeof MEASURES)[number]['id'];

/** A measured value with its standard error, both in the unit of its measure. */
export interface Measured {
  readonly value: number;
  readonly se: number;
}

/** What could be measured. A measure that could not be taken is absent, never zero. */
export type Measures = { readonly [Id in MeasureId]?: Measured };
