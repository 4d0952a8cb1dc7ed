import type { Cause } from '../schema.ts';

export const sunScorch: Cause = {
  id: 'sun-scorch',
  what: 'Sudden fierce sun or heat: whitish, papery patches on the leaves that faced it, or leaves that hang at noon on moist soil and stand by evening.',
  baseRate: { rate: 0.025, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'light', is: 'scorching' },
      leans: 'more',
      because: 'it stands in scorching sun',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'light', is: 'dull' },
      leans: 'far-less',
      because: 'there is too little sun to scorch',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'hot' },
      leans: 'more',
      because: 'it was hot',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'cold-for-crop' },
      leans: 'less',
      because: 'it was cold',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-temperature', is: 'frost' },
      leans: 'far-less',
      because: 'there was frost',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'hardened-off', is: 'no' },
      leans: 'a-little-more',
      because: 'its leaves were not used to the sun',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'just-planted' },
      leans: 'a-little-more',
      because: 'it has just come out into the light',
      source: 'common practice, no source',
    },
    {
      when: { season: 'winter' },
      leans: 'far-less',
      because: 'the winter sun is weak',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'bleached-patches', old: 'usually', new: 'often', source: 'from memory' },
    { mark: 'brown-patches', old: 'often', new: 'sometimes', source: 'from memory' },
    { mark: 'brown-edges', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'yellow-patches', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-even', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'cupped-up', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'thickened', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'common practice, no source' },
    { sign: 'wilts-wet-soil', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'wilts-dry-soil', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'recovers-overnight', frequency: 'often', source: 'common practice, no source' },
    { sign: 'flowers-dropping', frequency: 'sometimes', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'often', source: 'common practice, no source' },
    { sign: 'after-hot-sun', frequency: 'usually', source: 'from memory' },
    { sign: 'sudden', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-wind', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'sometimes', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'often', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'sometimes', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'drought',
      tellsApart:
        'Thirst goes with dry soil and hangs into the night; heat alone lets the plant stand by evening.',
      source: 'common practice, no source',
    },
    {
      cause: 'powdery-mildew',
      tellsApart: 'Mildew is a powder that rubs off; scorch is dead papery leaf.',
      source: 'UCONN-MILD',
    },
    {
      cause: 'frost',
      tellsApart: 'Frost comes in a cold night and blackens; scorch bleaches on a hot day.',
      source: 'common practice, no source',
    },
    {
      cause: 'leaf-spot',
      tellsApart: 'Spots spread for weeks; scorch is there at once, with a sharp edge, and stops.',
      source: 'AZ-MG-SUM',
    },
  ],
  checks: [
    {
      check: 'finger-in-soil',
      ifFound: 'Moist, and it stands again by evening: only heat.',
      ifNotFound: 'Dry: water deeply, it is thirst as well.',
    },
    {
      check: 'look-at-dawn',
      ifFound: 'Firm at dawn: the heat of the day.',
      ifNotFound: 'Limp at dawn: roots or stem are hurt.',
    },
    {
      check: 'rub-leaf',
      ifFound: 'Powder comes off: mildew.',
      ifNotFound: 'Nothing comes off, papery: scorch.',
    },
  ],
  losses: {
    leave: 5,
    watch: 4,
    because: 'marked leaves work less; new ones grow used to the sun',
    source: 'common practice, no source',
  },

  remedies: [
    {
      course: 'shade',
      remains: 2,
      because: 'some days of shade let new leaves harden',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 7,
    looksLike: 'New leaves without white patches; those marked stay so and need not come off.',
    source: 'common practice, no source',
  },
  cautions: [],
};
