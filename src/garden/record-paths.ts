import { compareWords, isObject, type Loose } from './loose.ts';
import type { Edit, GardenRecord, Rival, Stamp } from './records.ts';

/** Lists whose elements are edited one by one, so that two devices can each add to them. Elements carry an id and a date. */
const LISTS: Readonly<Record<string, readonly string[]>> = {
  case: ['looks'],
  batch: ['readings', 'given', 'ripeness'],
  'pot-test': ['scores'],
  trial: ['layouts', 'readings', 'losses'],
};

/** Parts of a record that say who, what and when it is, and are not edited. */
const FIXED = new Set<string>([
  'id',
  'kind',
  'schema',
  'changedAt',
  'createdAt',
  'createdBy',
  'edited',
  'rivals',
  'revision',
  'demo',
] satisfies (keyof Stamp | 'kind')[]);

/** A record as values by path: `name`, or `readings/ID` for an element of a list. */
export type Paths = ReadonlyMap<string, unknown>;

export function pathsOf(record: GardenRecord): Paths {
  const lists = LISTS[record.kind] ?? [];
  const paths = new Map<string, unknown>();
  for (const [key, value] of Object.entries(record)) {
    if (FIXED.has(key) || value === undefined) continue;
    if (!lists.includes(key)) paths.set(key, value);
    else for (const element of value as { id: string }[]) paths.set(`${key}/${element.id}`, element);
  }
  return paths;
}

/** A value, or that there is none, with the edit that made it so. */
export interface Version {
  readonly edit: Edit;
  readonly value?: unknown;
}

/** The edit by which a record was made: holds for every path that was never edited. */
export const firstEdit = ({ createdAt, createdBy, changedAt }: Stamp): Edit => ({
  at: createdAt ?? changedAt,
  by: createdBy ?? '',
});

/** Every version that a record holds, by path: the value that shows first, rivals after it. */
export function versionsOf(record: GardenRecord): Map<string, readonly Version[]> {
  const paths = pathsOf(record);
  const first = firstEdit(record);
  const versions = new Map<string, readonly Version[]>();
  for (const path of new Set([...paths.keys(), ...Object.keys(record.edited ?? {})])) {
    const edit = record.edited?.[path] ?? first;
    const shown: Version = paths.has(path) ? { edit, value: paths.get(path) } : { edit };
    versions.set(path, [shown, ...((record.rivals?.[path] ?? []) as readonly Rival[])]);
  }
  return versions;
}

/** A loose record from its stamp and versions; the first version of each path is the one that shows. */
export function recordOf(
  stamp: Loose & { readonly kind: string; readonly createdAt: string; readonly createdBy: string },
  versions: ReadonlyMap<string, readonly Version[]>,
): Loose {
  const lists = LISTS[stamp.kind] ?? [];
  const fields = new Map<string, unknown>(lists.map((key) => [key, []]));
  const elements = new Map<string, { readonly element: Loose; readonly edit: Edit }[]>();
  const edited: [string, Edit][] = [];
  const rivals: [string, readonly Rival[]][] = [];
  for (const [path, [shown, ...others]] of [...versions].sort(([a], [b]) => compareWords(a, b))) {
    if (!shown) continue;
    const made = shown.edit.at === stamp.createdAt && shown.edit.by === stamp.createdBy;
    if (!made || shown.value === undefined) edited.push([path, shown.edit]);
    if (others.length > 0) rivals.push([path, others]);
    if (shown.value === undefined) continue;
    const key = path.slice(0, Math.max(0, path.indexOf('/')));
    if (!lists.includes(key)) fields.set(path, shown.value);
    else if (isObject(shown.value))
      elements.set(key, [...(elements.get(key) ?? []), { element: shown.value, edit: shown.edit }]);
  }
  for (const [key, all] of elements)
    fields.set(
      key,
      all
        .sort(
          (a, b) =>
            compareWords(String(a.element.date), String(b.element.date)) ||
            compareWords(a.edit.at, b.edit.at) ||
            compareWords(String(a.element.id), String(b.element.id)),
        )
        .map(({ element }) => element),
    );
  return {
    ...stamp,
    ...Object.fromEntries(fields),
    ...(edited.length > 0 ? { edited: Object.fromEntries(edited) } : {}),
    ...(rivals.length > 0 ? { rivals: Object.fromEntries(rivals) } : {}),
  };
}
