import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { leakOf, UNLISTED_Q } from '../../../src/causes/leaks.ts';
import { compileKnowledge } from '../../../src/ranker/knowledge-model.ts';
import { change, tryRule } from './rule.ts';
import { chancesUnder, settingsAlone } from './settings-alone.ts';

tryRule(settingsAlone, [
  {
    breaks: 'a cause that three strong leanings make without a sign',
    by: change('drought', () => ({
      leanings: (
        [
          ['soil-water', 'dry'],
          ['recent-rain', 'dry'],
          ['recent-temperature', 'hot'],
          ['soil-kind', 'sandy'],
        ] as const
      ).map(([setting, is]) => ({
        when: { setting, is },
        leans: 'far-more',
        because: 'it has had no water',
        source: 'from memory',
      })),
    })),
    complaint: /drought: reaches 0\.[5-9]/,
  },
]);

it('with nothing said, every cause stays below one in eight and they sum to between one and two', () => {
  const model = compileKnowledge(KNOWLEDGE, leakOf, UNLISTED_Q);
  const priors = chancesUnder(model, { findings: [], circumstances: [] });
  for (const [at, prior] of priors.entries()) expect(prior, KNOWLEDGE[at]!.id).toBeLessThan(0.125);
  const sum = priors.reduce((a, b) => a + b, 0);
  expect(sum).toBeGreaterThan(1);
  expect(sum).toBeLessThan(2);
});
