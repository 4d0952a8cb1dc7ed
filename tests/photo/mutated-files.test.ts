import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { withoutLocation } from '../../src/garden/backup/without-location.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { MOST_PIXELS } from '../../src/photo/inspect-file.ts';
import { PhotoError } from '../../src/photo/types.ts';
import { seededNumbers } from '../seeded-numbers.ts';

/** A file spoilt as transfers, cards and people spoil them: bytes changed, cut off, doubled, left out, headers most of all. */
function spoil(file: Uint8Array, other: Uint8Array, number: () => number): Uint8Array {
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

describe('mutated picture files', () => {
  let files: Uint8Array[] = [];
  beforeAll(async () => {
    const { pixels } = drawLeaf({ width: 64, height: 48, length: 0.8 });
    const picture = () =>
      sharp(Buffer.from(pixels.data.buffer), { raw: { width: 64, height: 48, channels: 4 } }).withExif({
        IFD0: { Orientation: '6' },
        IFD2: { DateTimeOriginal: '2026:06:18 10:11:12' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
      });
    // Plain arrays: a slice of a Buffer is no copy.
    const buffers = await Promise.all([
      picture().jpeg().toBuffer(),
      picture().jpeg({ progressive: true }).toBuffer(),
      picture().png().toBuffer(),
      picture().webp().toBuffer(),
      picture().gif().toBuffer(),
      picture().avif({ effort: 0 }).toBuffer(),
    ]);
    files = buffers.map((buffer) => new Uint8Array(buffer));
  });

  // One in ten is AVIF's, whose decoder is the slowest; the rest is shared out evenly.
  it('10,000 of them are decoded or refused with a reason, never anything else', {
    timeout: 300_000,
  }, async () => {
    const number = seededNumbers(20260618);
    const outcomes = new Map<string, number>();
    for (let made = 0; made < 10_000; made++) {
      const kind = made % 10 === 9 ? 5 : made % 5;
      const file = spoil(files[kind]!, files[(kind + 1) % files.length]!, number);
      let outcome = 'decoded';
      try {
        const { pixels } = await decodeInNode(file);
        expect(pixels.width * pixels.height).toBeLessThanOrEqual(MOST_PIXELS);
        expect(pixels.data.length).toBe(4 * pixels.width * pixels.height);
      } catch (cause) {
        if (!(cause instanceof PhotoError)) throw new Error(`file ${made}: ${String(cause)}`);
        outcome = cause.code;
      }
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    }
    // Both ways are really taken, or the files were not worth trying.
    expect(outcomes.get('decoded')).toBeGreaterThan(500);
    expect(outcomes.get('broken-picture')).toBeGreaterThan(3000);
  });

  it('10,000 of them go into a backup without their place, or not at all', () => {
    const number = seededNumbers(20260619);
    let freed = 0;
    for (let made = 0; made < 10_000; made++) {
      const kind = made % files.length;
      const file = spoil(files[kind]!, files[(kind + 1) % files.length]!, number);
      const left = withoutLocation(file);
      if (!left) continue;
      freed++;
      expect(left.length).toBeLessThanOrEqual(file.length + 64);
    }
    expect(freed).toBeGreaterThan(1000);
  });
});
