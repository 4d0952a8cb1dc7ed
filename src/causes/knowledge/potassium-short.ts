import type { Cause } from '../schema.ts';

export const potassiumShort: Cause = {
  id: 'potassium-short',
  what: 'Short of potash: the edges of the older leaves yellow, then scorch brown and may curl, most on a plant heavy with fruit or tubers.',
  baseRate: { rate: 0.012, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'more',
      because: 'potash washes out of sandy soil',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'soil-kind', is: 'clay' },
      leans: 'a-little-less',
      because: 'clay holds potash',
      source: 'from memory',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'rain washes potash out',
      source: 'from memory',
    },
    {
      when: { setting: 'feed', is: 'none' },
      leans: 'a-little-more',
      because: 'it has had nothing',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'less',
      because: 'it has had plenty',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-kinds', is: 'biochar-or-ash' },
      leans: 'less',
      because: 'wood ash is rich in potash',
      source: 'from memory',
    },
    {
      when: { setting: 'crop-stage', is: 'fruiting' },
      leans: 'more',
      because: 'fruit draws potash out of the leaves',
      source: 'from memory',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'less',
      because: 'a seedling still lives from its seed',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'container' },
      leans: 'a-little-more',
      because: 'a pot holds food for a few weeks only',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'nightshade' },
      leans: 'a-little-more',
      because: 'this crop needs much potash',
      source: 'from memory',
    },
    {
      when: { crop: 'broad-bean' },
      leans: 'a-little-more',
      because: 'this crop needs much potash',
      source: 'from memory',
    },
    {
      when: { crop: 'french-bean' },
      leans: 'a-little-more',
      because: 'this crop needs much potash',
      source: 'from memory',
    },
    {
      when: { crop: 'soya-bean' },
      leans: 'a-little-more',
      because: 'filling pods take much potassium',
      source: 'ISU-K',
    },
    {
      when: { setting: 'recent-rain', is: 'dry' },
      leans: 'a-little-more',
      because: 'roots in dry soil find little potassium',
      source: 'ISU-K',
    },
  ],
  signs: [
    { mark: 'yellow-edges', old: 'usually', new: 'sometimes', source: 'ISU-K', confidence: 'disputed' },
    { mark: 'brown-edges', old: 'usually', new: 'rarely', source: 'DOC-NUT' },
    { mark: 'yellow-between-veins', old: 'sometimes', source: 'UMD-NUT', confidence: 'disputed' },
    { mark: 'cupped-down', old: 'sometimes', source: 'PNW-KEY', confidence: 'disputed' },
    { mark: 'cupped-up', old: 'sometimes', source: 'UMD-NUT', confidence: 'disputed' },
    { mark: 'puckered', old: 'sometimes', source: 'UMD-NUT', confidence: 'disputed' },
    { mark: 'brown-spots', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'brown-patches', old: 'sometimes', source: 'UMD-NUT' },
    { mark: 'purple-tint', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'yellow-even', old: 'rarely', source: 'common practice, no source' },
    { mark: 'mottled', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-patches', old: 'rarely', source: 'common practice, no source' },
    { mark: 'thickened', old: 'rarely', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'sometimes', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'sometimes', source: 'from memory' },
    { sign: 'fruit-misshapen', frequency: 'sometimes', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'often', source: 'IPNI-4R' },
    { sign: 'oldest-first', frequency: 'usually', source: 'CORNELL-NRCCA' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'magnesium-short',
      tellsApart:
        'Magnesium marbles between green veins and leaves the edge clean; potash scorches the edge.',
      source: 'PNW-KEY',
    },
    {
      cause: 'salt-burn',
      tellsApart:
        'Excess feed burns edges within days of feeding; a shortage of potash creeps up over weeks.',
      source: 'MGP-DIAG',
    },
    {
      cause: 'drought',
      tellsApart: 'Thirst browns edges on dry soil with hanging leaves.',
      source: 'MGP-DIAG',
    },
    {
      cause: 'leaf-spot',
      tellsApart: 'Disease is scattered and spreads; a shortage is alike on leaves of one age.',
      source: 'PHILRICE',
    },
    {
      cause: 'old-leaves',
      tellsApart:
        'An ageing leaf yellows whole, veins and all, at the very bottom; potash scorches the edge first, well up the plant.',
      source: 'DOC-NUT',
    },
  ],
  checks: [
    {
      check: 'finger-in-soil',
      ifFound: 'Moist: thirst is out, potash stays likely.',
      ifNotFound: 'Dry: thirst browns edges too.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'Better where ash or feed went: it fits.',
      ifNotFound: 'The same everywhere: the whole soil may be short.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'Scorch climbs leaf by leaf, the tip clean: it fits.',
      ifNotFound: 'It stops where it is: a single burn from sun, wind or feed.',
    },
  ],
  losses: {
    leave: 18,
    watch: 13,
    because: 'fruit and tubers fill poorly on scorched leaves',
    source: 'from memory',
  },
  remedies: [
    {
      course: 'supply-element',
      remains: 4,
      because: 'potash by the label of the product protects the leaves still green',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'No further leaves scorch and the young ones keep green edges; burnt edges stay.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test'],
};
