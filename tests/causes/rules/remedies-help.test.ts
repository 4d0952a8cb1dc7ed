import { remediesHelp } from './remedies-help.ts';
import { change, tryRule } from './rule.ts';

tryRule(remediesHelp, [
  {
    breaks: 'waiting that loses more than doing nothing',
    by: change('blight', ({ losses }) => ({ losses: { ...losses, watch: losses.leave + 1 } })),
    complaint: /blight: watching loses/,
  },
  {
    breaks: 'a remedy for what needs none',
    by: change('variety-colour', () => ({
      remedies: [
        { course: 'quick-nitrogen', remains: 0, because: 'it makes leaves green', source: 'from memory' },
      ],
    })),
    complaint: /variety-colour: quick-nitrogen does not help/,
  },
  {
    breaks: 'a loss that nothing helps against',
    by: change('drought', () => ({ remedies: [] })),
    complaint: /drought: loses, yet nothing helps/,
  },
  {
    breaks: 'a course that helps against nothing any more',
    by: change('residue-in-compost', () => ({ remedies: [] })),
    complaint: /stop-the-load: helps against nothing/,
  },
]);
