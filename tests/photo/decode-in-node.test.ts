import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { PhotoError, type PhotoTrouble } from '../../src/photo/types.ts';
import { writeJpeg, writePng } from '../pictures/write-jpeg.ts';

const troubleOf = async (bytes: Uint8Array): Promise<PhotoTrouble | 'none'> => {
  try {
    await decodeInNode(bytes);
    return 'none';
  } catch (error) {
    if (error instanceof PhotoError) return error.code;
    throw error;
  }
};

const plain = (width: number, height: number, channels: 3 | 4 = 3) =>
  sharp({
    create: { width, height, channels, background: { r: 60, g: 100, b: 50, alpha: channels === 4 ? 0 : 1 } },
    limitInputPixels: false,
  });

/** A PNG that only says how large it is: header chunk and nothing else. */
function headerOfPng(width: number, height: number): Uint8Array {
  const bytes = new Uint8Array(45);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  bytes.set([8, 2, 0, 0, 0], 24);
  return bytes;
}

describe('files that cannot be used', () => {
  it('tells nothing from something', async () => {
    expect(await troubleOf(new Uint8Array())).toBe('empty-file');
    expect(await troubleOf(new TextEncoder().encode('Dear diary, the beans look poorly.'))).toBe(
      'not-a-picture',
    );
    expect(await troubleOf(new Uint8Array(5000).fill(7))).toBe('not-a-picture');
  });

  it('refuses a 100-megapixel picture by its header, before decoding', async () => {
    const started = performance.now();
    expect(await troubleOf(headerOfPng(10_000, 10_000))).toBe('too-large');
    expect(performance.now() - started).toBeLessThan(200);
  });

  it('refuses pictures of one pixel and of a narrow strip', async () => {
    expect(await troubleOf(await plain(1, 1).png().toBuffer())).toBe('too-small');
    expect(await troubleOf(await plain(2000, 31).jpeg().toBuffer())).toBe('too-small');
  });

  it('tells a cut-off JPEG from a whole one wherever it is cut', async () => {
    const whole = await writeJpeg(drawLeaf({ width: 200, height: 150 }).pixels);
    expect(await troubleOf(whole)).toBe('none');
    for (const share of [0.02, 0.3, 0.7, 0.99]) {
      expect(await troubleOf(whole.slice(0, Math.floor(whole.length * share)))).toBe('broken-picture');
    }
    expect(await troubleOf(whole.slice(0, whole.length - 2))).toBe('broken-picture');
  });

  it('accepts a JPEG with something after its end, as phones write', async () => {
    const whole = await writeJpeg(drawLeaf({ width: 200, height: 150 }).pixels);
    const longer = new Uint8Array(whole.length + 3000).fill(0xff);
    longer.set(whole);
    expect(await troubleOf(longer)).toBe('none');
  });

  it('tells a cut-off PNG and a cut-off WebP', async () => {
    const png = await writePng(drawLeaf({ width: 120, height: 90 }).pixels);
    expect(await troubleOf(png.slice(0, png.length / 2))).toBe('broken-picture');
    const webp = new Uint8Array(await plain(120, 90).webp().toBuffer());
    expect(await troubleOf(webp)).toBe('none');
    expect(await troubleOf(webp.slice(0, webp.length - 8))).toBe('broken-picture');
  });

  it('names formats that it cannot read', async () => {
    expect(await troubleOf(await plain(64, 64).tiff().toBuffer())).toBe('format-unreadable');
    const heic = new Uint8Array(64);
    heic.set([
      0,
      0,
      0,
      24,
      ...new TextEncoder().encode('ftypheic'),
      0,
      0,
      0,
      0,
      ...new TextEncoder().encode('mif1heic'),
    ]);
    expect(['format-unreadable', 'broken-picture']).toContain(await troubleOf(heic));
  });
});

describe('unusual pictures that can be used', () => {
  const corner = async (bytes: Uint8Array): Promise<number[]> => {
    const { pixels } = await decodeInNode(bytes);
    expect(pixels.data.length).toBe(pixels.width * pixels.height * 4);
    return [...pixels.data.slice(0, 4)];
  };

  it('brings CMYK, grey, 16 bits and palettes to 8-bit sRGB', async () => {
    const cmyk = await corner(await plain(64, 64).toColourspace('cmyk').jpeg({ quality: 100 }).toBuffer());
    // CMYK goes through a printing profile and back: near, not equal.
    expect(Math.abs(cmyk[1]! - 100)).toBeLessThan(25);
    expect(cmyk[1]!).toBeGreaterThan(cmyk[0]!);
    const deep = await corner(await plain(64, 64).toColourspace('rgb16').png().toBuffer());
    for (const [i, v] of [60, 100, 50, 255].entries()) expect(Math.abs(deep[i]! - v)).toBeLessThanOrEqual(1);
    const grey = await corner(await plain(64, 64).greyscale().png().toBuffer());
    expect(grey[0]).toBe(grey[1]);
    expect(grey[1]).toBe(grey[2]);
    expect(await corner(await plain(64, 64).png({ palette: true }).toBuffer())).toEqual([60, 100, 50, 255]);
  });

  it('lays transparency on white', async () => {
    expect(await corner(await plain(64, 64, 4).png().toBuffer())).toEqual([255, 255, 255, 255]);
  });

  it('turns the picture as its tag says', async () => {
    const upright = drawLeaf({ width: 120, height: 80 }).pixels;
    const { pixels } = await decodeInNode(await writeJpeg(upright, { orientation: 6 }));
    expect([pixels.width, pixels.height]).toEqual([80, 120]);
  });

  it('reads the local moment of the shot, and does without', async () => {
    const { pixels } = drawLeaf({ width: 120, height: 80 });
    const dated = await decodeInNode(await writeJpeg(pixels, { takenAt: '2025-06-14T18:05:09' }));
    expect(dated.takenAt).toBe('2025-06-14T18:05:09');
    expect((await decodeInNode(await writeJpeg(pixels))).takenAt).toBeUndefined();
  });
});
