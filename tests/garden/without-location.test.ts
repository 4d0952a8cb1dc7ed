import { crc32 } from 'node:zlib';
import exifr from 'exifr';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { withoutLocation } from '../../src/garden/backup/without-location.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';

const XMP = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="51,30.0N" exif:GPSLongitude="7,15.0E"/>
</rdf:RDF></x:xmpmeta>`;
/** Words that tell the place, wherever they stand; `GPS` is an entry's name in XMP. */
const TELLING = ['51,30.0N', '7,15.0E', 'GPS', 'Lengthy Lane', '+51.5000+007.2500/'];
const TAKEN = '2026:05:20 08:30:00';

type Bytes = Uint8Array<ArrayBuffer>;
const bytesOf = async (picture: Sharp): Promise<Bytes> => new Uint8Array(await picture.toBuffer());

/** Upper half green, lower half brown, lying on its side, with a place in Exif and in XMP. */
const photo = (): Sharp =>
  sharp({ create: { width: 48, height: 32, channels: 3, background: '#357a38' } })
    .composite([
      { input: { create: { width: 48, height: 16, channels: 3, background: '#6b4a2f' } }, top: 16, left: 0 },
    ])
    .withExif({
      IFD0: { Orientation: '6', ImageDescription: 'Lengthy Lane 5' },
      IFD2: { DateTimeOriginal: TAKEN, UserComment: 'Lengthy Lane 5' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '7/1 15/1 0/1',
      },
    })
    .withXmp(XMP)
    .withMetadata({ orientation: 6 });

const join = (...parts: (Uint8Array | string)[]): Bytes =>
  new Uint8Array(Buffer.concat(parts.map((part) => Buffer.from(part as string))));
const asText = (file: Uint8Array): string => Buffer.from(file).toString('latin1');
const big = (value: number, size: 2 | 4): Uint8Array => {
  const bytes = Buffer.alloc(size);
  bytes.writeUIntBE(value, 0, size);
  return bytes;
};

/** A JPEG with a place in every corner that cameras and programs put it: beside Exif and XMP, IPTC, comment, what follows the end. */
async function crowdedJpeg(): Promise<Bytes> {
  const plain = await bytesOf(photo().jpeg({ progressive: true }));
  const part = (marker: number, content: string): Uint8Array =>
    join(Uint8Array.of(0xff, marker), big(content.length + 2, 2), content);
  return join(
    plain.subarray(0, 2),
    part(0xed, 'Photoshop 3.0\0 8BIM Lengthy Lane'),
    part(0xe2, 'MPF\0 Lengthy Lane'),
    part(0xfe, 'Lengthy Lane'),
    plain.subarray(2),
    // A second picture behind the first, as phones write it, and a film's place.
    plain,
    'moov udta \xa9xyz +51.5000+007.2500/',
  );
}

async function crowdedPng(): Promise<Bytes> {
  const plain = await bytesOf(photo().png());
  const chunk = (kind: string, content: string): Uint8Array =>
    join(big(content.length, 4), kind, content, big(crc32(kind + content), 4));
  const afterHeader = 8 + 25;
  return join(
    plain.subarray(0, afterHeader),
    chunk('tEXt', 'Comment\0Lengthy Lane'),
    chunk('zzZz', 'Lengthy Lane'),
    plain.subarray(afterHeader),
    'Lengthy Lane',
  );
}

async function crowdedWebp(): Promise<Bytes> {
  const plain = await bytesOf(photo().webp({ lossless: true }));
  return join(plain, 'Lengthy Lane');
}

/** One box of padding at the end, where editors leave what they took out. */
async function crowdedAvif(): Promise<Bytes> {
  const plain = await bytesOf(photo().avif({ lossless: true }));
  return join(plain, big(8 + 12, 4), 'free', 'Lengthy Lane');
}

async function crowdedGif(): Promise<Bytes> {
  const plain = await bytesOf(photo().gif());
  const table = 3 * 2 ** ((plain[10]! & 7) + 1);
  const start = 13 + table;
  const xmp = 'XMP DataXMP\x0851,30.0N\0';
  return join(
    plain.subarray(0, start),
    Uint8Array.of(0x21, 0xfe, 12),
    'Lengthy Lane',
    Uint8Array.of(0, 0x21, 0xff, 11),
    xmp,
    plain.subarray(start),
    'Lengthy Lane',
  );
}

/** The block of Exif as sharp hands it over, whatever file it came from; read by exifr. Neither had part in the stripping. */
async function exifOf(file: Uint8Array): Promise<Record<string, unknown>> {
  const { exif } = await sharp(file).metadata();
  if (!exif) return {};
  const start = asText(exif).startsWith('Exif\0\0') ? 6 : 0;
  return (await exifr.parse(exif.subarray(start), { tiff: true, exif: true, gps: true })) ?? {};
}

const xmpOf = async (file: Uint8Array): Promise<string> =>
  ((await sharp(file).metadata()).xmp?.toString() ?? '').trim();

const KINDS = [
  ['JPEG', crowdedJpeg],
  ['PNG', crowdedPng],
  ['WebP', crowdedWebp],
  ['AVIF', crowdedAvif],
] as const;

describe.each(KINDS)('a %s that leaves the device', (_, make) => {
  it('says no more where it was taken; date, orientation and every pixel stay', async () => {
    const before = await make();
    expect((await exifOf(before)).latitude).toBeCloseTo(51.5, 6);
    expect(await xmpOf(before)).toContain('51,30.0N');
    const after = withoutLocation(before)!;
    const kept = await exifOf(after);
    expect(Object.keys(kept).sort()).toEqual(['DateTimeOriginal', 'Orientation']);
    expect(kept.DateTimeOriginal).toEqual((await exifOf(before)).DateTimeOriginal);
    for (const word of TELLING) expect(asText(after)).not.toContain(word);
    expect(await xmpOf(after)).toBe('');
    expect(await decodeInNode(after)).toEqual(await decodeInNode(before));
    expect((await decodeInNode(after)).pixels.height).toBe(48);
  });

  it('comes out the same a second time, and never breaks where it is cut off', async () => {
    const whole = await make();
    const once = withoutLocation(whole)!;
    expect(withoutLocation(once)).toEqual(once);
    for (let length = 0; length < Math.min(whole.length, 3000); length += 3) {
      const cut = withoutLocation(whole.slice(0, length));
      for (const word of TELLING) if (cut) expect(asText(cut)).not.toContain(word);
    }
  });
});

it('finds the place where phones put it: in a JPEG of theirs by exifr itself', async () => {
  const before = await crowdedJpeg();
  expect((await exifr.gps(before))?.latitude).toBeCloseTo(51.5, 6);
  expect((await exifr.gps(withoutLocation(before)!))?.latitude).toBeUndefined();
});

it('takes comments and XMP out of a GIF', async () => {
  const before = await crowdedGif();
  const after = withoutLocation(before)!;
  for (const word of TELLING) expect(asText(after)).not.toContain(word);
  expect(await sharp(after).raw().toBuffer()).toEqual(await sharp(before).raw().toBuffer());
});

describe('a HEIC', () => {
  /** No free encoder is at hand: an AVIF whose words say HEIC. Both are the same container (ISO/IEC 23008-12). */
  const WORDS = [
    ['ftypavif', 'ftypheic'],
    ['mif1avif', 'mif1heic'],
    ['av01', 'hvc1'],
  ] as const;
  const renamed = (file: Uint8Array, from: 0 | 1): Bytes => {
    let text = asText(file);
    for (const words of WORDS) text = text.replace(words[from], words[from === 0 ? 1 : 0]);
    return new Uint8Array(Buffer.from(text, 'latin1'));
  };
  const heic = async (): Promise<Bytes> => renamed(await crowdedAvif(), 0);

  it('is freed of its place in the same way', async () => {
    const before = await heic();
    const after = withoutLocation(before)!;
    expect(after).toHaveLength(before.length);
    expect((await exifOf(renamed(before, 1))).latitude).toBeCloseTo(51.5, 6);
    expect(Object.keys(await exifOf(renamed(after, 1))).sort()).toEqual(['DateTimeOriginal', 'Orientation']);
    expect(await xmpOf(renamed(after, 1))).toBe('');
    for (const word of TELLING) expect(asText(after)).not.toContain(word);
  });

  it('is refused where it holds something that is not understood', async () => {
    const before = await heic();
    expect(withoutLocation(join(before, big(8 + 12, 4), 'moov', 'Lengthy Lane'))).toBeUndefined();
    const strange = asText(before).replace('mime', 'what');
    expect(withoutLocation(new Uint8Array(Buffer.from(strange, 'latin1')))).toBeUndefined();
  });
});

it('refuses what is no picture that it knows', () => {
  expect(withoutLocation(new Uint8Array([1, 2, 3]))).toBeUndefined();
  expect(withoutLocation(new Uint8Array())).toBeUndefined();
  // TIFF, as raw files of cameras are built.
  expect(withoutLocation(new Uint8Array([0x49, 0x49, 42, 0, 8, 0, 0, 0]))).toBeUndefined();
});
