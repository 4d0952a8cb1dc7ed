import { asciiAt, bytesOf, joined, textAt, viewOf } from './bytes-of-file.ts';
import { shortExif } from './short-exif.ts';

const HEADER_BYTES = 12;
/** Chunks that the picture needs (RFC 9649, 2.7). */
const KEPT = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);
/** Bits of the first byte of `VP8X` that say that there is Exif, XMP. */
const [HAS_EXIF, HAS_XMP] = [0x08, 0x04];
const LEGACY_PREFIX = 'Exif\0\0';

/** A WebP without XMP, unknown chunks and what comes after its end; of Exif only orientation and date. */
export function stripWebp(file: Uint8Array): Uint8Array<ArrayBuffer> {
  const view = viewOf(file);
  const parts: Uint8Array[] = [];
  let hasExif = false;
  const last = Math.min(file.length, 8 + view.getUint32(4, true));
  let at = HEADER_BYTES;
  while (at + 8 <= last) {
    const kind = textAt(file, at, 4);
    const size = view.getUint32(at + 4, true);
    const end = at + 8 + size + (size % 2);
    if (KEPT.has(kind)) parts.push(file.slice(at, Math.min(end, last)));
    if (kind === 'EXIF' && !hasExif) {
      const prefix = asciiAt(file, at + 8, LEGACY_PREFIX) ? LEGACY_PREFIX.length : 0;
      const exif = shortExif(file.subarray(at + 8 + prefix, Math.min(last, at + 8 + size)));
      hasExif = exif.length > 0;
      if (hasExif) parts.push(chunkOf(kind, exif));
    }
    at = end;
  }
  for (const part of parts)
    if (asciiAt(part, 0, 'VP8X') && part.length > 8)
      part[8] = (part[8]! & ~(HAS_EXIF | HAS_XMP)) | (hasExif ? HAS_EXIF : 0);
  const whole = joined([file.subarray(0, HEADER_BYTES), ...parts]);
  viewOf(whole).setUint32(4, whole.length - 8, true);
  return whole;
}

function chunkOf(kind: string, content: Uint8Array): Uint8Array {
  const chunk = joined([bytesOf(kind), new Uint8Array(4), content, new Uint8Array(content.length % 2)]);
  viewOf(chunk).setUint32(4, content.length, true);
  return chunk;
}
