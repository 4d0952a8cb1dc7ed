import type { Cause } from '../schema.ts';

export const wetRoots: Cause = {
  id: 'wet-roots',
  what: 'The soil has been full of water, so the roots have no air and begin to die. The plant hangs and yellows although it stands in water.',
  baseRate: { rate: 0.035, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-water', is: 'waterlogged' },
      leans: 'far-more',
      because: 'roots without air die',
      source: 'PURDUE-WL',
    },
    {
      when: { setting: 'soil-water', is: 'moist' },
      leans: 'a-little-less',
      because: 'the soil is no more than moist now',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'soil-water', is: 'dry' },
      leans: 'far-less',
      because: 'the soil is dry',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-more',
      because: 'much rain fills the soil',
      source: 'PURDUE-WVG',
    },
    {
      when: { setting: 'recent-rain', is: 'dry' },
      leans: 'less',
      because: 'there was little rain',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'soil-kind', is: 'clay' },
      leans: 'a-little-more',
      because: 'clay drains slowly',
      source: 'from memory',
    },
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'a-little-less',
      because: 'sand drains fast',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'dull-limp', old: 'often', new: 'often', source: 'PURDUE-WL' },
    { mark: 'yellow-even', old: 'often', new: 'sometimes', source: 'PURDUE-WL' },
    { mark: 'cupped-down', old: 'sometimes', new: 'sometimes', source: 'PURDUE-WL' },
    { mark: 'yellow-between-veins', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-patches', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-edges', old: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'brown-edges', old: 'sometimes', new: 'rarely', source: 'from memory' },
    { mark: 'brown-patches', old: 'rarely', source: 'common practice, no source' },
    { mark: 'blackened', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'small-leaves', old: 'rarely', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'blisters-under', old: 'rarely', source: 'GP-EDEMA' },
    { sign: 'wilts-wet-soil', frequency: 'often', source: 'PURDUE-WL' },
    { sign: 'recovers-overnight', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'stunted', frequency: 'often', source: 'PURDUE-WL3' },
    { sign: 'roots-few-brown', frequency: 'often', source: 'from memory' },
    { sign: 'stem-base-rot', frequency: 'rarely', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'sometimes', source: 'from memory' },
    { sign: 'flowers-dropping', frequency: 'sometimes', source: 'from memory' },
    { sign: 'fruit-end-black', frequency: 'sometimes', source: 'PURDUE-WL' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'usually', source: 'PURDUE-WVG' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'patch', frequency: 'often', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'one-end', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'often', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'often', source: 'from memory' },
    { sign: 'sudden', frequency: 'sometimes', source: 'PURDUE-WL3' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
  ],
  mistakenFor: [
    { cause: 'drought', tellsApart: 'Both wilt; one finger in the soil decides.', source: 'MGP-DIAG' },
    {
      cause: 'nitrogen-short',
      tellsApart:
        'The yellow looks the same, but the soil is sodden and the plants hang; feed does not help roots without air.',
      source: 'PURDUE-WL',
    },
    {
      cause: 'root-rot',
      tellsApart:
        'Rot goes on after the soil has drained and takes plants here and there; drowning takes the low places as a whole.',
      source: 'common practice, no source',
    },
    {
      cause: 'wilt-disease',
      tellsApart: 'A wilt begins on one side and browns the inside of the stem.',
      source: 'UC-FUS',
    },
  ],
  checks: [
    {
      check: 'finger-in-soil',
      ifFound: 'Sodden: the roots lack air.',
      ifNotFound: 'Moist or dry: something else, or it is over.',
    },
    {
      check: 'lift-plant',
      ifFound: 'Few, brown, soft roots: they have drowned.',
      ifNotFound: 'White roots: the plant has got through.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'Good where water drains away: it is the water.',
      ifNotFound: 'As bad on drained ground: look further.',
    },
  ],
  losses: {
    leave: 28,
    watch: 20,
    because: 'roots without air die within days and need weeks to grow anew',
    source: 'PURDUE-WL',
  },

  remedies: [
    {
      course: 'let-dry',
      remains: 10,
      because: 'once air reaches the soil new roots form in days to weeks',
      source: 'PURDUE-WL',
    },
  ],
  recovery: {
    lookAgainDays: 7,
    looksLike: 'New white roots and upright leaves by day; lost leaves do not come back.',
    source: 'PURDUE-WL',
  },
  cautions: [],
};
