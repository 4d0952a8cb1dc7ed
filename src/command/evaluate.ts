import { evaluateCases } from './evaluate/evaluate-cases.ts';
import { printEvaluation } from './evaluate/print-evaluation.ts';
import { readCases } from './evaluate/read-cases.ts';
import { readArguments, runCommand, UsageError } from './read-arguments.ts';

const USAGE = 'Usage: npm run --silent evaluate -- [cases.jsonl] [--json]';
const CASES = '../shared/real-cases.jsonl';

await runCommand(async () => {
  const { files, switches } = readArguments(process.argv.slice(2), [], ['json'], USAGE);
  if (files.length > 1) throw new UsageError(`One file at a time. ${USAGE}`);
  const { cases, complaints } = await readCases(files[0] ?? CASES);
  if (cases.length === 0) throw new UsageError(`No case in ${files[0] ?? CASES}. ${USAGE}`);
  const evaluation = evaluateCases(cases);
  if (switches.has('json')) {
    process.stdout.write(`${JSON.stringify({ ...evaluation, complaints }, undefined, 1)}\n`);
  } else {
    for (const complaint of complaints) process.stderr.write(`${complaint}\n`);
    process.stdout.write(`${printEvaluation(evaluation)}\n`);
  }
  return 0;
});
