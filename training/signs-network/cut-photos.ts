/**
 * Writes the crops that `train.py` learns from: the leaf in the middle of each labelled photograph, outlined by the camera and
 * cut out as `src/classifier/` does. Goes on where it was broken off. With a share it does only its part, so that several
 * processes can work side by side; the last of them (or a run without a share) packs them.
 *
 *     npx tsx training/signs-network/cut-photos.ts [FOLDER] [SHARE/SHARES]
 *
 * FOLDER gets `crops/` (one JPEG and one PNG a photograph) and `photos.jsonl`: set, label, file, group, whether it was cut, and what the
 * camera measured, so that the two can be compared.
 */
import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { cutCrop } from '../../src/classifier/cut-crop.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../src/photo/scale-to-working-frame.ts';
import { listPhotos, PHOTOS } from '../list-photos.ts';

/** Larger than the network sees, so that turning and scaling cost no detail. */
const SIDE_PX = 224;
const folder = process.argv[2] ?? '.cache/signs-network';
const [share, shares] = (process.argv[3] ?? '0/1').split('/').map(Number) as [number, number];
mkdirSync(join(folder, 'crops'), { recursive: true });
const nameOf = (file: string): string => file.replaceAll('/', '--').replace(/\.[a-zA-Z]+$/, '');

const rows = listPhotos().filter(({ file }) => !/mask/i.test(file));
for (const [k, row] of rows.entries()) {
  const path = join(folder, 'crops', nameOf(row.file));
  if (k % shares !== share || existsSync(`${path}.json`)) continue;
  const frame = scaleToWorkingFrame((await decodeInNode(readFileSync(PHOTOS + row.file))).pixels);
  const analysis = readLeaf(frame, { role: 'old', taps: { leaf: { x: 0.5, y: 0.5 } } });
  // What is no leaf is shown whole: the network must be silent on it even where the camera is not.
  const whole = row.set === 'other' ? new Uint8Array(frame.width * frame.height).fill(255) : undefined;
  const mask = whole ?? analysis.mask?.data;
  const crop = mask && cutCrop(frame, mask, SIDE_PX);
  if (crop !== undefined) {
    const size = { width: crop.side, height: crop.side };
    await sharp(crop.rgb, { raw: { ...size, channels: 3 } })
      .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
      .toFile(`${path}.jpg`);
    await sharp(crop.mask, { raw: { ...size, channels: 1 } })
      .png()
      .toFile(`${path}.png`);
  }
  const { reading } = analysis;
  writeFileSync(
    `${path}.json`,
    JSON.stringify({
      ...row,
      id: nameOf(row.file),
      cut: crop !== undefined,
      leaf: reading.leaf.found,
      trouble: reading.trouble,
      measures: reading.measures,
    }),
  );
}
if (rows.every(({ file }) => existsSync(join(folder, 'crops', `${nameOf(file)}.json`)))) {
  const list = join(folder, 'photos.jsonl');
  writeFileSync(list, '');
  for (const { file } of rows) {
    appendFileSync(list, `${readFileSync(join(folder, 'crops', `${nameOf(file)}.json`), 'utf8')}\n`);
  }
  console.log(`${rows.length} photographs in ${list}`);
}
