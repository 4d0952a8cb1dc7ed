/**
 * Finds how strongly the tables' words should count (`EVIDENCE_WEIGHT` in `src/ranker/knowledge-model.ts`): the powers of the
 * likelihoods under which forecasts of every group score best (log loss of yes/no forecasts) on one set of published
 * cases, and shows what a fit on either of two sets does on the other.
 * Run: npx tsx training/fit-evidence-weight.ts
 */
import { fileURLToPath } from 'node:url';
import { GROUP_IDS, placeOf, scoreGroups } from '../src/command/evaluate/case-groups.ts';
import { layOut } from '../src/command/evaluate/print-evaluation.ts';
import { type JudgedCase, readCases } from '../src/command/evaluate/read-cases.ts';
import { chancesWeighed } from '../src/command/evaluate/weigh-answers.ts';
import { AS_THE_TABLES_SAY, type EvidenceWeight } from '../src/ranker/network.ts';
import { calibrationError, logLoss } from '../src/ranker/score-forecasts.ts';

const SETS = fileURLToPath(new URL('../tests/triage/published-cases/', import.meta.url));
const SIGNS = [1, 1.25, 1.5, 1.75, 2, 2.25, 2.5];
const SETTING = [1, 1.2, 1.4, 1.6, 1.8, 2];

interface Fit {
  readonly weight: EvidenceWeight;
  /** Nats a case, every group a yes/no forecast. */
  readonly loss: number;
  readonly first: number;
  readonly calibration: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

function score(weight: EvidenceWeight, cases: readonly JudgedCase[]): Fit {
  const judged = cases.map(({ group, answers }) => {
    const scores = scoreGroups(chancesWeighed(weight, answers));
    const loss = GROUP_IDS.reduce((sum, id) => {
      const p = scores.get(id)!;
      return sum + logLoss(id === group ? p : 1 - p);
    }, 0);
    return { loss, first: placeOf(group, scores) === 1, leading: Math.max(...scores.values()) };
  });
  return {
    weight,
    loss: mean(judged.map(({ loss }) => loss)),
    first: mean(judged.map(({ first }) => Number(first))),
    calibration: calibrationError(
      judged.map(({ first, leading }) => ({ probability: leading, happened: first })),
    ),
  };
}

const read = async (name: string): Promise<JudgedCase[]> =>
  (await readCases(`${SETS}${name}.jsonl`)).cases.filter(({ information }) => information !== 'poor');

/** The curve is flat at its foot: of all within this many nats of the best, the gentlest is taken. */
const AS_GOOD = 0.02;
const strength = ({ weight }: Fit): number => weight.signs + weight.setting;

function chooseWeight(cases: readonly JudgedCase[]): { readonly tried: readonly Fit[]; readonly taken: Fit } {
  const tried = SIGNS.flatMap((signs) => SETTING.map((setting) => score({ signs, setting }, cases)));
  const least = Math.min(...tried.map(({ loss }) => loss));
  const [taken] = tried
    .filter(({ loss }) => loss < least + AS_GOOD)
    .sort((a, b) => strength(a) - strength(b));
  return { tried, taken: taken! };
}

const row = (name: string, { weight, loss, first, calibration }: Fit): string[] => [
  name,
  String(weight.signs),
  String(weight.setting),
  loss.toFixed(3),
  first.toFixed(2),
  calibration.toFixed(3),
];
const [one, other] = [await read('set-a'), await read('set-b')];
const both = chooseWeight([...one, ...other]);
const [byOne, byOther] = [chooseWeight(one).taken.weight, chooseWeight(other).taken.weight];
process.stdout.write(
  `${layOut([
    ['cases', 'signs', 'setting', 'log loss', 'first', 'cal. error'],
    ...both.tried.map((tried) => row('both sets', tried)),
    row('taken', both.taken),
    row('set B, words as they stand', score(AS_THE_TABLES_SAY, other)),
    row('set B, as fitted on set A', score(byOne, other)),
    row('set A, words as they stand', score(AS_THE_TABLES_SAY, one)),
    row('set A, as fitted on set B', score(byOther, one)),
  ]).join('\n')}\n`,
);
