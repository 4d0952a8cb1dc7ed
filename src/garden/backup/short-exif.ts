import { viewOf } from './bytes-of-file.ts';

/** Tags that are kept (CIPA DC-008 / Exif 2.32, 4.6.4 to 4.6.6): which way up, and when the photo was taken. */
const ORIENTATION = 0x0112;
const EXIF_DIRECTORY = 0x8769;
const TAKEN: readonly number[] = [0x9003, 0x9004];
const [ASCII, SHORT, LONG] = [2, 3, 4];
const ENTRY_BYTES = 12;
const HEADER_BYTES = 8;
/** `YYYY:MM:DD HH:MM:SS` and a zero. */
const DATE_BYTES = 20;

interface Told {
  readonly orientation?: number;
  readonly taken: readonly (readonly [tag: number, date: string])[];
}

/**
 * A TIFF block of Exif (TIFF 6.0, section 2) written anew with nothing in it but orientation and the dates of taking, so that
 * no place can be left in any corner of it: GPS, maker's notes, names, the small picture. Empty where neither is told.
 */
export function shortExif(tiff: Uint8Array): Uint8Array<ArrayBuffer> {
  return writeExif(readExif(viewOf(tiff)));
}

/** What a block says; a damaged one says what can be read before the damage. */
function readExif(tiff: DataView): Told {
  let orientation: number | undefined;
  const taken: [number, string][] = [];
  try {
    const little = tiff.getUint16(0) === 0x4949;
    for (const at of entriesAt(tiff, tiff.getUint32(4, little), little)) {
      const tag = tiff.getUint16(at, little);
      if (tag === ORIENTATION) {
        const turn = tiff.getUint16(at + 8, little);
        if (turn >= 1 && turn <= 8) orientation = turn;
      }
      if (tag !== EXIF_DIRECTORY) continue;
      for (const inner of entriesAt(tiff, tiff.getUint32(at + 8, little), little)) {
        const innerTag = tiff.getUint16(inner, little);
        if (!TAKEN.includes(innerTag)) continue;
        const date = readDate(tiff, tiff.getUint32(inner + 8, little));
        if (date) taken.push([innerTag, date]);
      }
    }
  } catch (cause) {
    if (!(cause instanceof RangeError)) throw cause;
  }
  return { taken, ...(orientation === undefined ? {} : { orientation }) };
}

function entriesAt(tiff: DataView, directory: number, little: boolean): number[] {
  const count = tiff.getUint16(directory, little);
  return Array.from({ length: count }, (_, index) => directory + 2 + index * ENTRY_BYTES);
}

/** The date that stands there; nothing else that may be written in its place. */
function readDate(tiff: DataView, at: number): string | undefined {
  const letters = Array.from({ length: DATE_BYTES - 1 }, (_, index) => tiff.getUint8(at + index));
  const date = String.fromCharCode(...letters);
  return /^\d{4}:\d\d:\d\d \d\d:\d\d:\d\d$/.test(date) ? date : undefined;
}

function writeExif({ orientation, taken }: Told): Uint8Array<ArrayBuffer> {
  if (orientation === undefined && taken.length === 0) return new Uint8Array();
  const first: (readonly [tag: number, type: number, count: number, value: number])[] = [];
  if (orientation !== undefined) first.push([ORIENTATION, SHORT, 1, orientation]);
  const sizeOf = (entries: number): number => 2 + entries * ENTRY_BYTES + 4;
  const inner = HEADER_BYTES + sizeOf(first.length + Math.sign(taken.length));
  if (taken.length > 0) first.push([EXIF_DIRECTORY, LONG, 1, inner]);
  const values = inner + (taken.length > 0 ? sizeOf(taken.length) : 0);
  const bytes = new Uint8Array(values + taken.length * DATE_BYTES);
  const view = new DataView(bytes.buffer);
  const putDirectory = (at: number, entries: typeof first): void => {
    view.setUint16(at, entries.length, true);
    entries.forEach(([tag, type, count, value], index) => {
      const entry = at + 2 + index * ENTRY_BYTES;
      view.setUint16(entry, tag, true);
      view.setUint16(entry + 2, type, true);
      view.setUint32(entry + 4, count, true);
      view.setUint32(entry + 8, value, true);
    });
  };
  bytes.set([0x49, 0x49, 42, 0, HEADER_BYTES]);
  putDirectory(HEADER_BYTES, first);
  if (taken.length > 0)
    putDirectory(
      inner,
      taken.map(([tag], index) => [tag, ASCII, DATE_BYTES, values + index * DATE_BYTES] as const),
    );
  taken.forEach(([, date], index) => {
    bytes.set(new TextEncoder().encode(date), values + index * DATE_BYTES);
  });
  return bytes;
}
