import type { CautionId } from '../../../src/causes/cautions.ts';
import { cautionsListed } from './cautions-listed.ts';
import { change, tryRule } from './rule.ts';

tryRule(cautionsListed, [
  {
    breaks: 'a caution that nobody wrote',
    by: change('virus', () => ({ cautions: ['beware' as CautionId] })),
    complaint: /virus: beware/,
  },
  {
    breaks: 'a caution that is never given',
    by: change('hot-compost', () => ({ cautions: [] })),
    complaint: /fresh-manure: never given/,
  },
]);
