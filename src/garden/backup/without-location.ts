/** Tag of the directory that holds where a photo was taken (Exif 2.3, 4.6.3). */
const GPS_DIRECTORY = 0x8825;
const APP1 = 0xe1;
const START_OF_SCAN = 0xda;
const ENTRY_BYTES = 12;
/** Bytes of one value by type (TIFF 6.0, section 2). */
const TYPE_BYTES: readonly number[] = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8];

const asciiAt = (bytes: Uint8Array, at: number, word: string): boolean =>
  [...word].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

/**
 * A JPEG without the place where it was taken: the GPS directory of its Exif part is blanked, XMP parts, which may repeat it,
 * are blanked whole. Date and orientation stay, and so does every pixel. Other formats come back as they are.
 */
export function withoutLocation(file: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  if (file[0] !== 0xff || file[1] !== 0xd8) return file;
  const bytes = file.slice();
  const view = new DataView(bytes.buffer);
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff && bytes[at + 1] !== START_OF_SCAN) {
    const length = view.getUint16(at + 2);
    const end = Math.min(bytes.length, at + 2 + length);
    if (bytes[at + 1] === APP1) {
      if (asciiAt(bytes, at + 4, 'Exif\0\0'))
        blankGps(new DataView(bytes.buffer, at + 10, Math.max(0, end - at - 10)));
      else bytes.fill(0x20, Math.min(end, at + 4), end);
    }
    at += 2 + length;
  }
  return bytes;
}

/** Blanks the GPS directory of a TIFF block in place; a block that is damaged is left from there on. */
function blankGps(tiff: DataView): void {
  try {
    const little = tiff.getUint16(0) === 0x4949;
    const gps = entriesAt(tiff, tiff.getUint32(4, little), little).find(
      (at) => tiff.getUint16(at, little) === GPS_DIRECTORY,
    );
    if (gps === undefined) return;
    const directory = tiff.getUint32(gps + 8, little);
    for (const at of entriesAt(tiff, directory, little)) {
      const size = (TYPE_BYTES[tiff.getUint16(at + 2, little)] ?? 0) * tiff.getUint32(at + 4, little);
      if (size > 4) blank(tiff, tiff.getUint32(at + 8, little), size);
      blank(tiff, at, ENTRY_BYTES);
    }
    tiff.setUint16(directory, 0, little);
  } catch (cause) {
    if (!(cause instanceof RangeError)) throw cause;
  }
}

function entriesAt(tiff: DataView, directory: number, little: boolean): number[] {
  const count = tiff.getUint16(directory, little);
  return Array.from({ length: count }, (_, index) => directory + 2 + index * ENTRY_BYTES);
}

function blank(tiff: DataView, from: number, length: number): void {
  for (let at = from; at < Math.min(tiff.byteLength, from + length); at++) tiff.setUint8(at, 0);
}
