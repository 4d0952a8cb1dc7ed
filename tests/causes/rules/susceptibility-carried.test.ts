import { change, tryRule } from './rule.ts';
import { susceptibilityCarried } from './susceptibility-carried.ts';

tryRule(susceptibilityCarried, [
  {
    breaks: 'pigeons that take any crop alike',
    by: change('birds', ({ leanings }) => ({ leanings: leanings.filter(({ when }) => !('crop' in when)) })),
    complaint: /birds: kale is not above leek/,
  },
  {
    breaks: 'late blight on every crop',
    by: (causes) =>
      causes.map((cause) => {
        if (cause.id !== 'blight') return cause;
        const { onlyCrops: _, ...open } = cause;
        return open;
      }),
    complaint: /blight: is not ruled out on lettuce/,
  },
]);
