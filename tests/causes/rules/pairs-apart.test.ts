import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { pairsApart } from './pairs-apart.ts';
import { change, tryRule } from './rule.ts';

const thrips = KNOWLEDGE.find(({ id }) => id === 'thrips')!;

tryRule(pairsApart, [
  {
    breaks: 'two causes with the same signs',
    by: change('spider-mite', () => ({ signs: thrips.signs })),
    complaint: /spider-mite and thrips: at best 0.0 dB/,
  },
]);
