import { change, tryRule } from './rule.ts';
import { sentencesRead } from './sentences-read.ts';

tryRule(sentencesRead, [
  {
    breaks: 'a reason that is a sentence of its own',
    by: change('drought', ({ losses }) => ({ losses: { ...losses, because: 'Plants die of thirst.' } })),
    complaint: /drought: "because Plants die of thirst\."/,
  },
  {
    breaks: 'a recovery without a sentence',
    by: change('frost', ({ recovery }) => ({ recovery: { ...recovery, looksLike: 'green' } })),
    complaint: /frost: does not say what recovery/,
  },
  {
    breaks: 'no day to look again',
    by: change('virus', ({ recovery }) => ({ recovery: { ...recovery, lookAgainDays: 0 } })),
    complaint: /virus: has no day/,
  },
]);
