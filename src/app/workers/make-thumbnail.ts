import type { Pixels } from '../../photo/types.ts';

const LONGEST_SIDE_PX = 480;
const JPEG_QUALITY = 0.82;

/**
 * A small copy for lists, made of the working frame so that the file need not be decoded again; without the file's own
 * notes, so without place. `undefined` where it cannot be made.
 */
export async function makeThumbnail(frame: Pixels): Promise<Blob | undefined> {
  try {
    const whole = new OffscreenCanvas(frame.width, frame.height);
    const pixels = new ImageData(frame.data as Uint8ClampedArray<ArrayBuffer>, frame.width, frame.height);
    whole.getContext('2d')?.putImageData(pixels, 0, 0);
    const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(frame.width, frame.height));
    const width = Math.max(1, Math.round(frame.width * scale));
    const height = Math.max(1, Math.round(frame.height * scale));
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d');
    if (!context) return undefined;
    context.imageSmoothingQuality = 'high';
    context.drawImage(whole, 0, 0, width, height);
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY });
  } catch {
    return undefined;
  }
}
