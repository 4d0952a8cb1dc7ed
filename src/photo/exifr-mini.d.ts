/** The small build of exifr has no types of its own; this is what we use of it. */
declare module 'exifr/dist/mini.esm.mjs' {
  export function parse(
    data: Uint8Array | ArrayBuffer,
    options: { exif: number[]; reviveValues: boolean; translateKeys: boolean },
  ): Promise<{ [tag: number]: unknown } | undefined>;
}
