/**
 * Renders the leaves of the invented garden, takes each as a JPEG and reads that as any photo is read. Run by the build in Node
 * (`ensureDemoPhotos`), because it takes longer than anyone would wait at the bed; the file to write is the one argument.
 */
import { writeFileSync } from 'node:fs';
import sharp from 'sharp';
import { renderPhoto } from '../../../../training/rendered-leaves/render-photo.ts';
import { readLeaf } from '../../../leaf/read-leaf.ts';
import { decodeInNode } from '../../../photo/decode-in-node.ts';
import { type InventedPhoto, listPhotos } from '../list-photos.ts';
import type { SeenPhoto } from '../seen-photo.ts';

/** The picture as a file, and what `readLeaf` read off that very file. */
export async function seePhoto({ id, role, picture }: InventedPhoto): Promise<SeenPhoto> {
  const { width, height, data } = renderPhoto({ ...picture, plain: true }).pixels;
  const jpeg = await sharp(data, { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .jpeg({ quality: 85, mozjpeg: true })
    .toBuffer();
  const { pixels } = await decodeInNode(jpeg);
  return { id, jpeg: jpeg.toString('base64'), reading: readLeaf(pixels, { role }).reading };
}

const [, script = '', target] = process.argv;
if (target && import.meta.url.endsWith(script.replaceAll('\\', '/'))) {
  const seen: SeenPhoto[] = [];
  for (const photo of listPhotos()) seen.push(await seePhoto(photo));
  writeFileSync(target, JSON.stringify(seen));
}
