import { bytesOf, joined, textAt, viewOf } from './bytes-of-file.ts';
import { shortExif } from './short-exif.ts';

const SIGNATURE_BYTES = 8;
/** Chunks besides the critical ones that the picture and its colours need (PNG, third edition, 11.3). */
const KEPT = new Set(
  'tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI pHYs bKGD hIST sPLT acTL fcTL fdAT'.split(' '),
);

/** A PNG without texts, XMP, times, unknown chunks and what comes after its end; of Exif only orientation and date. */
export function stripPng(file: Uint8Array): Uint8Array<ArrayBuffer> {
  const view = viewOf(file);
  const parts: Uint8Array[] = [file.subarray(0, SIGNATURE_BYTES)];
  let at = SIGNATURE_BYTES;
  while (at + 12 <= file.length) {
    const end = at + 12 + view.getUint32(at);
    const kind = textAt(file, at + 4, 4);
    if (kind === 'eXIf') {
      const exif = shortExif(file.subarray(at + 8, end - 4));
      if (exif.length > 0) parts.push(chunkOf(kind, exif));
    } else if (/^[A-Z]/.test(kind) || KEPT.has(kind)) parts.push(file.subarray(at, end));
    at = end;
    if (kind === 'IEND') break;
  }
  return joined(parts);
}

function chunkOf(kind: string, content: Uint8Array): Uint8Array {
  const checked = joined([bytesOf(kind), content]);
  const chunk = joined([new Uint8Array(4), checked, new Uint8Array(4)]);
  const view = viewOf(chunk);
  view.setUint32(0, content.length);
  view.setUint32(chunk.length - 4, checkSum(checked));
  return chunk;
}

/** CRC-32 as PNG has it (annex D). */
function checkSum(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum & 1) === 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return ~sum >>> 0;
}
