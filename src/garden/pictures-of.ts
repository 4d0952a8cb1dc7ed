import { isObject, list, text } from './loose.ts';
import type { GardenRecord } from './records.ts';

/** The pictures that a record names by itself; of a draft, those of its body. A case's are named by its looks. */
export function picturesOf(record: GardenRecord): string[] {
  switch (record.kind) {
    case 'look':
      return record.photos.map(({ id }) => id);
    case 'normal-leaf':
      return [record.photoId];
    case 'pot-test':
      return record.scores.flatMap(({ photos }) => photos);
    case 'trial':
      return record.readings.flatMap(({ photoId }) => photoId ?? []);
    case 'draft':
      return list(isObject(record.body) ? record.body.photos : undefined)
        .map((photo) => (isObject(photo) ? text(photo.id) : ''))
        .filter(Boolean);
    default:
      return [];
  }
}
