import type { Cause } from '../schema.ts';

export const manganeseShort: Cause = {
  id: 'manganese-short',
  what: 'Short of manganese, mostly on limed or peaty soil: young and middle leaves yellow between green veins, soon with grey or tan dead specks.',
  baseRate: { rate: 0.01, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-ph', is: 'chalky-or-limed' },
      leans: 'far-more',
      because: 'lime locks manganese up',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'soil-ph', is: 'acid' },
      leans: 'less',
      because: 'it is rarer on acid soils, though recorded there',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'a-little-more',
      because: 'sandy soil holds little manganese',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'it comes in cold, wet spells',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'a-little-more',
      because: 'it comes in cold, wet spells',
      source: 'GMC-KEY',
    },
    {
      when: { crop: 'goosefoot' },
      leans: 'a-little-more',
      because: 'beet, spinach, peas and potatoes show it most',
      source: 'from memory',
    },
    {
      when: { crop: 'pea' },
      leans: 'a-little-more',
      because: 'beet, spinach, peas and potatoes show it most',
      source: 'from memory',
    },
    {
      when: { crop: 'potato' },
      leans: 'a-little-more',
      because: 'soya beans and potatoes commonly show it on their upper leaves',
      source: 'RLF-MN',
    },
    {
      when: { crop: 'soya-bean' },
      leans: 'a-little-more',
      because: 'soya beans and potatoes commonly show it on their upper leaves',
      source: 'RLF-MN',
    },
    {
      when: { crop: 'french-bean' },
      leans: 'a-little-more',
      because: 'this crop shows it readily',
      source: 'from memory',
    },
    {
      when: { crop: 'onion' },
      leans: 'a-little-more',
      because: 'this crop shows it readily',
      source: 'from memory',
    },
  ],
  signs: [
    {
      mark: 'yellow-between-veins',
      old: 'sometimes',
      new: 'often',
      source: 'PNW-KEY',
      confidence: 'disputed',
    },
    { mark: 'brown-spots', old: 'sometimes', new: 'often', source: 'GMC-KEY', confidence: 'disputed' },
    { mark: 'mottled', old: 'sometimes', new: 'sometimes', source: 'from memory', confidence: 'disputed' },
    {
      mark: 'yellow-patches',
      old: 'rarely',
      new: 'sometimes',
      source: 'from memory',
      confidence: 'disputed',
    },
    { mark: 'bleached-patches', old: 'rarely', new: 'sometimes', source: 'PNW-KEY', confidence: 'disputed' },
    { mark: 'brown-patches', old: 'rarely', new: 'sometimes', source: 'PNW-KEY', confidence: 'disputed' },
    { mark: 'yellow-even', old: 'rarely', new: 'rarely', source: 'from memory', confidence: 'disputed' },
    { mark: 'brown-edges', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'cupped-up', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'small-leaves', new: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'sometimes', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'rarely', source: 'from memory', confidence: 'disputed' },
    { sign: 'oldest-first', frequency: 'rarely', source: 'RLF-MN', confidence: 'disputed' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'patch', frequency: 'sometimes', source: 'from memory' },
    { sign: 'several-kinds', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'rarely', source: 'from memory' },
    { sign: 'after-cold', frequency: 'sometimes', source: 'from memory' },
    { sign: 'after-feed', frequency: 'rarely', source: 'PNW-KEY' },
    { sign: 'variety-only', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'iron-short',
      tellsApart:
        'Iron gives no dead specks and stays on the newest leaves; manganese speckles and spreads downward.',
      source: 'GMC-KEY',
    },
    {
      cause: 'magnesium-short',
      tellsApart: 'Magnesium begins on the oldest leaves and marbles without specks.',
      source: 'PNW-KEY',
    },
    {
      cause: 'leaf-spot',
      tellsApart:
        'Disease spots are scattered and spread from plant to plant; a shortage is alike on leaves of one age in the whole bed.',
      source: 'PHILRICE',
    },
    {
      cause: 'potassium-short',
      tellsApart:
        'Potassium scorches the edges of old leaves; manganese speckles between the veins, mostly higher up.',
      source: 'PNW-KEY',
    },
  ],
  checks: [
    {
      check: 'test-soil-reaction',
      ifFound: 'Limy: manganese shortage becomes likelier, and iron with it.',
      ifNotFound: 'Acid: rarer, though not excluded.',
    },
    {
      check: 'look-with-lens',
      ifFound: 'Dots with webbing or tiny animals: mites or thrips.',
      ifNotFound: 'Dead specks strictly between the veins and no animals: manganese fits.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'Green where less lime went: it fits.',
      ifNotFound: 'Speckled everywhere: the whole soil, or a disease.',
    },
  ],
  losses: {
    leave: 10,
    watch: 7,
    because: 'speckled leaves work less and the lock-up stays until the soil changes',
    source: 'from memory',
  },
  remedies: [
    {
      course: 'supply-element',
      remains: 4,
      because: 'manganese by the label of the product greens the next leaves',
      source: 'from memory',
    },
    {
      course: 'correct-ph',
      remains: 7,
      because: 'it helps the coming seasons more than this one',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'The newest leaves unfold without specks and stay green between the veins.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test', 'lime'],
};
