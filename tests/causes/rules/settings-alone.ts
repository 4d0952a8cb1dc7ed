import { leakOf, UNLISTED_Q } from '../../../src/causes/leaks.ts';
import { type Cause, LEANING_LOG_ODDS, SEASONS } from '../../../src/causes/schema.ts';
import { enumerateSets } from '../../../src/ranker/enumerate-sets.ts';
import { gatherEvidence, type Known, ruledOut } from '../../../src/ranker/gather-evidence.ts';
import {
  compileKnowledge,
  cropOdds,
  type KnowledgeModel,
  networkUnder,
  seasonOdds,
} from '../../../src/ranker/knowledge-model.ts';
import { meanTables } from '../../../src/ranker/network.ts';
import { marginals, normalise, weighSets } from '../../../src/ranker/weigh-sets.ts';
import { SETTINGS, type SettingId } from '../../../src/signs/settings.ts';
import type { Circumstance, FactorId } from '../../../src/signs/types.ts';
import { CROPS } from '../../../src/signs/vocabulary.ts';
import type { Rule } from './rule.ts';

/** Chances of all causes under what is known of the setting. */
export function chancesUnder(model: KnowledgeModel, known: Known): Float64Array {
  const evidence = gatherEvidence(model, known);
  const network = networkUnder(model, evidence);
  const out = ruledOut(model, evidence);
  const sets = enumerateSets(
    network.causes.length,
    network.causes.map((_, at) => at).filter((at) => !out.has(at)),
  );
  const posterior = normalise(weighSets(network, meanTables(network), sets, evidence));
  return marginals(network.causes.length, sets, posterior);
}

/** The outcome of every setting that leans most towards the cause; of an any-of list, its strongest option. */
function kindestSettings({ leanings }: Cause): Circumstance[] {
  const best = new Map<SettingId, { is: string; logOdds: number }>();
  for (const { when, leans } of leanings) {
    const logOdds = LEANING_LOG_ODDS[leans];
    if ('setting' in when && logOdds > (best.get(when.setting)?.logOdds ?? 0))
      best.set(when.setting, { is: when.is, logOdds });
  }
  return [...best].map(
    ([setting, { is }]): Circumstance =>
      SETTINGS[setting].kind === 'any-of'
        ? { id: `${setting}:${is}` as FactorId, outcome: 'yes', from: 'eye' }
        : { id: setting, outcome: is, from: 'eye' },
  );
}

function kindest<T>(options: readonly T[], odds: (option: T) => number): T | undefined {
  const [first] = [...options].sort((a, b) => odds(b) - odds(a));
  return first !== undefined && odds(first) > 1 ? first : undefined;
}

export const settingsAlone: Rule = {
  name: 'settings alone',
  says: 'no cause is more likely than not by crop, season and settings alone, each at its kindest: a sign must be seen first',
  check(causes) {
    const model = compileKnowledge(causes, leakOf, UNLISTED_Q);
    return causes.flatMap((cause, at) => {
      const crop = kindest(CROPS, (option) => cropOdds(model, option)[at]!);
      const season = kindest(SEASONS, (option) => seasonOdds(model, option)[at]!);
      const chance = chancesUnder(model, {
        findings: [],
        circumstances: kindestSettings(cause),
        ...(crop === undefined ? {} : { crop }),
        ...(season === undefined ? {} : { season }),
      })[at]!;
      return chance <= 0.5 ? [] : [`${cause.id}: reaches ${chance.toFixed(2)} by settings alone`];
    });
  },
};
