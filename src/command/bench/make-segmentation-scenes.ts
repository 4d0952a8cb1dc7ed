import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import type { Pixels } from '../../photo/types.ts';

const SCANS = fileURLToPath(new URL('../../../../shared/photos/soybean-holes/', import.meta.url));

/** A picture whose leaf is known pixel by pixel. */
export interface Scene {
  readonly what: string;
  readonly pixels: Pixels;
  /** 255 = leaf tissue. */
  readonly truth: Uint8Array;
}

type Maker = (megapixels: number) => Promise<Scene>;

/** Drawn leaves over paper, soil and foliage; and, where they are at hand, scans of chewed leaflets with masks, enlarged. */
export function segmentationScenes(): { readonly drawn: Maker[]; readonly scans: Maker[] } {
  const drawn = (['paper', 'soil', 'foliage'] as const).map(
    (ground): Maker =>
      (megapixels) =>
        drawScene(ground, megapixels),
  );
  const files = existsSync(SCANS) ? readdirSync(`${SCANS}images`).sort() : [];
  const scans = files
    .filter((_, k) => k % 26 === 0)
    .map(
      (file): Maker =>
        (megapixels) =>
          enlargeScan(file, megapixels),
    );
  return { drawn, scans };
}

async function enlargeScan(file: string, megapixels: number): Promise<Scene> {
  const scan = sharp(readFileSync(`${SCANS}images/${file}`));
  const { width, height } = await scan.metadata();
  const scale = Math.sqrt((megapixels * 1e6) / (width * height));
  const size = { width: Math.round(width * scale), height: Math.round(height * scale) };
  const mask = sharp(readFileSync(`${SCANS}mask_remaining/${file.replace('.jpg', '.png')}`)).greyscale();
  return {
    what: `scan ${file.replace('.jpg', '')}, enlarged`,
    pixels: await pixelsOf(scan.resize({ ...size, fit: 'fill' })),
    truth: await maskOf(mask.resize({ ...size, fit: 'fill' })),
  };
}

async function pixelsOf(picture: ReturnType<typeof sharp>): Promise<Pixels> {
  const { data, info } = await picture.ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data: new Uint8ClampedArray(data) };
}

async function maskOf(picture: ReturnType<typeof sharp>): Promise<Uint8Array> {
  const { data, info } = await picture.toColourspace('b-w').raw().toBuffer({ resolveWithObject: true });
  const mask = new Uint8Array(info.width * info.height);
  for (let i = 0; i < mask.length; i++) mask[i] = data[i * info.channels]! > 127 ? 255 : 0;
  return mask;
}

const LEAF = 'M700 1500 C1100 500 2500 500 3400 1500 C2500 2500 1100 2500 700 1500 Z';
/** Two holes and a bite, which show the ground. */
const GONE =
  '<circle cx="1500" cy="1150" r="120"/><circle cx="2300" cy="1800" r="90"/><circle cx="2000" cy="2330" r="200"/>';

/** A leaf with veins, spots and shade, holes and a bite, over grain of a kind. */
async function drawScene(ground: 'paper' | 'soil' | 'foliage', megapixels: number): Promise<Scene> {
  const width = 4 * Math.round(Math.sqrt((megapixels * 1e6 * 4) / 3) / 4);
  const height = (width / 4) * 3;
  const svg = (inside: string): Buffer =>
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 4000 3000">${inside}</svg>`,
    );
  const kept = `<mask id="kept"><rect width="4000" height="3000" fill="#fff"/><g fill="#000">${GONE}</g></mask>`;
  const veins = Array.from(
    { length: 9 },
    (_, k) => `M${1000 + k * 230} 1500 l420 -420 M${1000 + k * 230} 1500 l420 420`,
  );
  const spots = Array.from(
    { length: 24 },
    (_, k) =>
      `<circle cx="${1300 + ((k * 397) % 1500)}" cy="${1150 + ((k * 211) % 700)}" r="${18 + (k % 5) * 6}" fill="#6e4a2c"/>`,
  );
  const leaf = svg(`<clipPath id="leaf"><path d="${LEAF}"/></clipPath>${kept}
    <linearGradient id="shade"><stop offset="0" stop-color="#355f2b"/><stop offset="1" stop-color="#4c8040"/></linearGradient>
    <g mask="url(#kept)"><path d="${LEAF}" fill="url(#shade)"/><g clip-path="url(#leaf)">
    <path d="M700 1500H3400 ${veins.join(' ')}" stroke="#6d9158" stroke-width="14" fill="none"/>${spots.join('')}</g></g>`);
  const truth = svg(
    `<rect width="4000" height="3000"/>${kept}<g mask="url(#kept)"><path d="${LEAF}" fill="#fff"/></g>`,
  );
  // Other leaves, darker and duller, as a canopy below.
  const canopy = Array.from({ length: 90 }, (_, k) => {
    const [x, y] = [(k * 1237) % 4000, (k * 769) % 3000];
    const green = 40 + ((k * 37) % 50);
    return `<ellipse cx="${x}" cy="${y}" rx="330" ry="150" fill="rgb(${green - 18},${green + 12},${green - 25})" transform="rotate(${(k * 53) % 180} ${x} ${y})"/>`;
  });
  const noise = {
    type: 'gaussian' as const,
    mean: ground === 'paper' ? 232 : 100,
    sigma: ground === 'paper' ? 3 : 22,
  };
  const grain = await sharp({ create: { width: 1000, height: 750, channels: 3, background: '#000', noise } })
    .tint(ground === 'paper' ? '#e9e6e0' : '#8a6a50')
    .png()
    .toBuffer();
  const layers = ground === 'foliage' ? [svg(canopy.join('')), leaf] : [leaf];
  const picture = sharp(grain)
    .resize(width, height)
    .composite(layers.map((input) => ({ input })));
  return {
    what: `drawn leaf over ${ground}`,
    pixels: await pixelsOf(sharp(await picture.png({ compressionLevel: 0 }).toBuffer())),
    truth: await maskOf(sharp(truth)),
  };
}
