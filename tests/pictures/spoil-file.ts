import sharp from 'sharp';
import type { Pixels } from '../../src/photo/types.ts';

/** A picture as JPEG, progressive JPEG, PNG, WebP, GIF and AVIF, with a date, a place and a turn in its notes. */
export async function filesOfEachKind({ width, height, data }: Pixels): Promise<Uint8Array[]> {
  const picture = () =>
    sharp(Buffer.from(data.buffer), { raw: { width, height, channels: 4 } }).withExif({
      IFD0: { Orientation: '6' },
      IFD2: { DateTimeOriginal: '2026:06:18 10:11:12' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
    });
  const buffers = await Promise.all([
    picture().jpeg().toBuffer(),
    picture().jpeg({ progressive: true }).toBuffer(),
    picture().png().toBuffer(),
    picture().webp().toBuffer(),
    picture().gif().toBuffer(),
    picture().avif({ effort: 0 }).toBuffer(),
  ]);
  // Plain arrays: a slice of a Buffer is no copy.
  return buffers.map((buffer) => new Uint8Array(buffer));
}

/** A file spoilt as transfers, cards and people spoil them: bytes changed, cut off, doubled, left out, headers most of all. */
export function spoil(file: Uint8Array, other: Uint8Array, number: () => number): Uint8Array {
  const upTo = (n: number): number => Math.floor(number() * n);
  // Half of all changes fall into the head, where sizes and lengths stand.
  const place = (): number => upTo(number() < 0.5 ? Math.min(200, file.length) : file.length);
  switch (upTo(5)) {
    case 0: {
      const changed = file.slice();
      for (let i = upTo(8); i >= 0; i--) changed[place()] = upTo(256);
      return changed;
    }
    case 1:
      return file.slice(0, upTo(file.length));
    case 2: {
      const [from, length] = [place(), 1 + upTo(40)];
      return Buffer.concat([file.subarray(0, from), file.subarray(from + length)]);
    }
    case 3: {
      const [from, length] = [place(), 1 + upTo(400)];
      return Buffer.concat([file.subarray(0, from + length), file.subarray(from)]);
    }
    default: {
      const from = place();
      return Buffer.concat([file.subarray(0, from), other.subarray(Math.min(from, other.length))]);
    }
  }
}
