import { mkdir, readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import sharp from 'sharp';
import { readLeaf } from '../leaf/read-leaf.ts';
import type { LeafAnalysis, LeafReading, Mask } from '../leaf/types.ts';
import { decodeInNode } from '../photo/decode-in-node.ts';
import { PhotoError, type PhotoRole, type PhotoTrouble } from '../photo/types.ts';

/** A file that could not be opened at all; the other troubles are the photo's own. */
export type FileTrouble = PhotoTrouble | 'file-not-found';

/** A reading from a file; `trouble` may also say that there is no such file. */
export type FileReading = Omit<LeafReading, 'trouble'> & { readonly trouble: readonly FileTrouble[] };

const unreadable = (file: string, role: PhotoRole, trouble: FileTrouble): FileReading => ({
  role,
  file,
  trouble: [trouble],
  leaf: { found: false },
  measures: {},
});

/**
 * Read one photo file. Never throws for a bad file: what is wrong with it is in `trouble`.
 * @param maskDirectory where to write the mask as PNG named after the photo (255 = leaf), if anywhere
 */
export async function readPhotoFile(
  file: string,
  role: PhotoRole,
  maskDirectory?: string,
): Promise<FileReading> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(file);
  } catch {
    return unreadable(file, role, 'file-not-found');
  }
  try {
    const { pixels, takenAt } = await decodeInNode(bytes);
    const analysis = readLeaf(pixels, { role, file, ...(takenAt === undefined ? {} : { takenAt }) });
    if (maskDirectory !== undefined) await writeMask(analysis, pixels, join(maskDirectory, maskName(file)));
    return analysis.reading;
  } catch (error) {
    if (error instanceof PhotoError) return unreadable(file, role, error.code);
    throw error;
  }
}

/** `leaf.jpg` gives `leaf.png`. */
export function maskName(file: string): string {
  return `${basename(file, extname(file))}.png`;
}

/** Write the mask at the size of the photo itself, so that it lies on the photo pixel by pixel. */
async function writeMask(
  { mask, width, height }: LeafAnalysis,
  photo: { readonly width: number; readonly height: number },
  path: string,
): Promise<void> {
  const shown: Mask = mask ?? { width, height, data: new Uint8Array(width * height) };
  const raw = { width: shown.width, height: shown.height, channels: 1 as const };
  await mkdir(join(path, '..'), { recursive: true });
  const { data, info } = await sharp(shown.data, { raw })
    .resize(photo.width, photo.height, { kernel: 'linear', fit: 'fill' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  // Scaled edges are grey: back to the two values that a mask has. sharp may widen one channel to three.
  const mono = new Uint8Array(info.width * info.height);
  for (let i = 0; i < mono.length; i++) mono[i] = data[i * info.channels]! >= 128 ? 255 : 0;
  await sharp(mono, { raw: { width: info.width, height: info.height, channels: 1 } })
    .toColourspace('b-w')
    .png()
    .toFile(path);
}
