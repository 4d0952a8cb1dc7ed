import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import type { SignId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';
import { SIGNS_OF_ONE_CAUSE } from './signs-of-one-cause.ts';

const explainedBy = new Map<SignId, string[]>(ALL_SIGNS.map((sign) => [sign, []]));
for (const { id, signs } of KNOWLEDGE)
  for (const { sign } of signs.flatMap(nodesOf)) explainedBy.get(sign)!.push(id);

// One cause alone would make a sign its proof; a report is never proof (MPA-FERT, HYD-AU).
describe('every sign of the vocabulary is explained by two causes or more, or a reason is written down', () => {
  it.each(ALL_SIGNS.map((sign) => [sign]))('%s', (sign) => {
    const causes = explainedBy.get(sign)!;
    const reason = SIGNS_OF_ONE_CAUSE[sign];
    if (reason === undefined) expect(causes.length, `only ${causes.join()}`).toBeGreaterThanOrEqual(2);
    else {
      expect(reason).toMatch(/\w{3}/);
      expect(causes.length, 'the exception is no longer needed').toBeLessThan(2);
    }
  });
});
