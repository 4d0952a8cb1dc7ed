/**
 * Shared types of the photo step: a file becomes calibrated pixels. Nothing here knows the DOM or Node; the two
 * decoders (`decode-in-browser.ts`, `decode-in-node.ts`) are the only files of this folder that do.
 */

/** Which leaf or view a photo was taken as. */
export type PhotoRole = 'old' | 'new' | 'whole' | 'normal';

/** An sRGB picture, row by row, 4 bytes a pixel (R, G, B, A); upright, opaque (transparency laid on white). */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** A place in the picture as fractions of its width and height, 0–1 from the top left: holds at every scale. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What is wrong with a photo. The app owns the sentence that says what to do. */
export const PHOTO_TROUBLES = [
  'empty-file',
  'not-a-picture',
  'broken-picture',
  'format-unreadable',
  'too-large',
  'too-small',
  'too-dark',
  'burnt-out',
  'too-blurred',
  'no-leaf',
  'leaf-too-small',
] as const;
export type PhotoTrouble = (typeof PHOTO_TROUBLES)[number];

/** Thrown by the decoders. `code` survives the worker boundary, the message does not. */
export class PhotoError extends Error {
  override readonly name = 'PhotoError';
  constructor(
    readonly code: PhotoTrouble,
    options?: { cause?: unknown },
  ) {
    super(`photo cannot be used: ${code}`, options);
  }
}

/** A decoded photo: pixels at full size or of the working frame (each decoder says which), and the moment it was taken where the file says so (local time, ISO 8601). */
export interface DecodedPhoto {
  readonly pixels: Pixels;
  readonly takenAt?: string;
}
