import { KNOWLEDGE } from '../causes/knowledge/index.ts';
import { knowledgeModel } from '../triage.ts';
import { findHardestPairs, type Pair } from './evaluate/find-hardest-pairs.ts';
import { readArguments, runCommand, UsageError } from './read-arguments.ts';

const USAGE = 'Usage: npm run --silent pairs -- [--most 20] [--json]';

/** What the knowledge base itself says tells the two apart, where one lists the other. */
function saidToTellApart([one, other]: Pair['causes']): string | undefined {
  const says = (of: string, from: string): string | undefined =>
    KNOWLEDGE.find(({ id }) => id === of)!.mistakenFor.find(({ cause }) => cause === from)?.tellsApart;
  return says(one, other) ?? says(other, one);
}

function pairLines(pair: Pair, at: number): string[] {
  const { causes, bestBits, allBits, questions } = pair;
  const says = saidToTellApart(causes);
  return [
    `${String(at + 1).padStart(2)}. ${causes.join(' and ')}: everything asked ${allBits.toFixed(2)} bit, best ${bestBits.toFixed(2)}`,
    `    ${questions.map(({ id, bits, speaksFor }) => `${id} ${bits.toFixed(2)} for ${speaksFor}`).join(', ')}`,
    ...(says === undefined ? [] : [`    ${says}`]),
  ];
}

await runCommand(async () => {
  const { values, switches, files } = readArguments(process.argv.slice(2), ['most'], ['json'], USAGE);
  const most = Number(values.get('most') ?? 20);
  if (files.length > 0 || !Number.isInteger(most) || most < 1) throw new UsageError(USAGE);
  const pairs = findHardestPairs(knowledgeModel()).slice(0, most);
  process.stdout.write(
    switches.has('json')
      ? `${JSON.stringify(pairs, undefined, 1)}\n`
      : `${[
          'The pairs of causes that are hardest to tell apart by what a person can be asked, both equally likely beforehand; 1 bit would part them for sure.',
          '',
          ...pairs.flatMap(pairLines),
        ].join('\n')}\n`,
  );
  return 0;
});
