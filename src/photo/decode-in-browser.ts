import { inspectFile } from './inspect-file.ts';
import { type DecodedPhoto, PhotoError } from './types.ts';

/**
 * Picture file → upright, opaque 8-bit sRGB pixels at full size, in a browser's worker. The browser turns the picture as
 * its file says and brings embedded profiles to sRGB; transparency is laid on white.
 * @throws PhotoError as `inspectFile`; `format-unreadable` when this browser lacks the format, `broken-picture` when
 * decoding fails.
 */
export async function decodeInBrowser(file: Blob): Promise<DecodedPhoto> {
  const { format, takenAt } = await inspectFile(new Uint8Array(await file.arrayBuffer()));
  const bitmap = await openBitmap(file, format);
  try {
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d', { willReadFrequently: true, colorSpace: 'srgb' });
    if (context === null) throw new PhotoError('too-large');
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, bitmap.width, bitmap.height);
    context.drawImage(bitmap, 0, 0);
    const { width, height, data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
    const pixels = { width, height, data: data as Uint8ClampedArray };
    return takenAt === undefined ? { pixels } : { pixels, takenAt };
  } finally {
    bitmap.close();
  }
}

/** JPEG and PNG are read by every browser, so there a failure means the file; elsewhere it may be the format. */
async function openBitmap(file: Blob, format: string): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch (cause) {
    throw new PhotoError(format === 'jpg' || format === 'png' ? 'broken-picture' : 'format-unreadable', {
      cause,
    });
  }
}
