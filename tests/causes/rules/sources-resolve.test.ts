import type { Source } from '../../../src/causes/schema.ts';
import { change, tryRule } from './rule.ts';
import { sourcesResolve } from './sources-resolve.ts';

tryRule(sourcesResolve, [
  {
    breaks: 'a key that is not in the list',
    by: change('rust', ({ losses }) => ({ losses: { ...losses, source: 'NOBODY-1900' as Source } })),
    complaint: /rust\.losses: no source "NOBODY-1900"/,
  },
  {
    breaks: 'a sign without a source',
    by: change('frost', ({ signs }) => ({
      signs: signs.map((entry) => ({ ...entry, source: '' as Source })),
    })),
    complaint: /frost: no source for/,
  },
]);
