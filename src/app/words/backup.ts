import type { PotTestRecord } from '../../garden/ground-records.ts';
import type { TrialLayout } from '../../garden/trial-record.ts';
import type { BackupFailure } from '../state/back-up.ts';
import { describeDayAndYear } from './dates.ts';

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

export const BACKUP_WORDS = {
  title: 'Backup',
  lead: 'Everything this garden has written down, photos too, as one file. Reading one adds what is missing here and takes nothing away; so it also brings two devices together.',
  private:
    'The file holds what you typed and your photos, without the place where they were taken; of what the camera wrote into them only date and way up stay. On this device your photos are kept as they came. The file goes nowhere unless you send it.',
  write: 'Write a backup file',
  writing: (pictures: number, of: number): string => `Writing, photo ${pictures} of ${of} …`,
  beginning: 'Writing …',
  written: (records: number, pictures: number, size: string, leftOut: number): string =>
    `Written: ${many(records, 'record', 'records')} and ${many(pictures, 'picture', 'pictures')}, ${size}. The browser has put it with your downloads.${
      leftOut > 0
        ? ` Not in it: ${many(leftOut, 'photo', 'photos')} of a kind from which the place of taking cannot be taken out. Keep ${leftOut === 1 ? 'that photo' : 'those photos'} yourself.`
        : ''
    }`,
  read: 'Read a backup file',
  reading: 'Reading and checking all of it before anything is changed …',
  merged: (added: number, changed: number, same: number, pictures: number): string =>
    `Read: ${added} new, ${changed} changed, ${same} as they were already; ${many(pictures, 'picture', 'pictures')} added.`,
  failed: {
    'not-a-backup': 'This is not a Bedside backup. Nothing here has changed.',
    newer:
      'A newer version of Bedside wrote this. Open Bedside with a signal to get that version, then read the file again. Nothing here has changed.',
    broken: 'The file is damaged or was cut off on the way. Fetch it once more. Nothing here has changed.',
    unsafe: 'The file is built in a way no Bedside backup is, so it was not taken. Nothing here has changed.',
    'too-large': 'The file is larger than a garden can hold, so it was not taken. Nothing here has changed.',
    full: 'No room is left on this device for all that it holds. Make room and try again. Nothing here has changed.',
    refused:
      'This browser keeps nothing for this page (a private window, perhaps), or something went wrong. Nothing here has changed.',
    conflict: 'Another tab wrote at the same moment. Try once more. Nothing here has changed.',
    'in-demo':
      'This is the invented garden, which is thrown away when you leave it, so the file was not read. Tap “Leave it” at the top, then read the file in your own garden. Nothing here has changed.',
  } satisfies Record<BackupFailure, string>,
  notWritten: 'The file could not be written. Your garden is as it was.',
  conflicts: 'Said differently on two devices',
  conflictsLead: 'Neither device knew of the other’s. Choose what holds.',
  shown: 'Now here',
  other: (day: string): string => `Said on ${day}`,
  choose: 'This holds',
  notSettled: 'It could not be stored, or has changed meanwhile. Look again and choose once more.',
} as const;

const KINDS: Readonly<Record<string, string>> = {
  bed: 'Bed',
  event: 'What was done',
  batch: 'Heap or load',
  planting: 'Planting',
  weather: 'Weather',
  'normal-leaf': 'Sound leaf',
  'pot-test': 'Pot test',
  trial: 'Trial',
  case: 'Case',
  look: 'Look',
  draft: 'Look in progress',
  lessons: 'What learning leaves out',
  'own-head': 'What the network learnt here',
};

/** "Bed “Long bed”" */
export function nameRecord(record: { readonly kind: string }): string {
  const { name, plant, crop, date } = record as Partial<
    Record<'name' | 'plant' | 'crop' | 'date' | 'kind', string>
  >;
  const called = name ?? plant ?? crop ?? (date && describeDayAndYear(date));
  const kind = KINDS[record.kind] ?? record.kind;
  return called ? `${kind} “${called}”` : kind;
}

const FIELDS: Readonly<Record<string, string>> = {
  deletedAt: 'kept or deleted',
  closedOn: 'closed on',
  openedOn: 'opened on',
  sownOn: 'sown on',
  plantedOn: 'planted on',
  clearedOn: 'cleared on',
  bedId: 'its bed',
  plantingId: 'its planting',
  endedOn: 'ended on',
  lookOn: 'next look on',
  toSow: 'still to be sown',
  said: 'what it came to',
  scores: 'score of a pot',
  potId: 'pot',
  heightMm: 'height in mm',
  ripeness: 'test of ripeness',
  layouts: 'layout',
  losses: 'struck out',
};

/** The letter on a pot of the record, by the pot's id. */
const potLetter = (record: unknown, id: string): string | undefined =>
  (record as Partial<PotTestRecord> | undefined)?.pots?.find((pot) => pot.id === id)?.label;

/** `plantedOn` → "planted on", `readings/3f` → "readings", `scores/2026-06-18 pot-1` → "score of pot A" */
export function nameField(path: string, record?: unknown): string {
  const [field = path, element = ''] = path.split('/');
  const letter = field === 'scores' ? potLetter(record, element.slice(element.indexOf(' ') + 1)) : undefined;
  if (letter) return `score of pot ${letter}`;
  return FIELDS[field] ?? field.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** A trial's layout by its day, its beds and the first of its lots: by these two drawn apart are told from each other. */
const sayLayout = ({ date, beds, units }: TrialLayout): string =>
  `laid out on ${describeDayAndYear(date)} in ${beds.map(({ bedName }) => bedName).join(', ')}, ${units.length} places: ${units
    .slice(0, 12)
    .map(({ way }) => way)
    .join(' ')}${units.length > 12 ? ' …' : ''}`;

/** A stored value of a record as a person reads it. */
export function sayValue(path: string, value: unknown, record?: unknown): string {
  if (path === 'deletedAt') return value === undefined ? 'kept' : 'deleted';
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (path === 'potId') return potLetter(record, String(value)) ?? String(value);
  if (typeof value === 'string') return /^\d{4}-\d{2}-\d{2}$/.test(value) ? describeDayAndYear(value) : value;
  if (path.startsWith('layouts/') && typeof value === 'object') return sayLayout(value as TrialLayout);
  if (Array.isArray(value)) return value.map((one) => sayValue('', one, record)).join('; ') || 'nothing';
  if (typeof value === 'object')
    return (
      Object.entries(value)
        // What a photo was read as is no reading matter.
        .filter(([key]) => key !== 'id' && key !== 'reading')
        .map(([key, one]) => `${nameField(key)}: ${sayValue(key, one, record)}`)
        .join(', ')
    );
  return String(value);
}
