import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import type { SignId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';
import type { Rule } from './rule.ts';
import { SIGNS_OF_ONE_CAUSE } from './signs-of-one-cause.ts';

export const signsExplainedTwice: Rule = {
  name: 'signs explained twice',
  says: 'every sign of the vocabulary is explained by two causes or more, or a reason is written down; one cause alone would make a sign its proof (MPA-FERT, HYD-AU)',
  check(causes) {
    const explainedBy = new Map<SignId, string[]>(ALL_SIGNS.map((sign) => [sign, []]));
    for (const { id, signs } of causes)
      for (const { sign } of signs.flatMap(nodesOf)) explainedBy.get(sign)?.push(id);
    return [...explainedBy].flatMap(([sign, by]) => {
      const reason = SIGNS_OF_ONE_CAUSE[sign];
      if (by.length === 0) return [`${sign}: no cause explains it`];
      if (by.length === 1 && !reason) return [`${sign}: only ${by.join()}, and no reason why`];
      return by.length > 1 && reason ? [`${sign}: needs no exception any more`] : [];
    });
  },
};
