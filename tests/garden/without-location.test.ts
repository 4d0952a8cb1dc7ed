import exifr from 'exifr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { withoutLocation } from '../../src/garden/backup/without-location.ts';

const photo = async (): Promise<Uint8Array<ArrayBuffer>> =>
  new Uint8Array(
    await sharp({ create: { width: 8, height: 8, channels: 3, background: '#357a38' } })
      .withExif({
        IFD0: { Orientation: '6', ImageDescription: 'kale' },
        IFD2: { DateTimeOriginal: '2026:05:20 08:30:00' },
        IFD3: {
          GPSLatitudeRef: 'N',
          GPSLatitude: '51/1 30/1 0/1',
          GPSLongitudeRef: 'E',
          GPSLongitude: '7/1 15/1 0/1',
        },
      })
      .jpeg()
      .toBuffer(),
  );

// Read by exifr, which had no part in it.
describe('a photo that leaves the device', () => {
  it('says no more where it was taken; date, orientation and pixels stay', async () => {
    const before = await photo();
    expect((await exifr.gps(before))?.latitude).toBeCloseTo(51.5, 6);
    const after = withoutLocation(before);
    expect((await exifr.gps(after))?.latitude).toBeUndefined();
    const [told, kept] = await Promise.all([exifr.parse(before, true), exifr.parse(after, true)]);
    expect(kept.DateTimeOriginal).toEqual(told.DateTimeOriginal);
    expect(kept.Orientation).toBe(told.Orientation);
    expect(Object.keys(kept).filter((key) => key.startsWith('GPS'))).toEqual([]);
    const pixels = (file: Uint8Array) => sharp(file).raw().toBuffer();
    expect(await pixels(after)).toEqual(await pixels(before));
  });

  it('comes back as it is where it is no JPEG, and never fails on a damaged one', async () => {
    const other = new Uint8Array([1, 2, 3]);
    expect(withoutLocation(other)).toBe(other);
    const whole = await photo();
    for (let length = 2; length < 400; length++)
      expect(() => withoutLocation(whole.slice(0, length))).not.toThrow();
  });
});
