import { canonical } from './canonical.ts';
import { editOver } from './edits.ts';
import { firstEdit, pathsOf, versionsOf } from './record-paths.ts';
import type { Edit, GardenRecord } from './records.ts';

/**
 * The record as it is to be stored: what differs from the stored one carries an edit of now; what was chosen between
 * rivals settles them. A field that did not change keeps the edit that it had.
 * @param before what the store holds; `undefined` for a new record
 * @param now ISO 8601, UTC
 * @param device the word of this device
 */
export function stampChanges<R extends GardenRecord>(
  before: GardenRecord | undefined,
  after: R,
  now: string,
  device: string,
): R {
  const { edited: _edited, rivals: _rivals, ...plain } = after;
  if (!before)
    return { ...plain, createdAt: after.createdAt ?? now, createdBy: after.createdBy ?? device } as R;
  const first = firstEdit(before);
  const [old, fresh, versions] = [pathsOf(before), pathsOf(after), versionsOf(before)];
  const edited: Record<string, Edit> = { ...before.edited };
  const rivals = { ...before.rivals };
  for (const path of new Set([...old.keys(), ...fresh.keys()])) {
    if (canonical(old.get(path) ?? null) === canonical(fresh.get(path) ?? null)) continue;
    const known = (versions.get(path) ?? []).map(({ edit }) => edit);
    edited[path] = editOver(known.length > 0 ? known : [first], now, device);
    delete rivals[path];
  }
  return {
    ...plain,
    createdAt: first.at,
    createdBy: first.by,
    ...(Object.keys(edited).length > 0 ? { edited } : {}),
    ...(Object.keys(rivals).length > 0 ? { rivals } : {}),
  } as R;
}

/**
 * The record with a conflict settled: `value` holds (undefined: nothing), and this choice knows of all its rivals.
 * @param path as in `rivals`
 */
export function settleRivals(record: GardenRecord, path: string, now: string, device: string): GardenRecord {
  const versions = versionsOf(record).get(path) ?? [];
  const { [path]: _settled, ...rivals } = record.rivals ?? {};
  const { rivals: _rivals, ...plain } = record;
  const edited = {
    ...record.edited,
    [path]: editOver(
      versions.map(({ edit }) => edit),
      now,
      device,
    ),
  };
  return {
    ...plain,
    edited,
    changedAt: now,
    ...(Object.keys(rivals).length > 0 ? { rivals } : {}),
  } as GardenRecord;
}
