import { existsSync } from 'node:fs';
import { evaluateCases } from './evaluate/evaluate-cases.ts';
import { printEvaluation } from './evaluate/print-evaluation.ts';
import { readCases } from './evaluate/read-cases.ts';
import { readArguments, runCommand, UsageError } from './read-arguments.ts';

const USAGE = 'Usage: npm run --silent evaluate -- [cases.jsonl] [--json]';
/** Cases beside the project where they are at hand, else its own. */
const CASES = ['../shared/real-cases.jsonl', 'tests/triage/published-cases/set-b.jsonl'] as const;

await runCommand(async () => {
  const { files, switches } = readArguments(process.argv.slice(2), [], ['json'], USAGE);
  if (files.length > 1) throw new UsageError(`One file at a time. ${USAGE}`);
  const file = files[0] ?? (existsSync(CASES[0]) ? CASES[0] : CASES[1]);
  const { cases, complaints } = await readCases(file);
  if (cases.length === 0) throw new UsageError(`No case in ${file}. ${USAGE}`);
  const evaluation = evaluateCases(cases);
  if (switches.has('json')) {
    process.stdout.write(`${JSON.stringify({ ...evaluation, complaints }, undefined, 1)}\n`);
  } else {
    for (const complaint of complaints) process.stderr.write(`${complaint}\n`);
    process.stdout.write(`${printEvaluation(evaluation)}\n`);
  }
  return 0;
});
