import { fiveSigns } from './five-signs.ts';
import { change, tryRule } from './rule.ts';

tryRule(fiveSigns, [
  {
    breaks: 'a cause known by four signs',
    by: change('blight', ({ signs }) => ({ signs: signs.slice(0, 4) })),
    complaint: /blight: has 4 signs/,
  },
  {
    breaks: 'a cause that shows nothing often',
    by: change('oedema', ({ signs }) => ({
      signs: signs.filter((entry) => 'sign' in entry && entry.frequency === 'rarely'),
    })),
    complaint: /oedema: shows nothing often/,
  },
  {
    breaks: 'something else with a mark of its own',
    by: change('unlisted', ({ signs }) => ({
      signs: [...signs, { mark: 'mottled', new: 'often', source: 'from memory' }],
    })),
    complaint: /unlisted: mottled@new/,
  },
]);
