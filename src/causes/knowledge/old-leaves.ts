import type { Cause } from '../schema.ts';

export const oldLeaves: Cause = {
  id: 'old-leaves',
  what: 'The lowest leaves are old; the plant draws what it can use out of them and lets them go. That is no shortage, though old leaves left lying feed slugs.',
  baseRate: { rate: 0.07, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'crop-stage', is: 'old' },
      leans: 'far-more',
      because: 'loss of the oldest leaves alone is ordinary ageing',
      source: 'AZ-MG-DEFINE',
    },
    {
      when: { setting: 'crop-stage', is: 'fruiting' },
      leans: 'more',
      because: 'a plant in fruit lets its lowest leaves go',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'just-planted' },
      leans: 'less',
      because: 'a young plant has no old leaves to lose beyond its seed leaves',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'far-less',
      because: 'a seedling has only its seed leaves to lose',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'days-since-planting', is: '0-9' },
      leans: 'less',
      because: 'hardly planted, it is too early to age',
      source: 'common practice, no source',
    },
    {
      when: { season: 'autumn' },
      leans: 'a-little-more',
      because: 'leaves age as the season ends',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'a-little-less',
      because: 'most plants are young in spring',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'allium' },
      leans: 'a-little-more',
      because: 'the tops of bulbs and tubers yellow as they ripen',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'potato' },
      leans: 'a-little-more',
      because: 'the tops of bulbs and tubers yellow as they ripen',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'asparagus' },
      leans: 'a-little-more',
      because: 'its fern yellows as its season ends',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'usually', new: 'rarely', source: 'AZ-MG-DEFINE' },
    { mark: 'yellow-patches', old: 'sometimes', source: 'common practice, no source' },
    { mark: 'yellow-edges', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-between-veins', old: 'rarely', source: 'common practice, no source' },
    { mark: 'brown-edges', old: 'sometimes', source: 'common practice, no source' },
    { mark: 'brown-patches', old: 'sometimes', source: 'common practice, no source' },
    { mark: 'brown-spots', old: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'often', new: 'rarely', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'whole-colour-golden', old: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'leaf-drop', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'usually', source: 'AZ-MG-DEFINE' },
    { sign: 'oldest-first', frequency: 'usually', source: 'AZ-MG-DEFINE' },
    { sign: 'whole-bed', frequency: 'often', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'one-plant', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-short',
      tellsApart:
        'In ageing only the very lowest leaves go and the new ones are dark and full-sized; short of nitrogen the whole plant pales and stays small.',
      source: 'AZ-MG-DEFINE',
    },
    {
      cause: 'magnesium-short',
      tellsApart:
        'Magnesium shows green veins on yellow, well up the plant; an ageing leaf yellows veins and all.',
      source: 'PNW-KEY',
    },
    {
      cause: 'leaf-spot',
      tellsApart:
        'Leaf spot leaves spots with a dark rim and climbs; ageing is even and stays at the bottom.',
      source: 'PRGDB',
    },
    {
      cause: 'wilt-disease',
      tellsApart:
        'A wilt takes one side or one shoot and browns the inside of the stem; ageing takes the lowest leaves all round.',
      source: 'UC-FUS',
    },
  ],
  checks: [
    {
      check: 'wait-and-compare',
      ifFound: 'The next leaves up stay green and the tip is clean: only age.',
      ifNotFound: 'Yellow is climbing a leaf every few days: look for hunger or disease.',
    },
    {
      check: 'cut-stem',
      ifFound: 'Brown streaks inside: a wilt, not age.',
      ifNotFound: 'The stem is clean inside, as it should be.',
    },
    {
      check: 'compare-other-crops',
      ifFound: 'Several young crops are yellow too: the ground or the weather is at work.',
      ifNotFound: 'Only the oldest leaves of this one crop: ageing fits.',
    },
  ],
  losses: { leave: 0, watch: 0, because: 'the leaves had done their work', source: 'AZ-MG-DEFINE' },
  remedies: [],
  recovery: {
    lookAgainDays: 10,
    looksLike:
      'The newest leaves are a good green and full-sized, and no more than the lowest leaf or two have gone.',
    source: 'common practice, no source',
  },
  cautions: [],
};
