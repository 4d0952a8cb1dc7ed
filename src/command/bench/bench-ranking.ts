import { attributeEvidence } from '../../ranker/attribute-evidence.ts';
import { chooseNextCheck } from '../../ranker/choose-next-check.ts';
import { drawRanges } from '../../ranker/draw-ranges.ts';
import { enumerateSets } from '../../ranker/enumerate-sets.ts';
import { gatherEvidence } from '../../ranker/gather-evidence.ts';
import { decisionTable } from '../../ranker/knowledge-model.ts';
import { meanTables } from '../../ranker/network.ts';
import { rank } from '../../ranker/rank.ts';
import { normalise, weighSets } from '../../ranker/weigh-sets.ts';
import { findingFromEye } from '../../signs/findings-from-answers.ts';
import { ALL_SIGNS } from '../../signs/members-of.ts';
import { knowledgeModel } from '../../triage.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

/** Forty findings spread over the vocabulary, every fourth one seen: the size that a long look reaches. */
const FORTY = Array.from({ length: 40 }, (_, i) =>
  findingFromEye(ALL_SIGNS[(i * 7) % ALL_SIGNS.length]!, i % 4 === 0 ? 'seen' : 'absent'),
);

/** Time each step of one full ranking: all causes, sets of three, forty findings. */
export async function benchRanking(): Promise<BenchRow[]> {
  const model = knowledgeModel();
  const known = { findings: FORTY, circumstances: [], crop: 'tomato', season: 'summer' } as const;
  const evidence = gatherEvidence(model, known);
  const tables = meanTables(model.network);
  const sets = enumerateSets(
    model.causes.length,
    model.causes.map((_, cause) => cause),
  );
  const posterior = normalise(weighSets(model.network, tables, sets, evidence));
  const asked = {
    signs: new Set(FORTY.map(({ sign }) => sign as never)),
    settings: new Set(''),
    cannotSay: new Set(''),
  };
  const facts = new Set<string>();
  const table = decisionTable(model, facts);
  const note = `${model.causes.length} causes, ${sets.count} sets, ${FORTY.length} findings`;
  return [
    {
      name: 'ranking: posterior over all sets',
      ms: medianMs(() => normalise(weighSets(model.network, tables, sets, evidence))),
      note,
    },
    {
      name: 'ranking: 200 draws for the ranges',
      ms: medianMs(() => drawRanges(model.network, sets, evidence, posterior)),
    },
    {
      name: 'ranking: reasons in decibans',
      ms: medianMs(() => attributeEvidence(model.network, tables, sets, evidence)),
    },
    {
      name: 'ranking: next check over all questions',
      ms: medianMs(() => chooseNextCheck(model, sets, posterior, evidence, facts, table, asked)),
    },
    { name: 'ranking: everything', ms: medianMs(() => rank(model, { ...known, today: '2026-06-18' })) },
  ];
}
