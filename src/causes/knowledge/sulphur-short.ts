import type { Cause } from '../schema.ts';

export const sulphurShort: Cause = {
  id: 'sulphur-short',
  what: 'Short of sulphur: the whole plant is evenly pale, most often the young leaves first, on light soils that rain has washed out.',
  baseRate: { rate: 0.006, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'more',
      because: 'sulphur washes out of light soil',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'rain washes sulphur out',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'compost-kinds', is: 'none' },
      leans: 'a-little-more',
      because: 'soil poor in humus holds little sulphur',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'compost-kinds', is: 'cattle-manure' },
      leans: 'a-little-less',
      because: 'manure brings sulphur',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'poultry-manure' },
      leans: 'a-little-less',
      because: 'manure brings sulphur',
      source: 'from memory',
    },
    {
      when: { crop: 'brassica' },
      leans: 'more',
      because: 'brassicas need much sulphur',
      source: 'from memory',
    },
    {
      when: { crop: 'allium' },
      leans: 'a-little-more',
      because: 'onions need much sulphur',
      source: 'from memory',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'a-little-more',
      because: 'ample nitrogen brings it out',
      source: 'CIMMYT-MOB',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'sometimes', new: 'usually', source: 'CIMMYT-MOB', confidence: 'disputed' },
    {
      mark: 'yellow-along-veins',
      old: 'rarely',
      new: 'sometimes',
      source: 'GMC-KEY',
      confidence: 'disputed',
    },
    {
      mark: 'yellow-between-veins',
      old: 'rarely',
      new: 'rarely',
      source: 'from memory',
      confidence: 'disputed',
    },
    { mark: 'yellow-edges', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'purple-tint', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { mark: 'cupped-up', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'small-leaves', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'thickened', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'brown-edges', old: 'hardly-ever', new: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'often', source: 'from memory' },
    { sign: 'flowers-dropping', frequency: 'rarely', source: 'from memory' },
    { sign: 'oldest-first', frequency: 'rarely', source: 'CIMMYT-MOB', confidence: 'disputed' },
    { sign: 'new-growth-clean', frequency: 'hardly-ever', source: 'CIMMYT-MOB' },
    { sign: 'whole-bed', frequency: 'usually', source: 'AZ-MG-SUM' },
    { sign: 'several-kinds', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'often', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'sometimes', source: 'from memory' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-short',
      tellsApart: 'Nitrogen starts on the lowest leaves; sulphur starts at the top when nitrogen is ample.',
      source: 'CIMMYT-MOB',
    },
    {
      cause: 'iron-short',
      tellsApart: 'Iron leaves the veins green; sulphur pales them too.',
      source: 'GMC-KEY',
    },
    {
      cause: 'cold-check',
      tellsApart: 'Cold pales tender crops and passes with warmth.',
      source: 'common practice, no source',
    },
    {
      cause: 'wet-roots',
      tellsApart: 'Roots without air look hungry as well, so judge the soil before the leaf.',
      source: 'HYD-AU',
    },
  ],
  checks: [
    {
      check: 'wait-and-compare',
      ifFound: 'The pallor stays on new leaves in warm weather: a shortage.',
      ifNotFound: 'It greens by itself: it was the cold.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'Greener where compost or manure went: it fits.',
      ifNotFound: 'The same everywhere: have the soil tested.',
    },
  ],
  losses: { leave: 8, watch: 6, because: 'pale plants stay small', source: 'from memory' },
  remedies: [
    {
      course: 'supply-element',
      remains: 3,
      because: 'sulphur by the label of the product greens new leaves',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'New leaves come out a full green.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test'],
};
