import type { Cause } from '../schema.ts';

export const leafRoll: Cause = {
  id: 'leaf-roll',
  what: 'Tomato and its relatives roll their lower leaves up and inward after heat, rain, hard pruning or rich feeding. The leaves turn thick and leathery; the crop is none the worse.',
  baseRate: { rate: 0.02, confidence: 'described', source: 'common practice, no source' },
  onlyCrops: ['nightshade', 'other'],
  leanings: [
    {
      when: { crop: 'tomato' },
      leans: 'more',
      because: 'tomatoes roll readily, staked kinds most',
      source: 'UMAN-ROLL',
    },
    {
      when: { crop: 'other' },
      leans: 'far-less',
      because: 'this harmless roll belongs to tomato and its relatives',
      source: 'UMAN-ROLL',
    },
    {
      when: { setting: 'recent-temperature', is: 'hot' },
      leans: 'a-little-more',
      because: 'heat sets it off',
      source: 'UMAN-ROLL',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'a-little-less',
      because: 'heat sets it off more than cold',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'a-little-more',
      because: 'rich nitrogen sets it off',
      source: 'UMAN-ROLL',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'wet soil sets it off',
      source: 'UMAN-ROLL',
    },
    {
      when: { setting: 'recent-rain', is: 'dry' },
      leans: 'a-little-more',
      because: 'drought sets it off',
      source: 'UMAN-ROLL',
    },
    {
      when: { setting: 'crop-stage', is: 'fruiting' },
      leans: 'a-little-more',
      because: 'it comes when fruit begins to set',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'less',
      because: 'seedlings hardly roll',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'cupped-up', old: 'usually', new: 'sometimes', source: 'UMAN-ROLL' },
    { mark: 'thickened', old: 'often', new: 'rarely', source: 'UMAN-ROLL' },
    { mark: 'dull-limp', old: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-edges', old: 'rarely', source: 'common practice, no source' },
    { mark: 'puckered', old: 'rarely', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'usually', source: 'UMAN-ROLL' },
    { sign: 'oldest-first', frequency: 'usually', source: 'UMAN-ROLL' },
    { sign: 'whole-bed', frequency: 'often', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-plant', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'variety-only', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'sudden', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-hot-sun', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'after-rain', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'after-feed', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'recovers-overnight', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'sometimes', source: 'UMAN-ROLL' },
  ],
  mistakenFor: [
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Residue curls and narrows the newest leaves and twists stems; harmless roll begins on the lower leaves and the top is straight.',
      source: 'OSU-CARRY',
    },
    {
      cause: 'virus',
      tellsApart:
        'Virus mottles or narrows the young leaves and stunts the plant; rolled leaves are plain green and full-sized.',
      source: 'OMAFRA-V',
    },
    {
      cause: 'aphids',
      tellsApart: 'Under a leaf curled by aphids sit the insects, their skins or their honeydew.',
      source: 'FFR-APHID',
    },
    {
      cause: 'spray-drift',
      tellsApart:
        'Drift turns leaves down, twists them and draws the veins parallel; the harmless roll turns up and in.',
      source: 'UMAN-ROLL',
    },
  ],
  checks: [
    {
      check: 'turn-leaf-over',
      ifFound: 'Insects underneath: not the harmless roll, or not alone.',
      ifNotFound: 'Clean underneath: harmless roll stays likely.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'The top grows on flat and green: harmless.',
      ifNotFound: 'The newest leaves curl or narrow: think of residue, drift or virus.',
    },
    {
      check: 'pot-test',
      ifFound: 'Beans in that compost cup and twist: residue, not harmless roll.',
      ifNotFound: 'Beans grow flat: the compost is cleared.',
    },
  ],
  losses: { leave: 0, watch: 0, because: 'it passes and costs little or nothing', source: 'UMAN-ROLL' },
  remedies: [],
  recovery: {
    lookAgainDays: 14,
    looksLike:
      'The top of the plant is straight and green and fruit goes on setting; rolled leaves may stay rolled.',
    source: 'UMAN-ROLL',
  },
  cautions: [],
};
