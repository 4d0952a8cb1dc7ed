import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { renderExample } from '../../../training/rendered-leaves/render-example.ts';
import { squeezeAsJpeg } from '../../../training/rendered-leaves/squeeze-as-jpeg.ts';

const SIZE = 128;
const offBy = (a: Uint8ClampedArray | Uint8Array, b: Uint8ClampedArray | Uint8Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - b[i]!) ** 2;
  return Math.sqrt(sum / a.length);
};

/** A piece out of a rendered example, off the grid of blocks that its own camera left. */
function drawPicture(): Uint8ClampedArray {
  const { rgb } = renderExample(12, SIZE + 8, { leaf: 'bean', marks: ['brown-spots'] });
  const piece = new Uint8ClampedArray(SIZE * SIZE * 3);
  for (let y = 0; y < SIZE; y++) {
    const from = ((y + 5) * (SIZE + 8) + 3) * 3;
    piece.set(rgb.subarray(from, from + SIZE * 3), y * SIZE * 3);
  }
  return piece;
}

/** Beside libjpeg-turbo, as sharp 0.35 calls it, colour at half the size. */
describe('squeezing as JPEG does', () => {
  it.each([40, 60, 80, 92])('takes away what libjpeg does at quality %d', async (quality) => {
    const rgb = drawPicture();
    const raw = { width: SIZE, height: SIZE, channels: 3 } as const;
    const jpeg = await sharp(Buffer.from(rgb), { raw })
      .jpeg({ quality, chromaSubsampling: '4:2:0' })
      .toBuffer();
    const theirs = await sharp(jpeg).raw().toBuffer();
    const ours = Uint8ClampedArray.from(rgb);
    squeezeAsJpeg(ours, SIZE, SIZE, quality);
    const lost = offBy(theirs, rgb);
    // The same loss to a tenth or two, and the two pictures nearer to each other than either to what they were made from.
    expect(offBy(ours, rgb) / lost).toBeGreaterThan(0.8);
    expect(offBy(ours, rgb) / lost).toBeLessThan(1.25);
    expect(offBy(ours, theirs)).toBeLessThan(0.75 * lost);
  });
});
