import { change, tryRule } from './rule.ts';
import { signsExplainedTwice } from './signs-explained-twice.ts';

tryRule(signsExplainedTwice, [
  {
    breaks: 'a sign that one cause alone explains',
    by: (causes) =>
      causes.map((cause) => ({
        ...cause,
        signs:
          cause.id === 'clubroot'
            ? cause.signs
            : cause.signs.filter((entry) => !('sign' in entry && entry.sign === 'roots-swollen')),
      })),
    complaint: /roots-swollen: only clubroot/,
  },
  {
    breaks: 'a sign that nothing explains',
    by: (causes) =>
      causes.map((cause) => ({
        ...cause,
        signs: cause.signs.filter((entry) => !('sign' in entry && entry.sign === 'felled')),
      })),
    complaint: /felled: no cause/,
  },
  {
    breaks: 'an exception that is no longer needed',
    by: change('birds', ({ signs }) => ({
      signs: [...signs, { sign: 'slime', frequency: 'rarely', source: 'from memory' }],
    })),
    complaint: /slime: needs no exception/,
  },
]);
