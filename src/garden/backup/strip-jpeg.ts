import { asciiAt, bytesOf, joined, viewOf } from './bytes-of-file.ts';
import { shortExif } from './short-exif.ts';

/** Markers by their second byte (ITU-T T.81, table B.1). */
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
const isApplication = (marker: number): boolean => marker >= 0xe0 && marker <= 0xef;
const EXIF = 'Exif\0\0';
/** What an application part may hold that is needed to show the picture in its colours. */
const KEPT: Readonly<Record<number, readonly string[]>> = {
  224: ['JFIF\0'],
  226: ['ICC_PROFILE\0'],
  238: ['Adobe'],
};

/**
 * A JPEG with nothing in it but the picture, its colours, which way up it is and when it was taken. Comments, XMP, IPTC, maker's
 * parts and whatever comes after the end (further pictures, films) are left out. The coded picture is copied as it is.
 * @returns `undefined` where no picture was found in it
 */
export function stripJpeg(file: Uint8Array): Uint8Array<ArrayBuffer> | undefined {
  const view = viewOf(file);
  const parts: Uint8Array[] = [file.subarray(0, 2)];
  let hasExif = false;
  let hasPicture = false;
  let at = 2;
  while (at + 2 <= file.length) {
    if (file[at] !== 0xff) break;
    const marker = file[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === END_OF_IMAGE) {
      parts.push(file.subarray(at, at + 2));
      break;
    }
    if (at + 4 > file.length) break;
    const end = at + 2 + view.getUint16(at + 2);
    const part = file.subarray(at, end);
    if (marker === 0xe1 && !hasExif && asciiAt(file, at + 4, EXIF)) {
      const exif = shortExif(part.subarray(4 + EXIF.length));
      if (exif.length > 0) parts.push(exifPart(exif));
      hasExif = true;
    } else if (isApplication(marker)) {
      if (KEPT[marker]?.some((word) => asciiAt(file, at + 4, word))) parts.push(part);
    } else if (marker !== COMMENT) parts.push(part);
    at = end;
    if (marker !== START_OF_SCAN) continue;
    hasPicture = true;
    const coded = endOfScan(file, at);
    parts.push(file.subarray(at, coded));
    at = coded;
  }
  return hasPicture ? joined(parts) : undefined;
}

function exifPart(exif: Uint8Array): Uint8Array {
  const length = 2 + EXIF.length + exif.length;
  return joined([Uint8Array.of(0xff, 0xe1, length >> 8, length & 0xff), bytesOf(EXIF), exif]);
}

/** Where the coded lines end: the next marker that is neither a stuffed zero nor a restart (T.81, B.1.1.5). */
function endOfScan(file: Uint8Array, from: number): number {
  for (let at = file.indexOf(0xff, from); at !== -1; at = file.indexOf(0xff, at + 1)) {
    const next = file[at + 1];
    if (next !== undefined && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return file.length;
}
