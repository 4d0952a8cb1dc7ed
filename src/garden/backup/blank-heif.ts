import { textAt, viewOf } from './bytes-of-file.ts';
import { shortExif } from './short-exif.ts';

/** Kinds of items that are picture (ISO/IEC 23008-12); they hold coded picture only. */
const PICTURE_ITEMS = new Set(['hvc1', 'av01', 'avc1', 'vvc1', 'grid', 'iovl', 'iden', 'tmap']);
/** Boxes that say how the picture is put together and cannot hold a place. */
const TOP_BOXES = new Set(['ftyp', 'meta', 'mdat']);
const META_BOXES = new Set(['hdlr', 'pitm', 'iinf', 'iloc', 'iprp', 'iref', 'idat', 'dinf', 'grpl']);
/** Padding, and boxes of others' own: emptied. */
const EMPTIED_BOXES = new Set(['free', 'skip', 'uuid']);

/** Thrown where the file is built in a way that is not understood here. */
class NotUnderstood extends Error {}

interface Box {
  readonly kind: string;
  /** First byte of the content, and the one after the last. */
  readonly from: number;
  readonly to: number;
}

/**
 * An AVIF or HEIC without place: its Exif is written anew with date and orientation only, its XMP and padding are blanked, all in place, so
 * that every offset still holds and the coded picture is untouched. `undefined` where anything in it is not understood.
 */
export function blankHeif(file: Uint8Array): Uint8Array<ArrayBuffer> | undefined {
  const bytes = new Uint8Array(file);
  try {
    const view = viewOf(bytes);
    const boxes = boxesIn(view, 0, bytes.length);
    const metas = boxes.filter(({ kind }) => kind === 'meta');
    if (metas.length !== 1) return undefined;
    emptyOthers(bytes, boxes, TOP_BOXES);
    blankNotes(bytes, view, metas[0]!);
    return bytes;
  } catch (cause) {
    if (cause instanceof NotUnderstood || cause instanceof RangeError) return undefined;
    throw cause;
  }
}

function boxesIn(view: DataView, from: number, to: number): Box[] {
  const boxes: Box[] = [];
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  for (let at = from; at < to; ) {
    const said = view.getUint32(at);
    const isLong = said === 1;
    const size = isLong ? Number(view.getBigUint64(at + 8)) : said === 0 ? to - at : said;
    const content = at + (isLong ? 16 : 8);
    if (at + size > to || at + size < content) throw new NotUnderstood();
    boxes.push({ kind: textAt(bytes, at + 4, 4), from: content, to: at + size });
    at += size;
  }
  return boxes;
}

function emptyOthers(bytes: Uint8Array, boxes: readonly Box[], known: ReadonlySet<string>): void {
  for (const { kind, from, to } of boxes) {
    if (known.has(kind)) continue;
    if (!EMPTIED_BOXES.has(kind)) throw new NotUnderstood();
    bytes.fill(0, from, to);
  }
}

/** Blanks the items of a `meta` box that are notes, not picture. */
function blankNotes(bytes: Uint8Array, view: DataView, meta: Box): void {
  const boxes = boxesIn(view, meta.from + 4, meta.to);
  emptyOthers(bytes, boxes, META_BOXES);
  const find = (kind: string): Box => {
    const found = boxes.filter((box) => box.kind === kind);
    if (found.length !== 1) throw new NotUnderstood();
    return found[0]!;
  };
  const kinds = itemKinds(view, find('iinf'));
  const places = itemPlaces(view, find('iloc'), boxes.find(({ kind }) => kind === 'idat')?.from);
  for (const [id, kind] of kinds) {
    if (PICTURE_ITEMS.has(kind)) continue;
    if (kind !== 'Exif' && kind !== 'mime' && kind !== 'uri ') throw new NotUnderstood();
    const extents = places.get(id);
    if (!extents) throw new NotUnderstood();
    const exif = kind === 'Exif' && extents.length === 1 ? exifIn(bytes, view, extents[0]!) : undefined;
    for (const [from, to] of extents) bytes.fill(kind === 'mime' ? 0x20 : 0, from, to);
    // Four bytes say how far the block lies from here: nought.
    if (exif && extents[0]![0] + 4 + exif.length <= extents[0]![1]) bytes.set(exif, extents[0]![0] + 4);
  }
}

type Extent = readonly [from: number, to: number];

function exifIn(bytes: Uint8Array, view: DataView, [from, to]: Extent): Uint8Array | undefined {
  if (to - from < 12) return undefined;
  const start = from + 4 + view.getUint32(from);
  return start < to ? shortExif(bytes.slice(start, to)) : undefined;
}

/** The kind of every item by its id (`infe` of version 2 and 3). */
function itemKinds(view: DataView, iinf: Box): Map<number, string> {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  const first = iinf.from + 4 + (view.getUint8(iinf.from) === 0 ? 2 : 4);
  const kinds = new Map<number, string>();
  for (const { kind, from } of boxesIn(view, first, iinf.to)) {
    const version = view.getUint8(from);
    if (kind !== 'infe' || (version !== 2 && version !== 3)) throw new NotUnderstood();
    const isLong = version === 3;
    const id = isLong ? view.getUint32(from + 4) : view.getUint16(from + 4);
    kinds.set(id, textAt(bytes, from + (isLong ? 10 : 8), 4));
  }
  return kinds;
}

/** Where the bytes of every item lie in the file (`iloc` of version 0 to 2). */
function itemPlaces(view: DataView, iloc: Box, idat: number | undefined): Map<number, Extent[]> {
  let at = iloc.from;
  const take = (size: number): number => {
    const value =
      size === 0
        ? 0
        : size === 2
          ? view.getUint16(at)
          : size === 4
            ? view.getUint32(at)
            : size === 8
              ? Number(view.getBigUint64(at))
              : undefined;
    if (value === undefined) throw new NotUnderstood();
    at += size;
    return value;
  };
  const version = view.getUint8(at);
  if (version > 2) throw new NotUnderstood();
  at += 4;
  const sizes = take(2);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexSize = version === 0 ? 0 : sizes & 15;
  const idSize = version === 2 ? 4 : 2;
  const places = new Map<number, Extent[]>();
  for (let left = take(idSize); left > 0; left--) {
    const id = take(idSize);
    const method = version === 0 ? 0 : take(2) & 15;
    if (take(2) !== 0 || method > 1 || (method === 1 && idat === undefined)) throw new NotUnderstood();
    const base = take(baseSize) + (method === 1 ? idat! : 0);
    const extents: Extent[] = [];
    for (let more = take(2); more > 0; more--) {
      take(indexSize);
      const from = base + take(offsetSize);
      const length = take(lengthSize);
      if (length === 0 || from + length > view.byteLength) throw new NotUnderstood();
      extents.push([from, from + length]);
    }
    places.set(id, extents);
  }
  return places;
}
