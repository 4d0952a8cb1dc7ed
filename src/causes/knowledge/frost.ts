import type { Cause } from '../schema.ts';

export const frost: Cause = {
  id: 'frost',
  what: 'Frost: water froze in the leaves overnight. They look glassy, then black, limp or bleached, mostly on the leaves open to the sky.',
  baseRate: { rate: 0.015, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'recent-temperature', is: 'frost' },
      leans: 'far-more',
      because: 'there was frost',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'about-right' },
      leans: 'far-less',
      because: 'it was not near freezing',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'hot' },
      leans: 'never',
      because: 'it was hot',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'chilling-sensitive' },
      leans: 'more',
      because: 'this crop cannot stand frost',
      source: 'from memory',
    },
    {
      when: { crop: 'potato' },
      leans: 'more',
      because: 'potato tops die at one or two degrees of frost',
      source: 'from memory',
    },
    {
      when: { crop: 'hardy' },
      leans: 'far-less',
      because: 'this crop stands through frost',
      source: 'from memory',
    },
    {
      when: { crop: 'brassica' },
      leans: 'less',
      because: 'this crop stands light frost',
      source: 'from memory',
    },
    {
      when: { crop: 'allium' },
      leans: 'less',
      because: 'this crop stands light frost',
      source: 'from memory',
    },
    { when: { crop: 'pea' }, leans: 'less', because: 'this crop stands light frost', source: 'from memory' },
    {
      when: { season: 'summer' },
      leans: 'far-less',
      because: 'frost in summer is rare',
      source: 'common practice, no source',
    },
    {
      when: { season: 'no-winter' },
      leans: 'far-less',
      because: 'frost is rare where it is warm all year',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'a-little-more',
      because: 'late and early frosts come in spring and autumn',
      source: 'common practice, no source',
    },
    {
      when: { season: 'autumn' },
      leans: 'a-little-more',
      because: 'late and early frosts come in spring and autumn',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'under-cover' },
      leans: 'less',
      because: 'cover keeps light frost off',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'far-less',
      because: 'indoors it hardly freezes',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'a-little-less',
      because: 'it was cold, but no frost was noticed',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'blackened', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'often', new: 'sometimes', source: 'MSU-FREEZE' },
    { mark: 'bleached-patches', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'brown-patches', old: 'sometimes', new: 'sometimes', source: 'MSU-FREEZE' },
    { mark: 'brown-edges', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    // It looks wet where it froze, turns brown or black as it thaws, and goes no further: blotches that grow into each other are
    // not its mark.
    { mark: 'spreading-blotches', old: 'hardly-ever', new: 'hardly-ever', source: 'MSU-FREEZE' },
    { mark: 'purple-tint', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'cupped-down', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'cupped-up', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'puckered', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-patches', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { sign: 'heart-blackened', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'flowers-dropping', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'leaf-drop', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'stem-base-rot', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'wilts-wet-soil', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'sudden', frequency: 'usually', source: 'AZ-MG-SUM' },
    { sign: 'after-cold', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'several-kinds', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'one-end', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'stunted', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'blight',
      tellsApart:
        'Blight comes in mild wet weather and spreads day by day with white down underneath; frost comes in one clear night and stops.',
      source: 'HTT-BLIGHT',
    },
    {
      cause: 'cold-check',
      tellsApart: 'Chilling pales, purples or browns edges slowly; frost blackens overnight.',
      source: 'UMASS-2021',
    },
    {
      cause: 'sun-scorch',
      tellsApart:
        'Scorch is whitish and papery on the sun side; frost is glassy and black on what lay open to the sky.',
      source: 'common practice, no source',
    },
    { cause: 'wind-batter', tellsApart: 'Wind browns one side only.', source: 'common practice, no source' },
    {
      cause: 'leaf-spot',
      tellsApart:
        'Leaf spots are separate, with a clear edge, a few more each week; frost takes whole tips, edges or leaves in one night.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'compare-other-crops',
      ifFound: 'Tender crops black, hardy ones sound, covered leaves green: frost.',
      ifNotFound: 'Only one crop, and spreading: disease.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'Nothing further goes black: frost.',
      ifNotFound: 'More each day: disease, look at once.',
    },
  ],
  losses: {
    leave: 14,
    watch: 11,
    because:
      'what is black is lost; plants with a living growing point shoot again, but the next frost takes more',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'keep-warm',
      remains: 6,
      because: 'fleece or a cloche saves the rest from the next frost',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 8,
    looksLike:
      'Green buds at the growing point or in the lower leaf joints; black leaves dry up and no more follow.',
    source: 'common practice, no source',
  },
  cautions: [],
};
