import type { Cause } from '../schema.ts';

export const blight: Cause = {
  id: 'blight',
  what: 'Late blight of potatoes and tomatoes: dark wet blotches run over leaves and stems within days, with white down underneath in damp weather. It travels on the wind.',
  baseRate: { rate: 0.02, confidence: 'described', source: 'common practice, no source' },
  onlyCrops: ['nightshade'],
  leanings: [
    { when: { crop: 'potato' }, leans: 'more', because: 'potato is its first host', source: 'AHDB-HUTTON' },
    {
      when: { crop: 'tomato' },
      leans: 'a-little-more',
      because: 'tomato is its second host',
      source: 'QCT-ILL',
    },
    {
      when: { crop: 'pepper' },
      leans: 'far-less',
      because: 'peppers hardly ever take it',
      source: 'from memory',
    },
    {
      when: { crop: 'aubergine' },
      leans: 'less',
      because: 'aubergines seldom take it',
      source: 'from memory',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'more',
      because: 'it needs hours of very damp air two days running',
      source: 'AHDB-HUTTON',
    },
    {
      when: { setting: 'recent-rain', is: 'dry' },
      leans: 'less',
      because: 'dry air does not suit it',
      source: 'AHDB-HUTTON',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'a-little-less',
      because: 'it needs nights of 10 °C or more',
      source: 'AHDB-HUTTON',
    },
    {
      when: { setting: 'recent-temperature', is: 'hot' },
      leans: 'a-little-less',
      because: 'hot dry air stops it',
      source: 'from memory',
    },
    {
      when: { setting: 'place', is: 'under-cover' },
      leans: 'less',
      because: 'leaves stay dry under cover',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'far-less',
      because: 'leaves stay dry indoors',
      source: 'common practice, no source',
    },
    {
      when: { season: 'summer' },
      leans: 'a-little-more',
      because: 'its main season',
      source: 'common practice, no source',
    },
    {
      when: { season: 'autumn' },
      leans: 'a-little-more',
      because: 'damp autumn mornings',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'less',
      because: 'early in the year it is rare',
      source: 'common practice, no source',
    },
    {
      when: { season: 'winter' },
      leans: 'far-less',
      because: 'no green host stands outdoors',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'less',
      because: 'young plants seldom show it first',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'spreading-blotches', old: 'usually', new: 'often', source: 'QCT-ILL' },
    { mark: 'blackened', old: 'often', new: 'sometimes', source: 'HTT-BLIGHT' },
    { mark: 'brown-patches', old: 'often', new: 'sometimes', source: 'HTT-BLIGHT' },
    { mark: 'leaf-dead', old: 'often', new: 'sometimes', source: 'from memory' },
    { mark: 'brown-edges', old: 'sometimes', new: 'sometimes', source: 'HTT-BLIGHT' },
    { mark: 'grey-mould-under', old: 'often', new: 'sometimes', source: 'QCT-ILL' },
    { mark: 'brown-spots', old: 'sometimes', new: 'rarely', source: 'from memory' },
    { mark: 'haloed-spots', old: 'sometimes', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-patches', old: 'sometimes', new: 'rarely', source: 'HTT-BLIGHT' },
    { mark: 'yellow-even', old: 'rarely', source: 'from memory' },
    { mark: 'dull-limp', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { sign: 'stem-base-rot', frequency: 'rarely', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'from memory' },
    { sign: 'spreading', frequency: 'usually', source: 'QCT-ILL' },
    { sign: 'sudden', frequency: 'often', source: 'QCT-ILL' },
    { sign: 'after-rain', frequency: 'often', source: 'AHDB-HUTTON' },
    { sign: 'whole-bed', frequency: 'often', source: 'from memory' },
    { sign: 'patch', frequency: 'sometimes', source: 'from memory' },
    { sign: 'scattered', frequency: 'sometimes', source: 'AZ-MG-SUM' },
    { sign: 'one-end', frequency: 'sometimes', source: 'from memory' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'from memory' },
    { sign: 'oldest-first', frequency: 'sometimes', source: 'from memory' },
  ],
  mistakenFor: [
    {
      cause: 'leaf-spot',
      tellsApart:
        'Early blight and leaf spots stay small and ringed or specked, and climb slowly from the lowest leaves; late blight has no rings and takes young leaves and stems too, within days.',
      source: 'QCT-ILL',
    },
    {
      cause: 'wilt-disease',
      tellsApart: 'Wilt goes up one side with brown wood inside and no wet blotches.',
      source: 'UC-FUS',
    },
    {
      cause: 'frost',
      tellsApart: 'Frost blackens every tender crop in one night and does not spread afterwards.',
      source: 'from memory',
    },
    {
      cause: 'sun-scorch',
      tellsApart: 'Scorch is dry and pale from the start and stays where it is.',
      source: 'from memory',
    },
  ],
  checks: [
    {
      check: 'turn-leaf-over',
      ifFound: 'White down round a dark blotch underneath, on a damp morning: late blight.',
      ifNotFound:
        'No down in dry weather proves little: lay a leaf in a closed damp bag overnight and look again.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'The blotch has doubled in two days: cut the tops at once.',
      ifNotFound: 'The spot keeps its edge for a week: not late blight.',
    },
  ],
  losses: {
    leave: 100,
    watch: 85,
    because:
      'in wet weather the tops are gone within a fortnight and the spores wash down to the tubers and on to the neighbours',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'clear-at-once',
      remains: 10,
      because: 'what tubers there are stay sound, and the neighbours get less of it',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 3,
    looksLike:
      'Clean stems and no new blotches above the cut; tubers lifted two to three weeks later without brown marks.',
    source: 'common practice, no source',
  },
  cautions: ['notifiable', 'do-not-compost', 'local-rules', 'ask'],
};
