import type { Cause } from '../schema.ts';

export const ironShort: Cause = {
  id: 'iron-short',
  what: 'Short of iron, mostly because lime locks it up: the newest leaves turn yellow, then nearly white, between fine green veins, while the old leaves stay green.',
  baseRate: { rate: 0.012, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-ph', is: 'chalky-or-limed' },
      leans: 'far-more',
      because: 'lime locks iron up',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'soil-ph', is: 'acid' },
      leans: 'far-less',
      because: 'in acid soil iron is plentiful',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'soil-water', is: 'waterlogged' },
      leans: 'a-little-more',
      because: 'wet, cold soil hinders the uptake of iron',
      source: 'from memory',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'a-little-more',
      because: 'cold roots take up little iron',
      source: 'from memory',
    },
    {
      when: { setting: 'place', is: 'container' },
      leans: 'a-little-more',
      because: 'hard tap water limes a pot in a season',
      source: 'from memory',
    },
    {
      when: { crop: 'raspberry' },
      leans: 'a-little-more',
      because: 'this fruit suffers first on chalk',
      source: 'from memory',
    },
    {
      when: { crop: 'strawberry' },
      leans: 'a-little-more',
      because: 'this fruit suffers first on chalk',
      source: 'from memory',
    },
    {
      when: { crop: 'soya-bean' },
      leans: 'more',
      because: 'soya is known for it on limy ground',
      source: 'HANSEN-2004',
    },
    {
      when: { crop: 'french-bean' },
      leans: 'a-little-more',
      because: 'beans and peas show it readily',
      source: 'from memory',
    },
    {
      when: { crop: 'pea' },
      leans: 'a-little-more',
      because: 'beans and peas show it readily',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'yellow-between-veins', old: 'rarely', new: 'usually', source: 'PNW-KEY' },
    { mark: 'yellow-even', old: 'hardly-ever', new: 'sometimes', source: 'PNW-KEY' },
    { mark: 'bleached-patches', new: 'rarely', source: 'from memory' },
    { mark: 'mottled', new: 'rarely', source: 'common practice, no source' },
    { mark: 'brown-spots', new: 'hardly-ever', source: 'GMC-KEY' },
    { mark: 'brown-edges', new: 'rarely', source: 'GMC-KEY' },
    { mark: 'small-leaves', new: 'sometimes', source: 'from memory' },
    { sign: 'stunted', frequency: 'sometimes', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'often', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'rarely', source: 'from memory' },
    { sign: 'after-cold', frequency: 'rarely', source: 'from memory' },
    { sign: 'after-feed', frequency: 'rarely', source: 'PNW-KEY' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'variety-only', frequency: 'rarely', source: 'HANSEN-2004' },
  ],
  mistakenFor: [
    {
      cause: 'manganese-short',
      tellsApart:
        'Manganese adds grey or tan dead specks between the veins and spreads to older leaves; with iron the yellow of the newest leaves is the only sign.',
      source: 'GMC-KEY',
    },
    {
      cause: 'magnesium-short',
      tellsApart: 'Magnesium starts on the oldest leaves, iron on the newest.',
      source: 'IPNI-4R',
    },
    {
      cause: 'spray-drift',
      tellsApart:
        'Some weedkillers yellow the base of young leaflets a few days after spraying nearby; iron yellows the whole young leaf between its veins and no spraying went before.',
      source: 'NCSU-PDIC',
    },
    {
      cause: 'sulphur-short',
      tellsApart: 'Sulphur pales the young leaf veins and all; iron leaves the veins green.',
      source: 'CIMMYT-MOB',
    },
  ],
  checks: [
    {
      check: 'test-soil-reaction',
      ifFound: 'Limy: iron shortage becomes much more likely.',
      ifNotFound: 'Acid: it is hardly iron.',
    },
    {
      check: 'finger-in-soil',
      ifFound: 'Sodden: let it drain first, iron may come back by itself.',
      ifNotFound: 'Moist: lime is the likelier reason.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'Green where no lime went: lime-induced.',
      ifNotFound: 'Yellow there too: the water or the soil of the whole place.',
    },
  ],
  losses: {
    leave: 12,
    watch: 8,
    because: 'yellow tips grow slowly as long as the lime stays',
    source: 'from memory',
  },
  remedies: [
    {
      course: 'supply-element',
      remains: 4,
      because: 'iron in a form that lime does not lock greens the next leaves',
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
    looksLike: 'The next leaves come out green between the veins; those already white stay so.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test', 'lime'],
};
