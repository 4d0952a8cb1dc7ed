/// <reference path="./exifr-mini.d.ts" />
import { parse } from 'exifr/dist/mini.esm.mjs';
import { imageSize } from 'image-size';
import { checkWholeFile } from './check-whole-file.ts';
import { PhotoError } from './types.ts';

/** What a picture file says about itself before anything is decoded. Width and height are before turning. */
export interface FileFacts {
  readonly format: string;
  readonly width: number;
  readonly height: number;
  /** Local date and time it was taken, ISO 8601 without zone. */
  readonly takenAt?: string;
}

/** Above this a phone's memory is at risk: 4 bytes a pixel, twice. */
export const MOST_PIXELS = 64_000_000;
/** Below this no leaf can be told from its ground. */
export const LEAST_SIDE_PX = 32;

/** EXIF tags `DateTimeOriginal` and `DateTimeDigitized` by number: the small build carries no names (CIPA DC-008). */
const ORIGINAL = 0x9003;
const DIGITISED = 0x9004;

/** Formats that a browser and sharp both decode. */
const READABLE: readonly string[] = ['jpg', 'png', 'webp', 'gif', 'avif'];

/**
 * Reads the header of a picture file: both decoders call it first, so that both refuse the same files for the same reason.
 * @throws PhotoError `empty-file`, `not-a-picture`, `broken-picture`, `format-unreadable`, `too-large`, `too-small`.
 */
export async function inspectFile(bytes: Uint8Array): Promise<FileFacts> {
  if (bytes.length === 0) throw new PhotoError('empty-file');
  const { format, width, height } = readSize(bytes);
  if (!READABLE.includes(format)) throw new PhotoError('format-unreadable');
  if (width * height > MOST_PIXELS) throw new PhotoError('too-large');
  if (!checkWholeFile(bytes)) throw new PhotoError('broken-picture');
  if (Math.min(width, height) < LEAST_SIDE_PX) throw new PhotoError('too-small');
  const takenAt = await readTakenAt(bytes);
  return takenAt === undefined ? { format, width, height } : { format, width, height, takenAt };
}

function readSize(bytes: Uint8Array): { format: string; width: number; height: number } {
  try {
    const { type, width, height } = imageSize(bytes);
    const format = type ?? '';
    // A drawing without a stated size is none of our formats either way; anything else without one is broken.
    if (!(width > 0 && height > 0) && READABLE.includes(format)) throw new PhotoError('broken-picture');
    return { format, width, height };
  } catch (cause) {
    if (cause instanceof PhotoError) throw cause;
    throw new PhotoError(startsLikePicture(bytes) ? 'broken-picture' : 'not-a-picture', { cause });
  }
}

/** First bytes of JPEG, PNG, GIF, WebP and of the HEIF family: the file set out to be a picture. */
function startsLikePicture(bytes: Uint8Array): boolean {
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  return (
    (bytes[0] === 0xff && bytes[1] === 0xd8) ||
    text(1, 4) === 'PNG' ||
    text(0, 4) === 'GIF8' ||
    (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') ||
    (text(4, 8) === 'ftyp' && /^(heic|heix|mif1|msf1|avif)/.test(text(8, 12)))
  );
}

/** A date that cannot be read is no reason to refuse the photo. */
async function readTakenAt(bytes: Uint8Array): Promise<string | undefined> {
  try {
    const tags = await parse(bytes, {
      exif: [ORIGINAL, DIGITISED],
      reviveValues: false,
      translateKeys: false,
    });
    const stamp = tags?.[ORIGINAL] ?? tags?.[DIGITISED];
    if (typeof stamp !== 'string') return undefined;
    const parts = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)/.exec(stamp);
    if (parts === null || parts[1] === '0000') return undefined;
    return `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}`;
  } catch {
    return undefined;
  }
}
