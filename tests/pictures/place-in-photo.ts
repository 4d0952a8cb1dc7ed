import exifr from 'exifr';
import sharp, { type Sharp } from 'sharp';
import { expect } from 'vitest';

/** A JPEG with a place in it, as a phone writes it: 51° 30′ north, 7° 15′ east. */
export const withPlace = (picture: Buffer | Sharp): Promise<Buffer> =>
  (Buffer.isBuffer(picture) ? sharp(picture) : picture)
    .withExif({
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '7/1 15/1 0/1',
      },
    })
    .jpeg()
    .toBuffer();

/** The place that a JPEG tells, in degrees, by exifr; nothing where it tells none. */
export async function placeIn(jpeg: Buffer): Promise<{ latitude: number; longitude: number } | undefined> {
  const found = await exifr.gps(jpeg);
  return found && { latitude: found.latitude, longitude: found.longitude };
}

/** Holds a JPEG to what a handed-on picture may tell beside its pixels: nothing. */
export async function tellsNothing(jpeg: Buffer): Promise<void> {
  expect(await placeIn(jpeg)).toBeUndefined();
  const { format, exif, xmp, iptc } = await sharp(jpeg).metadata();
  expect({ format, exif, xmp, iptc }).toEqual({
    format: 'jpeg',
    exif: undefined,
    xmp: undefined,
    iptc: undefined,
  });
}
