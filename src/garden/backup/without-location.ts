import { blankHeif } from './blank-heif.ts';
import { asciiAt } from './bytes-of-file.ts';
import { stripGif } from './strip-gif.ts';
import { stripJpeg } from './strip-jpeg.ts';
import { stripPng } from './strip-png.ts';
import { stripWebp } from './strip-webp.ts';

/**
 * A picture file without the place where it was taken, and without any other note but date and orientation; its pixels are
 * untouched, nothing is coded anew. What may stay is listed, so a corner that nobody thought of goes too.
 * @returns `undefined` where the place cannot be taken out for certain: a kind of file that is not known, or built strangely
 */
export function withoutLocation(file: Uint8Array): Uint8Array<ArrayBuffer> | undefined {
  if (file[0] === 0xff && file[1] === 0xd8) return stripJpeg(file);
  if (asciiAt(file, 1, 'PNG\r\n')) return stripPng(file);
  if (asciiAt(file, 0, 'RIFF') && asciiAt(file, 8, 'WEBP')) return stripWebp(file);
  if (asciiAt(file, 0, 'GIF8')) return stripGif(file);
  if (asciiAt(file, 4, 'ftyp')) return blankHeif(file);
  return undefined;
}
