import { placesGiven } from './places-given.ts';
import { change, tryRule } from './rule.ts';

tryRule(placesGiven, [
  {
    breaks: 'a sign listed twice',
    by: change('rust', ({ signs }) => ({ signs: [...signs, signs[0]!] })),
    complaint: /rust: rust-pustules twice/,
  },
  {
    breaks: 'a mark without a place',
    by: change('virus', ({ signs }) => ({ signs: [...signs, { mark: 'stippled', source: 'from memory' }] })),
    complaint: /virus: stippled nowhere/,
  },
]);
