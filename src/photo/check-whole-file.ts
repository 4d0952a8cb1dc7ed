/**
 * Tells a whole JPEG, PNG or WebP file from one whose end is missing, from the file's own structure. Decoders disagree:
 * some raise, some fill the rest with grey, so this decides for both faces. Other formats are taken as whole.
 */
export function checkWholeFile(bytes: Uint8Array): boolean {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpegReachesEnd(bytes);
  if (bytes[0] === 0x89 && bytes[1] === 0x50) return pngReachesEnd(bytes);
  if (bytes[0] === 0x52 && bytes[1] === 0x49 && bytes[8] === 0x57) {
    return 8 + new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true) <= bytes.length;
  }
  return true;
}

/**
 * Walks the marker segments (ITU-T T.81, Annex B) to the first end-of-image marker of the first picture. Embedded
 * thumbnails lie inside segments and are jumped over; whatever follows the end (a motion clip, say) is ignored.
 */
function jpegReachesEnd(bytes: Uint8Array): boolean {
  let at = 2;
  while (at < bytes.length) {
    const mark = bytes.indexOf(0xff, at);
    if (mark < 0 || mark + 1 >= bytes.length) return false;
    const code = bytes[mark + 1]!;
    if (code === 0xd9) return true;
    if (code === 0xff) at = mark + 1;
    else if (code === 0x00 || (code >= 0xd0 && code <= 0xd8) || code === 0x01) at = mark + 2;
    else {
      if (mark + 3 >= bytes.length) return false;
      at = mark + 2 + bytes[mark + 2]! * 256 + bytes[mark + 3]!;
    }
  }
  return false;
}

/** Walks the chunks (ISO/IEC 15948) to `IEND`. */
function pngReachesEnd(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 8;
  while (at + 12 <= bytes.length) {
    const length = view.getUint32(at);
    if (view.getUint32(at + 4) === 0x49454e44) return true;
    at += 12 + length;
  }
  return false;
}
