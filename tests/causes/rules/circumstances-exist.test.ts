import type { CropId } from '../../../src/signs/vocabulary.ts';
import { circumstancesExist } from './circumstances-exist.ts';
import { change, tryRule } from './rule.ts';

tryRule(circumstancesExist, [
  {
    breaks: 'a leaning on an outcome that no answer gives',
    by: change('birds', ({ leanings }) => ({
      leanings: leanings.map((leaning, at) =>
        at === 0 ? { ...leaning, when: { setting: 'netted', is: 'half' } } : leaning,
      ),
    })),
    complaint: /birds.*half/,
  },
  {
    breaks: 'two leanings on one circumstance',
    by: change('frost', ({ leanings }) => ({ leanings: [...leanings, leanings[0]!] })),
    complaint: /frost: leans twice/,
  },
  {
    breaks: 'a crop that nobody can name',
    by: change('clubroot', () => ({ onlyCrops: ['hops' as CropId] })),
    complaint: /clubroot.*hops/,
  },
]);
