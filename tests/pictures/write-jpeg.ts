/** Drawn pictures as files, for tests of the decoders, of the commands and of the browser. */
import sharp from 'sharp';
import type { Pixels } from '../../src/photo/types.ts';

export interface JpegOptions {
  /** 1–100. Default 90. */
  readonly quality?: number;
  /** Local date and time written as EXIF `DateTimeOriginal`, ISO 8601 without zone: `2025-06-14T18:05:00`. */
  readonly takenAt?: string;
  /** EXIF orientation 1–8. The pixels are stored as given, the tag says how to turn them. */
  readonly orientation?: number;
}

/** Pixels → bytes of a JPEG file. */
export async function writeJpeg(pixels: Pixels, options: JpegOptions = {}): Promise<Uint8Array> {
  let image = sharp(Buffer.from(pixels.data.buffer, pixels.data.byteOffset, pixels.data.byteLength), {
    raw: { width: pixels.width, height: pixels.height, channels: 4 },
  })
    .removeAlpha()
    .jpeg({ quality: options.quality ?? 90 });
  if (options.takenAt !== undefined) {
    const stamp = `${options.takenAt.slice(0, 10).replaceAll('-', ':')} ${options.takenAt.slice(11, 19)}`;
    image = image.withExif({ IFD0: { DateTime: stamp }, IFD2: { DateTimeOriginal: stamp } });
  }
  if (options.orientation !== undefined) image = image.withMetadata({ orientation: options.orientation });
  return new Uint8Array(await image.toBuffer());
}

/** Pixels → bytes of a PNG file. */
export async function writePng(pixels: Pixels): Promise<Uint8Array> {
  const image = sharp(Buffer.from(pixels.data.buffer, pixels.data.byteOffset, pixels.data.byteLength), {
    raw: { width: pixels.width, height: pixels.height, channels: 4 },
  }).png();
  return new Uint8Array(await image.toBuffer());
}
