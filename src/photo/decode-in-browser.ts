import { inspectFile } from './inspect-file.ts';
import { createBoxScaler, sizeOfWorkingFrame } from './scale-to-working-frame.ts';
import { type DecodedPhoto, PhotoError, type Pixels } from './types.ts';

/**
 * Picture file → upright, opaque 8-bit sRGB pixels of the working frame, in a browser's worker. The browser turns the
 * picture as its file says and brings embedded profiles to sRGB; transparency is laid on white. Pixels of full size are
 * read a band at a time, so that they are held once, by the browser, and not three times over.
 * @throws PhotoError as `inspectFile`; `format-unreadable` when this browser lacks the format, `broken-picture` when
 * decoding fails.
 */
export async function decodeInBrowser(file: Blob): Promise<DecodedPhoto> {
  const { format, takenAt } = await inspectFile(new Uint8Array(await file.arrayBuffer()));
  const bitmap = await openBitmap(file, format);
  try {
    const pixels = readWorkingFrame(bitmap);
    return takenAt === undefined ? { pixels } : { pixels, takenAt };
  } finally {
    bitmap.close();
  }
}

/** Pixels read at a time: 4 MB of them. */
const BAND_PX = 1_000_000;

function readWorkingFrame(bitmap: ImageBitmap): Pixels {
  const size = sizeOfWorkingFrame(bitmap);
  const scaler = createBoxScaler(bitmap, size);
  const bandRows = Math.max(1, Math.floor((BAND_PX / bitmap.width / bitmap.height) * size.height));
  const most = Math.min(bitmap.height, Math.ceil((bandRows * bitmap.height) / size.height) + 2);
  const canvas = new OffscreenCanvas(bitmap.width, most);
  const context = canvas.getContext('2d', { willReadFrequently: true, colorSpace: 'srgb' });
  if (context === null) throw new PhotoError('too-large');
  context.fillStyle = '#ffffff';
  for (let from = 0; from < size.height; from += bandRows) {
    const to = Math.min(size.height, from + bandRows);
    const rows = scaler.rowsFor(from, to);
    context.fillRect(0, 0, bitmap.width, most);
    context.drawImage(bitmap, 0, -rows.from);
    const { data } = context.getImageData(0, 0, bitmap.width, rows.to - rows.from);
    scaler.scaleBand(data as Uint8ClampedArray, rows.from, from, to);
  }
  return { ...size, data: scaler.data };
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
