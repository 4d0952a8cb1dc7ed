import { change, tryRule } from './rule.ts';
import { seasonsWhereTheyAre } from './seasons-where-they-are.ts';

tryRule(seasonsWhereTheyAre, [
  {
    breaks: 'a crop that shows it in a season',
    by: change('rust', ({ leanings }) => ({
      leanings: [
        ...leanings,
        {
          when: { crop: 'chard' },
          leans: 'more',
          because: 'it comes every late summer',
          source: 'from memory',
        },
      ],
    })),
    complaint: /rust names a season: it comes every late summer/,
  },
  {
    breaks: 'a place without winter that is told of summer',
    by: change('rust', ({ leanings }) => ({
      leanings: [
        ...leanings,
        {
          when: { season: 'no-winter' },
          leans: 'more',
          because: 'it is always summer',
          source: 'from memory',
        },
      ],
    })),
    complaint: /rust names a season: it is always summer/,
  },
  {
    breaks: 'a month',
    by: change('rust', ({ leanings }) => ({
      leanings: [
        ...leanings,
        { when: { season: 'winter' }, leans: 'more', because: 'it comes in January', source: 'from memory' },
      ],
    })),
    complaint: /month names a season: it comes in January/,
  },
]);
