import { attributeEvidence } from '../../ranker/attribute-evidence.ts';
import { chooseNextCheck } from '../../ranker/choose-next-check.ts';
import { drawRanges } from '../../ranker/draw-ranges.ts';
import { enumerateSets } from '../../ranker/enumerate-sets.ts';
import { answeredByEye, gatherEvidence, type Known, ruledOut } from '../../ranker/gather-evidence.ts';
import { decisionTable, type KnowledgeModel, networkUnder } from '../../ranker/knowledge-model.ts';
import { meanTables } from '../../ranker/network.ts';
import { rank } from '../../ranker/rank.ts';
import { normalise, weighSets } from '../../ranker/weigh-sets.ts';
import { findingFromEye } from '../../signs/findings-from-answers.ts';
import { ALL_SIGNS } from '../../signs/members-of.ts';
import { knowledgeModel } from '../../triage.ts';
import { benchLibrary } from './bench-library.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

/** Forty findings on as many signs spread over the vocabulary, every fourth one seen: the size that a long look reaches. */
const STEP = 11;
const FORTY = Array.from({ length: 40 }, (_, i) =>
  findingFromEye(ALL_SIGNS[(i * STEP) % ALL_SIGNS.length]!, i % 4 === 0 ? 'seen' : 'absent'),
);

/** The start of a look: broader marks first, then two of their members and a setting. Here hardly a set can be left out. */
const START = [
  findingFromEye('yellowing@some', 'seen'),
  findingFromEye('yellow-even@old', 'seen'),
  findingFromEye('yellow-edges@old', 'absent'),
  findingFromEye('holes@some', 'absent'),
  findingFromEye('stunted', 'seen'),
];

/** Time each step of one full ranking: all causes, sets of three; then a small part of it beside a general library. */
export function benchRanking(): BenchRow[] {
  const model = knowledgeModel();
  const context = { circumstances: [], crop: 'tomato', season: 'summer' } as const;
  const long = { ...context, findings: FORTY };
  return [
    ...benchSteps(model, long, `${new Set(FORTY.map(({ sign }) => sign)).size} findings`),
    ...benchSteps(model, { ...context, findings: START }, 'two broader marks, three signs'),
    ...benchLibrary(model.network, gatherEvidence(model, long)),
  ];
}

function benchSteps(model: KnowledgeModel, known: Known, what: string): BenchRow[] {
  const evidence = gatherEvidence(model, known);
  const network = networkUnder(model, evidence);
  const tables = meanTables(network);
  const out = ruledOut(model, evidence);
  const alive = model.causes.map((_, cause) => cause).filter((cause) => !out.has(cause));
  const sets = enumerateSets(model.causes.length, alive);
  const posterior = normalise(weighSets(network, tables, sets, evidence));
  const asked = {
    signs: answeredByEye(known.findings),
    settings: new Set<string>(),
    cannotSay: new Set<string>(),
  };
  const facts = new Set<string>();
  const table = decisionTable(model, facts);
  const row = (name: string, work: () => unknown): BenchRow => ({
    name: `ranking: ${name}`,
    ms: medianMs(work, 15),
    note: what,
  });
  return [
    {
      ...row('posterior over all sets', () => normalise(weighSets(network, tables, sets, evidence))),
      note: `${what}; ${alive.length} causes of ${model.causes.length} can be, ${sets.count} sets`,
    },
    row('200 draws for the ranges', () => drawRanges(network, sets, evidence, posterior)),
    row('next check over all questions', () =>
      chooseNextCheck(model, sets, posterior, evidence, facts, table, asked),
    ),
    row('reasons in decibans', () => attributeEvidence(network, tables, sets, evidence)),
    row('everything', () => rank(model, { ...known, today: '2026-06-18' })),
  ];
}
