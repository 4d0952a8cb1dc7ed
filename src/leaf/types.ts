import type { PhotoRole, PhotoTrouble, Spot } from '../photo/types.ts';
import type { Measures } from './measures.ts';

/** One byte a pixel of the working frame; 255 = belongs, 0 = does not. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What each pixel of the leaf was judged to be; index into the bytes of `TissueMap.data`. */
export const TISSUES = [
  'outside',
  'healthy',
  'chlorotic',
  'necrotic',
  'purple',
  'white',
  'missing',
  'vein',
] as const;
export type Tissue = (typeof TISSUES)[number];

/** One tissue index a pixel of the working frame, for the overlay: what was measured where. */
export interface TissueMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What the person told the camera by tapping. */
export interface Taps {
  /** Where the leaf is; without it the centre is tried, then the largest leaf-like region. */
  readonly leaf?: Spot;
  /** Places that belong to the leaf, or do not, after the first outline. */
  readonly add?: readonly Spot[];
  readonly remove?: readonly Spot[];
  /** A thing that is white or grey in life. */
  readonly white?: Spot;
}

/** How the colour of the light was settled. `se` is the error of the illuminant in CIELAB units of a mid grey. */
export interface WhiteReference {
  readonly from: 'tapped' | 'found' | 'estimated';
  /** Multipliers of linear R, G, B (green = 1). */
  readonly gains: readonly [number, number, number];
  readonly se: number;
  /** Multiplier of brightness, where the leaf lies on a sheet: lightness and dark green are then reflectances. */
  readonly exposure?: number;
  /** Multiplier of brightness guessed from the ground, where no sheet tells: lightness and chroma are brought to it. */
  readonly guessedExposure?: number;
}

/** What could be told from one photo. Plain data: it crosses the worker boundary and is stored with the case. */
export interface LeafReading {
  readonly role: PhotoRole;
  /** Name of the file, if it had one. */
  readonly file?: string;
  readonly takenAt?: string;
  readonly trouble: readonly PhotoTrouble[];
  readonly leaf: {
    readonly found: boolean;
    /** Outline of the leaf as a closed polygon of spots (fractions of the frame), for drawing. */
    readonly outline?: readonly Spot[];
  };
  readonly white?: WhiteReference;
  readonly measures: Measures;
}

/** A reading together with its rasters, which are shown but not kept. */
export interface LeafAnalysis {
  readonly reading: LeafReading;
  /** Size of the working frame: longest side 1,024 px or the photo's own if smaller. */
  readonly width: number;
  readonly height: number;
  readonly mask?: Mask;
  readonly tissues?: TissueMap;
}
