import { baseRates } from './base-rates.ts';
import { change, tryRule } from './rule.ts';

tryRule(baseRates, [
  {
    breaks: 'a cause that half of all plants would have',
    by: change('aphids', ({ baseRate }) => ({ baseRate: { ...baseRate, rate: 0.5 } })),
    complaint: /aphids.*\n.*sum/,
  },
  {
    breaks: 'an impossible cause',
    by: change('oedema', ({ baseRate }) => ({ baseRate: { ...baseRate, rate: 0 } })),
    complaint: /oedema/,
  },
]);
