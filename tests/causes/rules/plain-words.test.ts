import { plainWords } from './plain-words.ts';
import { change, tryRule } from './rule.ts';

tryRule(plainWords, [
  {
    breaks: 'certainty',
    by: change('virus', () => ({ what: 'It is definitely a virus.' })),
    complaint: /virus speaks of certainty/,
  },
  {
    breaks: 'a pesticide in a remedy',
    by: change('aphids', ({ remedies }) => ({
      remedies: remedies.map((remedy) => ({ ...remedy, because: 'pyrethrum kills them at once' })),
    })),
    complaint: /aphids speaks of a pesticide/,
  },
  {
    breaks: 'a dose',
    by: change('nitrogen-short', ({ losses }) => ({
      losses: { ...losses, because: 'it wants 20 g of feed' },
    })),
    complaint: /nitrogen-short speaks of a dose/,
  },
]);
