import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { findLeaf } from '../../leaf/find-leaf.ts';
import { judgePlantColour } from '../../leaf/judge-plant.ts';
import { readLeaf } from '../../leaf/read-leaf.ts';
import { SMALL_SAMPLE_PX, sampleLeaf } from '../../leaf/sample-leaf.ts';
import { takeMeasures } from '../../leaf/take-measures.ts';
import { convertPixelsToLab } from '../../photo/convert-pixels-to-lab.ts';
import { decodeInNode } from '../../photo/decode-in-node.ts';
import { scaleToWorkingFrame } from '../../photo/scale-to-working-frame.ts';
import { settleWhite } from '../../photo/settle-white.ts';
import type { Pixels } from '../../photo/types.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

const RUNS = 5;
const PHOTOS = fileURLToPath(new URL('../../../../shared/photos/bean-uganda/healthy/', import.meta.url));

/** Times seeing step by step on a drawn leaf of 12 megapixels, and, where photographs are at hand, on a real one. */
export async function benchSeeing(): Promise<BenchRow[]> {
  const rows = await benchOne(await drawTwelveMegapixels(), 'drawn, 12 megapixels');
  const real = await enlargeRealPhoto();
  return real === undefined ? rows : [...rows, ...(await benchOne(real, 'real, enlarged to 12 megapixels'))];
}

async function benchOne(file: Uint8Array, what: string): Promise<BenchRow[]> {
  const decoding: number[] = [];
  let pixels: Pixels = (await decodeInNode(file)).pixels;
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    pixels = (await decodeInNode(file)).pixels;
    decoding.push(performance.now() - start);
  }
  const frame = scaleToWorkingFrame(pixels);
  const lab = convertPixelsToLab(frame);
  const leaf = findLeaf(frame, lab);
  if (leaf === undefined) throw new Error(`bench: expected a leaf in the ${what} photo`);
  const white = settleWhite(frame, leaf.outline, (i) => judgePlantColour(lab.a[i]!, lab.b[i]!));
  const sample = sampleLeaf(frame, leaf.outline, leaf.remaining);
  const small = sampleLeaf(frame, leaf.outline, leaf.remaining, SMALL_SAMPLE_PX);
  const row = (name: string, ms: number): BenchRow => ({ name: `seeing: ${name}`, ms, note: what });
  return [
    row('decode and read the pixels', decoding.sort((p, q) => p - q)[RUNS >> 1]!),
    row(
      'scale to the working frame',
      medianMs(() => scaleToWorkingFrame(pixels), RUNS),
    ),
    row(
      'mask',
      medianMs(() => findLeaf(frame, lab), RUNS),
    ),
    row(
      'colour and pattern with errors',
      medianMs(() => takeMeasures(sample, small, white), RUNS),
    ),
    row(
      'everything after decoding',
      medianMs(() => readLeaf(pixels, { role: 'whole' }), RUNS),
    ),
  ];
}

/** A leaf with veins and spots over grainy soil, as a JPEG. */
async function drawTwelveMegapixels(): Promise<Uint8Array> {
  const spots = Array.from({ length: 24 }, (_, k) => {
    const x = 1300 + ((k * 397) % 1500);
    const y = 1150 + ((k * 211) % 700);
    return `<circle cx="${x}" cy="${y}" r="${18 + (k % 5) * 6}" fill="#6e4a2c"/>`;
  });
  const veins = Array.from({ length: 9 }, (_, k) => {
    const x = 1000 + k * 230;
    return `<path d="M${x} 1500 l420 -420 M${x} 1500 l420 420"/>`;
  });
  const leaf = 'M700 1500 C1100 500 2500 500 3400 1500 C2500 2500 1100 2500 700 1500 Z';
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="4000" height="3000">
    <clipPath id="leaf"><path d="${leaf}"/></clipPath><path d="${leaf}" fill="#3f6f33"/>
    <g clip-path="url(#leaf)" stroke="#6d9158" stroke-width="14" fill="none"><path d="M700 1500H3400"/>${veins.join('')}</g>
    ${spots.join('')}</svg>`;
  const noise = { type: 'gaussian' as const, mean: 100, sigma: 22 };
  const soil = await sharp({ create: { width: 1000, height: 750, channels: 3, background: '#000', noise } })
    .tint('#8a6a50')
    .png()
    .toBuffer();
  const picture = await sharp(soil)
    .resize(4000, 3000)
    .composite([{ input: Buffer.from(drawing) }])
    .jpeg({ quality: 90 })
    .toBuffer();
  return new Uint8Array(picture);
}

async function enlargeRealPhoto(): Promise<Uint8Array | undefined> {
  const [first] = existsSync(PHOTOS) ? readdirSync(PHOTOS).sort() : [];
  if (first === undefined) return undefined;
  return new Uint8Array(
    await sharp(readFileSync(PHOTOS + first))
      .resize(3464, 3464)
      .jpeg()
      .toBuffer(),
  );
}
