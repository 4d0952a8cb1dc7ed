import sharp from 'sharp';
import { inspectFile, MOST_PIXELS } from './inspect-file.ts';
import { type DecodedPhoto, PhotoError } from './types.ts';

/**
 * Picture file → upright, opaque 8-bit sRGB pixels at full size, in Node. Embedded profiles, CMYK, grey and 16 bits are
 * brought to sRGB; transparency is laid on white.
 * @throws PhotoError as `inspectFile`, and `broken-picture` when decoding fails.
 */
export async function decodeInNode(bytes: Uint8Array): Promise<DecodedPhoto> {
  const { takenAt } = await inspectFile(bytes);
  try {
    const { data, info } = await sharp(bytes, { failOn: 'error', limitInputPixels: MOST_PIXELS })
      .autoOrient()
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .ensureAlpha()
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    if (info.channels !== 4) throw new Error(`expected 4 channels, got ${info.channels}`);
    const pixels = {
      width: info.width,
      height: info.height,
      data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.byteLength),
    };
    return takenAt === undefined ? { pixels } : { pixels, takenAt };
  } catch (cause) {
    throw new PhotoError('broken-picture', { cause });
  }
}
