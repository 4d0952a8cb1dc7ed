import { mistakenForOthers } from './mistaken-for-others.ts';
import { change, tryRule } from './rule.ts';

tryRule(mistakenForOthers, [
  {
    breaks: 'one lookalike only',
    by: change('virus', ({ mistakenFor }) => ({ mistakenFor: mistakenFor.slice(0, 1) })),
    complaint: /virus: names 1 others/,
  },
  {
    breaks: 'a cause mistaken for itself',
    by: change('rust', ({ mistakenFor }) => ({
      mistakenFor: mistakenFor.map((entry) => ({ ...entry, cause: 'rust' as const })),
    })),
    complaint: /rust: rust is itself/,
  },
  {
    breaks: 'a difference left open',
    by: change('frost', ({ mistakenFor }) => ({
      mistakenFor: mistakenFor.map((entry) => ({ ...entry, tellsApart: 'hard to say' })),
    })),
    complaint: /frost: does not say/,
  },
]);
