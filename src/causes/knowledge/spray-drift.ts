import type { Cause } from '../schema.ts';

export const sprayDrift: Cause = {
  id: 'spray-drift',
  what: 'Weedkiller sprayed within reach of the wind, or a sprayer or can that was not rinsed. The young growth twists, bleaches or yellows on several crops at once, worst on the side it came from.',
  baseRate: { rate: 0.02, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'sprayed-nearby', is: 'yes' },
      leans: 'far-more',
      because: 'weedkiller was used within sight in the last month',
      source: 'NCSU-PDIC',
    },
    {
      when: { setting: 'sprayed-nearby', is: 'no' },
      leans: 'less',
      because: 'nobody has sprayed within sight',
      source: 'NCSU-PDIC',
    },
    {
      when: { setting: 'wind', is: 'windy' },
      leans: 'a-little-more',
      because: 'wind carries droplets',
      source: 'from memory',
    },
    {
      when: { setting: 'place', is: 'under-cover' },
      leans: 'a-little-less',
      because: 'glass and film keep most droplets out',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'far-less',
      because: 'nobody sprays weedkiller by a windowsill',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'nightshade' },
      leans: 'a-little-more',
      because: 'tomatoes show it at a small part of the dose used on weeds',
      source: 'WR-GLY',
    },
    {
      when: { crop: 'legume' },
      leans: 'a-little-more',
      because: 'beans and their kin show very small doses of some weedkillers',
      source: 'from memory',
    },
    {
      when: { season: 'winter' },
      leans: 'less',
      because: 'little weedkiller is sprayed in winter',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'a-little-more',
      because: 'fields, lawns and paths are sprayed in spring',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'tomato' },
      leans: 'a-little-more',
      because: 'most reported cases are on tomatoes',
      source: 'MU-DRIFT',
    },
  ],
  signs: [
    { mark: 'twisted-narrow', old: 'sometimes', new: 'usually', source: 'UMAN-ROLL' },
    { mark: 'cupped-down', old: 'sometimes', new: 'often', source: 'UMAN-ROLL' },
    { mark: 'cupped-up', old: 'rarely', new: 'often', source: 'from memory', confidence: 'disputed' },
    { mark: 'yellow-even', old: 'rarely', new: 'sometimes', source: 'NCSU-PDIC' },
    { mark: 'yellow-patches', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { mark: 'yellow-along-veins', old: 'rarely', new: 'sometimes', source: 'UMAN-ROLL' },
    { mark: 'puckered', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'small-leaves', new: 'sometimes', source: 'from memory' },
    { mark: 'thickened', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'bleached-patches', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { mark: 'brown-spots', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { mark: 'brown-edges', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'leaf-dead', old: 'sometimes', source: 'from memory' },
    { mark: 'yellow-between-veins', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'mottled', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'purple-tint', old: 'rarely', new: 'rarely', source: 'from memory' },
    { sign: 'stem-twisted', frequency: 'often', source: 'UMAN-ROLL' },
    { sign: 'stunted', frequency: 'often', source: 'from memory' },
    { sign: 'fruit-misshapen', frequency: 'sometimes', source: 'UMAN-ROLL' },
    { sign: 'flowers-dropping', frequency: 'rarely', source: 'from memory' },
    { sign: 'after-spray', frequency: 'often', source: 'NCSU-PDIC' },
    { sign: 'several-kinds', frequency: 'often', source: 'NCSU-PDIC' },
    { sign: 'one-end', frequency: 'often', source: 'NCSU-PDIC' },
    { sign: 'whole-bed', frequency: 'sometimes', source: 'AZ-MG-SUM' },
    { sign: 'patch', frequency: 'sometimes', source: 'from memory' },
    { sign: 'sudden', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'after-wind', frequency: 'rarely', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'NCSU-PDIC' },
    { sign: 'getting-better', frequency: 'sometimes', source: 'NCSU-PDIC' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Residue goes with the load and every new leaf curls; drift is worst on one side and is grown out of.',
      source: 'NCSU-PDIC',
    },
    {
      cause: 'virus',
      tellsApart:
        'Virus mottles the leaf and spreads from plant to plant; drift came at one go, over several crops.',
      source: 'OMAFRA-V',
    },
    {
      cause: 'sun-scorch',
      tellsApart: 'Scorch lies on the leaves that faced the sun and twists nothing.',
      source: 'from memory',
    },
    {
      cause: 'cold-check',
      tellsApart: 'Cold takes tender crops only and bends no stem.',
      source: 'from memory',
    },
  ],
  checks: [
    {
      check: 'wait-and-compare',
      ifFound: 'Clean new leaves after a week or two mean one dose that has passed.',
      ifNotFound: 'New leaves that stay twisted after weeks point to the load or to virus.',
    },
    {
      check: 'compare-other-crops',
      ifFound: 'Several unrelated crops hurt together, worst towards one side: drift fits well.',
      ifNotFound: 'One crop alone, and evenly, makes drift less likely.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'A bed behind a hedge or farther off is sound: the wind brought it.',
      ifNotFound: 'The same sowing hurt everywhere speaks for seed, virus or the load.',
    },
  ],
  losses: {
    leave: 24,
    watch: 14,
    because:
      'nothing undoes the dose, but who looks again sees in time whether to sow afresh and what not to eat',
    source: 'NCSU-PDIC',
  },
  tempered: [
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leave: 50,
      watch: 35,
      because: 'seedlings have no leaf to spare, and there is time to sow afresh',
      source: 'common practice, no source',
    },
  ],
  // What the plant has taken up cannot be undone: no course helps, and a screen serves the next crop at best.
  remedies: [],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'New leaves that open flat and green, with the twisted ones left behind lower down.',
    source: 'NCSU-PDIC',
  },
  cautions: ['drift', 'do-not-compost', 'local-rules', 'ask'],
};
