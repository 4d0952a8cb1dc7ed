import type { Cause } from '../schema.ts';

export const residueInCompost: Cause = {
  id: 'residue-in-compost',
  what: 'Weedkiller sprayed on pasture or lawns came through the animals, the hay or the heap unchanged. It is still at work in the compost and twists the new leaves of beans, peas, tomatoes and potatoes.',
  baseRate: { rate: 0.025, confidence: 'described', source: 'BIOCYCLE-2016' },
  leanings: [
    {
      when: { crop: 'residue-sensitive' },
      leans: 'more',
      because: 'this crop is hurt by a few parts in a billion',
      source: 'OSU-SF-AMINO',
    },
    {
      when: { crop: 'grass' },
      leans: 'far-less',
      because: 'grasses break this weedkiller down',
      source: 'CORTEZ',
    },
    {
      when: { crop: 'brassica' },
      leans: 'less',
      because: 'brassicas are less sensitive',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'horse-manure' },
      leans: 'far-more',
      because: 'horse manure carries what was sprayed on the hay',
      source: 'NCSU-CARRY',
    },
    {
      when: { setting: 'compost-kinds', is: 'none' },
      leans: 'far-less',
      because: 'nothing was brought onto the bed this year, though residue can outlast a year',
      source: 'UT-STEW',
    },
    {
      when: { setting: 'hay-source', is: 'yes' },
      leans: 'far-more',
      because: 'the load comes from fields that may have been sprayed',
      source: 'OSU-CARRY',
    },
  ],
  signs: [
    { mark: 'cupped-up', old: 'rarely', new: 'usually', source: 'OSU-CARRY' },
    { mark: 'twisted-narrow', old: 'rarely', new: 'usually', source: 'NCSU-CARRY' },
    { sign: 'stem-twisted', frequency: 'often', source: 'OSU-CARRY' },
    { sign: 'stunted', frequency: 'usually', source: 'OSU-CARRY' },
    { sign: 'same-compost-only', frequency: 'usually', source: 'NCSU-PDIC' },
    { sign: 'pot-test-injury', frequency: 'always', source: 'OSU-CARRY' },
  ],
  mistakenFor: [
    {
      cause: 'spray-drift',
      tellsApart:
        'Drift is worst nearest the sprayed field and the plants grow out of it; residue follows the load.',
      source: 'NCSU-PDIC',
    },
  ],
  checks: [
    {
      check: 'pot-test',
      ifFound: 'The load carries a weedkiller of the auxin type; the test cannot say which.',
      ifNotFound: 'The load is probably safe for beans, and with that for less sensitive crops.',
    },
  ],
  losses: {
    leave: 150,
    watch: 60,
    because: 'the load goes on to other beds and stays active for a year or longer',
    source: 'UT-STEW',
  },
  remedies: [
    {
      course: 'stop-the-load',
      remains: 30,
      because: 'the bed has its share already, the others are spared',
      source: 'EDIS-AG416',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike:
      'It will not mend in a fortnight: new leaves still curl. If they come out flat, it was something else.',
    source: 'NCSU-PDIC',
  },
  cautions: ['residue', 'local-rules', 'compost-dust', 'ask'],
};
