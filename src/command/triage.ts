import { createReadStream } from 'node:fs';
import { access } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import type { Zone } from '../days/growing-year.ts';
import type { LeafReading } from '../leaf/types.ts';
import type { PhotoRole, PhotoTrouble } from '../photo/types.ts';
import type { Answers } from '../signs/types.ts';
import { type TriageResult, triage } from '../triage.ts';
import { printTriage } from './print-result.ts';
import { parseAnswers, readAnswersFile } from './read-answers.ts';
import { type Arguments, readArguments, runCommand, UsageError } from './read-arguments.ts';
import { type FileReading, readPhotoFile } from './read-photo.ts';
import { resultAsJson } from './result-as-json.ts';

const USAGE =
  'Usage: npm run --silent triage -- [--old F] [--new F] [--whole F] [--normal F] [--notes answers.json] [--south | --tropics] [--json] [--mask-out DIR], or triage -- --batch answers.jsonl';
const ROLES: readonly PhotoRole[] = ['old', 'new', 'whole', 'normal'];

const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** A file that is not there gives a reading without measures, like any other photo in trouble. */
const asReading = ({ trouble, ...rest }: FileReading): LeafReading => ({
  ...rest,
  trouble: trouble.filter((code): code is PhotoTrouble => code !== 'file-not-found'),
});

/** The command knows no place but what it is told; the usage names the switches, and without one it is the north. */
const zoneOf = (switches: ReadonlySet<string>): Zone =>
  switches.has('tropics') ? 'tropics' : switches.has('south') ? 'south' : 'north';

function weigh(photos: readonly FileReading[], answers: Answers, zone: Zone): TriageResult {
  return triage({
    photos: photos.map(asReading),
    answers,
    // A look has a date of its own; without one it is today's.
    today: answers.date ?? today(),
    zone,
  });
}

async function runOne({ values, switches }: Arguments): Promise<number> {
  const photos: FileReading[] = [];
  for (const role of ROLES) {
    const file = values.get(role);
    if (file !== undefined) photos.push(await readPhotoFile(file, role, values.get('mask-out')));
  }
  const notes = values.get('notes');
  const { answers, complaints } =
    notes === undefined
      ? { answers: { setting: {}, signs: {} }, complaints: [] }
      : await readAnswersFile(notes);
  const result = weigh(photos, answers, zoneOf(switches));
  if (switches.has('json')) {
    process.stdout.write(`${JSON.stringify(resultAsJson(result, photos, complaints), undefined, 1)}\n`);
  } else {
    for (const complaint of complaints) process.stderr.write(`${complaint}\n`);
    process.stdout.write(`${printTriage(result, photos, answers.crop)}\n`);
  }
  return 0;
}

async function runBatch(file: string, zone: Zone): Promise<number> {
  await access(file).catch(() => {
    throw new UsageError(`${file} cannot be opened; check the path. ${USAGE}`);
  });
  let number = 0;
  for await (const line of createInterface({
    input: createReadStream(file),
    crlfDelay: Number.POSITIVE_INFINITY,
  })) {
    number += 1;
    if (line.trim() === '') continue;
    const { id, answers, complaints, broken } = parseAnswers(line);
    const named = id === undefined ? {} : { id };
    const result = broken
      ? { error: `line ${number}: ${complaints.join(' ')}` }
      : resultAsJson(weigh([], answers, zone), [], complaints);
    process.stdout.write(`${JSON.stringify({ ...named, ...result })}\n`);
  }
  return 0;
}

await runCommand(async () => {
  const given = readArguments(
    process.argv.slice(2),
    [...ROLES, 'notes', 'mask-out', 'batch'],
    ['json', 'south', 'tropics'],
    USAGE,
  );
  if (given.files.length > 0)
    throw new UsageError(
      `What is ${given.files[0]}? Say which leaf a photo shows, as in --old ${given.files[0]}. ${USAGE}`,
    );
  const batch = given.values.get('batch');
  if (batch === undefined && given.values.size === 0) throw new UsageError(`Nothing to weigh. ${USAGE}`);
  if (batch !== undefined && [...ROLES, 'notes'].some((name) => given.values.has(name)))
    throw new UsageError(`--batch goes alone. ${USAGE}`);
  return batch === undefined ? runOne(given) : runBatch(batch, zoneOf(given.switches));
});
