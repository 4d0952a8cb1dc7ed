import type { Cause } from '../schema.ts';

export const nitrogenShort: Cause = {
  id: 'nitrogen-short',
  what: 'The plant is hungry for nitrogen: it takes what it has out of the oldest leaves, so these yellow evenly first, and the whole plant stays pale and small.',
  baseRate: { rate: 0.05, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'a-little-more',
      because: 'sandy soil holds little nitrogen',
      source: 'GMC-KEY',
    },
    {
      when: { setting: 'soil-kind', is: 'potting-mix' },
      leans: 'a-little-more',
      because: 'a potting mix is used up after some weeks',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'container' },
      leans: 'a-little-more',
      because: 'a pot holds food for a few weeks only',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'rain washes nitrogen out of the soil',
      source: 'GMC-KEY',
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
      when: { setting: 'compost-kinds', is: 'poultry-manure' },
      leans: 'less',
      because: 'poultry manure is rich in nitrogen',
      source: 'UCSC-COMP',
    },
    {
      when: { setting: 'compost-kinds', is: 'cattle-manure' },
      leans: 'a-little-less',
      because: 'this brings nitrogen',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'grass-clippings' },
      leans: 'a-little-less',
      because: 'this brings nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'legume' },
      leans: 'less',
      because: 'beans and peas make their own nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'brassica' },
      leans: 'a-little-more',
      because: 'this crop is hungry for nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'sweetcorn' },
      leans: 'a-little-more',
      because: 'this crop is hungry for nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'leek' },
      leans: 'a-little-more',
      because: 'this crop is hungry for nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'celery' },
      leans: 'a-little-more',
      because: 'this crop is hungry for nitrogen',
      source: 'from memory',
    },
    {
      when: { setting: 'soil-water', is: 'waterlogged' },
      leans: 'a-little-less',
      because: 'drowned roots alone make leaves as yellow as hunger does',
      source: 'PURDUE-WL',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'a-little-less',
      because: 'a seedling lives on its seed at first',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'usually', new: 'often', source: 'BARKER-HPN' },
    { mark: 'yellow-edges', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-between-veins', old: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'FAO-CABBAGE' },
    { mark: 'small-leaves', old: 'often', new: 'often', source: 'UGA-B1569' },
    { mark: 'leaf-dead', old: 'sometimes', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'sometimes', source: 'GMC-KEY' },
    { sign: 'stunted', frequency: 'often', source: 'GMC-KEY' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'usually', source: 'AZ-MG-SUM' },
    { sign: 'oldest-first', frequency: 'usually', source: 'IPNI-4R' },
    { sign: 'several-kinds', frequency: 'often', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'sometimes', source: 'from memory' },
    { sign: 'early-flowering', frequency: 'rarely', source: 'from memory' },
    { sign: 'flowers-dropping', frequency: 'rarely', source: 'from memory' },
    { sign: 'getting-better', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-locked',
      tellsApart:
        'If wood, straw or raw compost was dug in and the strip without it is green, the nitrogen is there but locked up.',
      source: 'common practice, no source',
    },
    {
      cause: 'old-leaves',
      tellsApart:
        'Age takes the lowest leaf or two of a strong, dark plant; hunger pales the plant as a whole.',
      source: 'AZ-MG-DEFINE',
    },
    {
      cause: 'wet-roots',
      tellsApart:
        'After waterlogging the soil is sodden and plants hang; feeding does not help roots without air.',
      source: 'PURDUE-WL',
    },
    {
      cause: 'sulphur-short',
      tellsApart: 'Sulphur shows on the young leaves first when nitrogen is ample.',
      source: 'CIMMYT-MOB',
    },
  ],
  checks: [
    {
      check: 'look-in-root-zone',
      ifFound: 'Wood or straw among the roots: call it lock-up and mix in no more.',
      ifNotFound: 'Nothing rotting there: plain hunger stays likely.',
    },
    {
      check: 'finger-in-soil',
      ifFound: 'Moist, not sodden: hunger remains likely.',
      ifNotFound: 'Sodden or dry: water explains a good part of the yellow.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'The yellow climbs leaf by leaf: hunger goes on.',
      ifNotFound: 'Only the lowest leaf went and the top is green: age.',
    },
  ],
  losses: {
    leave: 25,
    watch: 16,
    because: 'a pale plant grows slowly, and the lost weeks do not come back',
    source: 'from memory',
  },
  tempered: [
    {
      when: { setting: 'crop-stage', is: 'old' },
      leave: 3,
      watch: 3,
      because: 'so late in the season feed comes too late to matter',
      source: 'common practice, no source',
    },
  ],
  remedies: [
    {
      course: 'quick-nitrogen',
      remains: 3,
      because: 'quick nitrogen greens the new leaves within two weeks',
      source: 'from memory',
    },
    {
      course: 'feed-while-it-rots',
      remains: 6,
      because: 'small feeds green the leaves too, only more slowly',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 12,
    looksLike: 'The newest leaves are greener and larger; leaves already yellow do not recover.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test'],
};
