import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Folder of the photographs, with a slash at its end. */
export const PHOTOS: string = fileURLToPath(new URL('../../shared/photos/', import.meta.url));

/** One line of the photographs' manifest. */
export interface PhotoRow {
  readonly set: string;
  readonly label: string;
  /** Path below the folder of photographs. */
  readonly file: string;
  readonly group: string;
  readonly note: string;
}

/** All photographs of the manifest. @throws Error when the folder of photographs is not there */
export function listPhotos(): PhotoRow[] {
  if (!existsSync(`${PHOTOS}manifest.csv`)) throw new Error(`No photos at ${PHOTOS}.`);
  const [, ...lines] = readFileSync(`${PHOTOS}manifest.csv`, 'utf8').trim().split(/\r?\n/);
  return lines.map((line) => {
    const [set = '', label = '', file = '', group = '', note = ''] = line.split(',');
    return { set, label, file, group, note };
  });
}
