import { joined, textAt } from './bytes-of-file.ts';

const HEADER_BYTES = 13;
const [EXTENSION, IMAGE, TRAILER] = [0x21, 0x2c, 0x3b];
const [GRAPHIC_CONTROL, APPLICATION] = [0xf9, 0xff];
/** How often a moving picture is repeated; other applications' parts (XMP is one) are left out. */
const KEPT = new Set(['NETSCAPE2.0', 'ANIMEXTS1.0']);

const tableBytes = (packed: number): number => ((packed & 0x80) === 0 ? 0 : 3 * 2 ** ((packed & 7) + 1));

/** A GIF (89a) without comments, texts, XMP and what comes after its end. */
export function stripGif(file: Uint8Array): Uint8Array<ArrayBuffer> {
  let at = HEADER_BYTES + tableBytes(file[10] ?? 0);
  const parts: Uint8Array[] = [file.subarray(0, at)];
  while (at < file.length) {
    const from = at;
    if (file[at] === EXTENSION) {
      const label = file[at + 1];
      at = afterBlocks(file, at + 2);
      const isKept =
        label === GRAPHIC_CONTROL || (label === APPLICATION && KEPT.has(textAt(file, from + 3, 11)));
      if (isKept) parts.push(file.subarray(from, at));
    } else if (file[at] === IMAGE) {
      at = afterBlocks(file, at + 11 + tableBytes(file[at + 9] ?? 0));
      parts.push(file.subarray(from, at));
    } else {
      if (file[at] === TRAILER) parts.push(Uint8Array.of(TRAILER));
      break;
    }
  }
  return joined(parts);
}

/** Where a row of blocks ends, each led by its length, the last one empty. */
function afterBlocks(file: Uint8Array, from: number): number {
  let at = from;
  while (at < file.length && file[at] !== 0) at += 1 + file[at]!;
  return Math.min(file.length, at + 1);
}
