import { VERDICTS } from '../../signs/vocabulary.ts';
import { type Evaluation, METHODS, type Miss, type Scores } from './evaluate-cases.ts';

const two = (value: number): string => value.toFixed(2);

/** Columns padded to their widest entry; the first to the left, the rest to the right. */
export function layOut(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join('  ')
      .trimEnd(),
  );
}

const SCORE_HEADS = [
  'cases',
  'first',
  'in three',
  'Brier',
  'log loss',
  'shown',
  'yes/no',
  'cal. error',
  'cal. all',
];
const scoreCells = (scores: Scores): string[] => [
  String(scores.cases),
  two(scores.first),
  two(scores.inFirstThree),
  two(scores.brier),
  two(scores.logLoss),
  two(scores.logLossShown),
  two(scores.logLossOfAll),
  two(scores.calibrationError),
  scores.calibrationErrorOfAll.toFixed(3),
];

function scoreLines({ byInformation }: Evaluation): string[] {
  return layOut([
    ['information', 'method', ...SCORE_HEADS],
    ...Object.entries(byInformation).flatMap(([level, by]) =>
      METHODS.map((method) => [level, method, ...scoreCells(by[method])]),
    ),
  ]);
}

function groupLines({ byGroup, verdicts }: Evaluation): string[] {
  const ids = VERDICTS.map(({ id }) => id);
  return layOut([
    ['group', 'cases', 'first', 'in three', 'log loss', ...ids],
    ...Object.entries(byGroup).map(([group, scores]) => [
      group,
      String(scores.cases),
      two(scores.first),
      two(scores.inFirstThree),
      two(scores.logLoss),
      ...ids.map((id) => String(verdicts[group]?.[id] ?? 0)),
    ]),
  ]);
}

function reliabilityLines({ reliability }: Evaluation): string[] {
  return layOut([
    ['chance shown', 'method', 'cases', 'mean', 'came true'],
    ...METHODS.flatMap((method) =>
      reliability[method].map(({ from, to, count, meanProbability, cameTrue }) => [
        `${two(from)}–${two(to)}`,
        method,
        String(count),
        two(meanProbability),
        two(cameTrue),
      ]),
    ),
  ]);
}

function missLines(miss: Miss): string[] {
  const reasons = ({ cause, reasons }: Miss['leading']): string =>
    `      ${cause}: ${reasons.map(({ sign, decibans }) => `${sign} ${decibans.toFixed(1)} dB`).join(', ')}`;
  const also = miss.also.length > 0 ? ` (expert also: ${miss.also.join(', ')})` : '';
  return [
    `  ${miss.id} ${miss.information}: ${miss.expected} is no. ${miss.place} at ${two(miss.chance)}, ${miss.got} leads at ${two(miss.gotChance)}${also}`,
    reasons(miss.leading),
    reasons(miss.missed),
  ];
}

/** The evaluation as text for people. */
export function printEvaluation(evaluation: Evaluation): string {
  const { broken, misses } = evaluation;
  return [
    'Against the experts: is their group first, or among the first three?',
    '"Shown" is the log loss of the chance as shown, "yes/no" that of every group as a forecast of its own.',
    'Brier (0–2) and log loss (nats) score the groups scaled to sum to 1; "cal. error" is that of the leading group, "cal. all" that of every group.',
    '',
    ...scoreLines(evaluation),
    '',
    'By group, and the verdicts',
    '',
    ...groupLines(evaluation),
    '',
    'Reliability of the chance shown for the leading group',
    '',
    ...reliabilityLines(evaluation),
    '',
    broken.length === 0
      ? 'No residue ends in leave, no normal plant in act.'
      : `Broken rules: ${broken.join('; ')}`,
    '',
    `Misses (${misses.length})`,
    ...misses.flatMap(missLines),
  ].join('\n');
}
