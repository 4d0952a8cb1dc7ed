import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const PHOTOS = fileURLToPath(new URL('../../../../shared/photos/bean-uganda/healthy/', import.meta.url));

/** A JPEG to time, and what it shows. */
export interface BenchPhoto {
  readonly what: string;
  readonly megapixels: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A drawn leaf and, where photographs are at hand, a real one enlarged, each of about so many megapixels and with a camera's grain. */
export async function makeBenchPhotos(megapixels: number): Promise<BenchPhoto[]> {
  const [first] = existsSync(PHOTOS) ? readdirSync(PHOTOS).sort() : [];
  const width = 4 * Math.round(Math.sqrt((megapixels * 1e6 * 4) / 3) / 4);
  const drawn = await drawLeafOnSoil(width, (width / 4) * 3);
  const photos = [{ what: 'drawn leaf', bytes: await addGrain(sharp(drawn)) }];
  if (first !== undefined) {
    const side = Math.round(Math.sqrt(megapixels * 1e6));
    const real = await sharp(readFileSync(PHOTOS + first))
      .resize(side, side)
      .png({ compressionLevel: 0 })
      .toBuffer();
    photos.push({ what: 'real leaf, enlarged', bytes: await addGrain(sharp(real)) });
  }
  return photos.map((photo) => ({ ...photo, megapixels }));
}

/** An enlarged picture is smoother than any camera's and quicker to decode than a photo: grain of 5 levels makes up for it. */
async function addGrain(picture: ReturnType<typeof sharp>): Promise<Uint8Array<ArrayBuffer>> {
  const { data, info } = await picture.removeAlpha().raw().toBuffer({ resolveWithObject: true });
  let state = 1;
  for (let i = 0; i < data.length; i++) {
    // The sum of four even draws is near enough to a bell.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
    const four = (state >>> 24) + ((state >>> 16) & 255) + ((state >>> 8) & 255) + (state & 255);
    data[i] = Math.max(0, Math.min(255, Math.round(data[i]! + (four - 510) / 29)));
  }
  const raw = { width: info.width, height: info.height, channels: 3 as const };
  return new Uint8Array(await sharp(data, { raw }).jpeg({ quality: 90 }).toBuffer());
}

/** A leaf with veins and spots over grainy soil. */
async function drawLeafOnSoil(width: number, height: number): Promise<Buffer> {
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
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 4000 3000">
    <clipPath id="leaf"><path d="${leaf}"/></clipPath><path d="${leaf}" fill="#3f6f33"/>
    <g clip-path="url(#leaf)" stroke="#6d9158" stroke-width="14" fill="none"><path d="M700 1500H3400"/>${veins.join('')}</g>
    ${spots.join('')}</svg>`;
  const noise = { type: 'gaussian' as const, mean: 100, sigma: 22 };
  const soil = await sharp({ create: { width: 1000, height: 750, channels: 3, background: '#000', noise } })
    .tint('#8a6a50')
    .png()
    .toBuffer();
  return sharp(soil)
    .resize(width, height)
    .composite([{ input: Buffer.from(drawing) }])
    .png({ compressionLevel: 0 })
    .toBuffer();
}
