import type { Cause } from '../schema.ts';

export const boronShort: Cause = {
  id: 'boron-short',
  what: 'Short of boron: growing points die, young leaves are thick, brittle and crinkled, stems crack or turn brown and hollow inside, beet rots at the heart.',
  baseRate: { rate: 0.006, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-ph', is: 'chalky-or-limed' },
      leans: 'more',
      because: 'lime locks boron up',
      source: 'BORAX-CAB',
    },
    {
      when: { setting: 'soil-ph', is: 'acid' },
      leans: 'a-little-less',
      because: 'it is seldom locked up in acid soil',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'more',
      because: 'boron washes out of sandy soil',
      source: 'BORAX-CAB',
    },
    {
      when: { setting: 'recent-rain', is: 'dry' },
      leans: 'a-little-more',
      because: 'in drought it does not reach the roots',
      source: 'BORAX-CAB',
    },
    {
      when: { setting: 'soil-water', is: 'dry' },
      leans: 'a-little-more',
      because: 'in dry soil it does not reach the roots',
      source: 'BORAX-CAB',
    },
    { when: { crop: 'brassica' }, leans: 'more', because: 'this crop needs much boron', source: 'WIKI-B' },
    { when: { crop: 'beetroot' }, leans: 'more', because: 'this crop needs much boron', source: 'WIKI-B' },
    { when: { crop: 'celery' }, leans: 'more', because: 'this crop needs much boron', source: 'WIKI-B' },
    {
      when: { crop: 'chard' },
      leans: 'a-little-more',
      because: 'this crop needs much boron',
      source: 'from memory',
    },
    {
      when: { crop: 'celeriac' },
      leans: 'a-little-more',
      because: 'this crop needs much boron',
      source: 'from memory',
    },
    {
      when: { crop: 'spinach' },
      leans: 'a-little-more',
      because: 'this crop needs much boron',
      source: 'from memory',
    },
    {
      when: { crop: 'legume' },
      leans: 'a-little-less',
      because: 'this crop needs little boron',
      source: 'from memory',
    },
    {
      when: { crop: 'allium' },
      leans: 'a-little-less',
      because: 'this crop needs little boron',
      source: 'from memory',
    },
    {
      when: { crop: 'sweetcorn' },
      leans: 'a-little-less',
      because: 'this crop needs little boron',
      source: 'from memory',
    },
  ],
  signs: [
    { sign: 'heart-blackened', frequency: 'often', source: 'WIKI-B' },
    { mark: 'thickened', old: 'rarely', new: 'often', source: 'GMC-KEY' },
    { mark: 'puckered', old: 'rarely', new: 'often', source: 'GMC-KEY' },
    { mark: 'twisted-narrow', new: 'sometimes', source: 'from memory' },
    { mark: 'small-leaves', new: 'sometimes', source: 'from memory' },
    { mark: 'blackened', new: 'sometimes', source: 'WIKI-B' },
    { mark: 'leaf-dead', new: 'sometimes', source: 'GMC-KEY' },
    { mark: 'brown-edges', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'ragged-holes', old: 'rarely', new: 'rarely', source: 'FW-SA' },
    { mark: 'cupped-up', new: 'rarely', source: 'from memory' },
    { mark: 'cupped-down', new: 'sometimes', source: 'from memory' },
    { mark: 'yellow-edges', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-patches', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'purple-tint', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'brown-spots', new: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'often', source: 'from memory' },
    { sign: 'pith-brown', frequency: 'often', source: 'BORAX-CAB' },
    { sign: 'stem-twisted', frequency: 'sometimes', source: 'YARA-B' },
    { sign: 'flowers-dropping', frequency: 'sometimes', source: 'from memory' },
    { sign: 'fruit-misshapen', frequency: 'sometimes', source: 'BORAX-CAB' },
    { sign: 'roots-few-brown', frequency: 'rarely', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'often', source: 'FW-SA' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'variety-only', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'after-feed', frequency: 'rarely', source: 'BORAX-CAB' },
  ],
  mistakenFor: [
    {
      cause: 'calcium-short',
      tellsApart:
        'Boron gives a bushy head of short side shoots and cracked or hollow stems; calcium does not.',
      source: 'MTG-BLOG',
    },
    {
      cause: 'caterpillars',
      tellsApart:
        'Caterpillar holes have smooth edges and skip plants; boron tears are jagged and on every plant.',
      source: 'FW-SA',
    },
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Residue curls new leaves and follows the load; boron makes them thick and brittle and cracks the stems.',
      source: 'common practice, no source',
    },
    {
      cause: 'virus',
      tellsApart: 'Virus mottles and is scattered; boron is alike in the whole bed.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'cut-stem',
      ifFound: 'Brown, wet or hollow inside: boron fits, and a wilt is the other thought.',
      ifNotFound: 'Clean white inside: boron is less likely.',
    },
    {
      check: 'test-soil-reaction',
      ifFound: 'Limy: boron is locked up there.',
      ifNotFound: 'Acid: less likely unless the soil is light and washed out.',
    },
    {
      check: 'finger-in-soil',
      ifFound: 'Dry: water first, boron comes with it.',
      ifNotFound: 'Moist: have the soil tested.',
    },
  ],
  losses: {
    leave: 16,
    watch: 12,
    because: 'heads, hearts and roots are spoilt inside',
    source: 'from memory',
  },
  remedies: [
    {
      course: 'supply-element',
      remains: 9,
      because: 'a trace helps the plants not yet spoilt; a little too much is poison',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'New leaves unfold soft and flat and the growing point lives; cracked stems do not heal.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test'],
};
