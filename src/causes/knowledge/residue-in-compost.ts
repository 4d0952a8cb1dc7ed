import type { Cause } from '../schema.ts';

export const residueInCompost: Cause = {
  id: 'residue-in-compost',
  what: 'Weedkiller sprayed on pasture or lawns came through the animals, the hay or the heap unchanged. It is still at work in the compost and twists the new leaves of beans, peas, tomatoes and potatoes.',
  baseRate: { rate: 0.025, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { crop: 'residue-sensitive' },
      leans: 'a-little-more',
      because: 'the smallest traces are enough to hurt this crop',
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
      because: 'the cabbage family is less sensitive',
      source: 'from memory',
    },
    {
      when: { crop: 'cucurbit' },
      leans: 'less',
      because: 'squash has grown decently where potatoes failed',
      source: 'BYG-BLOG',
    },
    {
      when: { crop: 'allium' },
      leans: 'less',
      because: 'onions and leeks are less sensitive',
      source: 'from memory',
    },
    {
      when: { crop: 'asparagus' },
      leans: 'less',
      because: 'grass-like crops take little harm',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'horse-manure' },
      leans: 'more',
      because: 'horse manure carries what was sprayed on the hay',
      source: 'NCSU-CARRY',
    },
    {
      when: { setting: 'compost-kinds', is: 'manure-unknown' },
      leans: 'more',
      because: 'nobody can say what fields the fodder came from',
      source: 'NCSU-CARRY',
    },
    {
      when: { setting: 'compost-kinds', is: 'cattle-manure' },
      leans: 'a-little-more',
      because: 'it passes through grazing cattle into the dung',
      source: 'OSU-CARRY',
    },
    {
      when: { setting: 'compost-kinds', is: 'straw-or-hay' },
      leans: 'more',
      because: 'straw and hay keep the weedkiller of their field',
      source: 'NCSU-CARRY',
    },
    {
      when: { setting: 'compost-kinds', is: 'green-waste' },
      leans: 'a-little-more',
      because: 'residues have been found quite often in green compost',
      source: 'WRAP-61843',
    },
    {
      when: { setting: 'compost-kinds', is: 'grass-clippings' },
      leans: 'a-little-more',
      because: 'compost of treated grass could still hurt plants after a year',
      source: 'WSU-CLO',
    },
    {
      when: { setting: 'compost-kinds', is: 'mushroom-compost' },
      leans: 'a-little-more',
      because: 'mushroom compost is made of straw and stable or poultry manure',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'bagged-compost' },
      leans: 'a-little-more',
      because: 'samples from a dozen compost makers have hurt test plants',
      source: 'BIOCYCLE-2016',
    },
    {
      when: { setting: 'compost-kinds', is: 'poultry-manure' },
      leans: 'a-little-less',
      because: 'poultry eat little hay; only the bedding is a risk',
      source: 'from memory',
    },
    {
      when: { setting: 'compost-kinds', is: 'own-compost' },
      leans: 'a-little-less',
      because: 'own kitchen and garden waste is known ground, unless bought hay or clippings went in',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-kinds', is: 'leaf-mould' },
      leans: 'a-little-less',
      because: 'fallen leaves are not pasture',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-kinds', is: 'biochar-or-ash' },
      leans: 'a-little-less',
      because: 'char and ash bring no hay residue',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-kinds', is: 'wood' },
      leans: 'a-little-less',
      because: 'wood is not pasture',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-kinds', is: 'none' },
      leans: 'less',
      because: 'nothing was brought onto the bed this year, though residue can outlast a year',
      source: 'UT-STEW',
    },
    {
      when: { setting: 'hay-source', is: 'yes' },
      leans: 'more',
      because: 'the load comes from fields that may have been sprayed',
      source: 'OSU-CARRY',
    },
    {
      when: { setting: 'hay-source', is: 'no' },
      leans: 'less',
      because: 'the fields behind the load are known not to be sprayed',
      source: 'OSU-CARRY',
    },
    {
      when: { crop: 'tomato' },
      leans: 'a-little-more',
      because: 'tomato and potato show it first',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'potato' },
      leans: 'a-little-more',
      because: 'tomato and potato show it first',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'cupped-up', old: 'sometimes', new: 'usually', source: 'OSU-CARRY' },
    { mark: 'cupped-down', old: 'rarely', new: 'sometimes', source: 'UMAN-ROLL', confidence: 'disputed' },
    { mark: 'twisted-narrow', old: 'sometimes', new: 'usually', source: 'NCSU-CARRY' },
    { mark: 'puckered', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'small-leaves', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'thickened', new: 'sometimes', source: 'from memory' },
    { mark: 'yellow-along-veins', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-even', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'leaf-dead', old: 'rarely', source: 'from memory' },
    { sign: 'stem-twisted', frequency: 'often', source: 'OSU-CARRY' },
    { sign: 'stunted', frequency: 'usually', source: 'OSU-CARRY' },
    { sign: 'seedlings-gone', frequency: 'rarely', source: 'NCSU-CARRY' },
    { sign: 'fruit-misshapen', frequency: 'sometimes', source: 'NCSU-CARRY' },
    { sign: 'flowers-dropping', frequency: 'rarely', source: 'WSU-WHATCOM' },
    { sign: 'same-compost-only', frequency: 'usually', source: 'NCSU-PDIC' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'several-kinds', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'elsewhere-fine', frequency: 'often', source: 'NCSU-PDIC' },
    { sign: 'patch', frequency: 'sometimes', source: 'NCSU-PDIC' },
    { sign: 'one-end', frequency: 'rarely', source: 'from memory' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'from memory' },
    { sign: 'after-feed', frequency: 'sometimes', source: 'from memory' },
    { sign: 'always-so', frequency: 'sometimes', source: 'from memory' },
    { sign: 'every-year', frequency: 'rarely', source: 'LINN' },
    { sign: 'pot-test-injury', frequency: 'always', source: 'OSU-CARRY' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'one-plant', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'spray-drift',
      tellsApart:
        'Drift is worst nearest the sprayed ground and the newest leaves come clean again; residue follows the load and goes on.',
      source: 'NCSU-PDIC',
    },
    {
      cause: 'leaf-roll',
      tellsApart:
        'Harmless roll begins on the lowest leaves of tomatoes, which turn leathery while the top stays normal; residue shows at the top.',
      source: 'UMAN-ROLL',
    },
    {
      cause: 'virus',
      tellsApart:
        'Virus adds a patchwork of light and dark green and takes a plant here and there; residue takes every sensitive plant that had the load.',
      source: 'OMAFRA-V',
    },
    {
      cause: 'aphids',
      tellsApart:
        'Under a leaf that greenfly curled sit the insects, their white skins or a sticky film; residue leaves nothing there.',
      source: 'FFR-APHID',
    },
  ],
  checks: [
    {
      check: 'pot-test',
      ifFound:
        'The load carries a weedkiller of the auxin type; the test cannot say which one. If the pots of clean mix curl too, the test is void: repeat it.',
      ifNotFound:
        'If both sets grow alike, the load is probably safe for beans, and with that for less sensitive crops.',
    },
    {
      check: 'compare-other-crops',
      ifFound:
        'Sensitive crops curl wherever the load went while sweetcorn beside them looks normal: residue moves to the front.',
      ifNotFound: 'Beans or peas that grow normally in the same load speak strongly against residue.',
    },
    {
      check: 'ask-supplier',
      ifFound:
        'The fodder comes from sprayed fields, or the supplier does not know: take the load for suspect until a pot test says otherwise.',
      ifNotFound:
        'Fields that were not sprayed make residue much less likely, though not out of the question.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'The same sowing is well where the load did not go: look hard at the load.',
      ifNotFound: 'The same curl without the load points to drift, virus or the weather.',
    },
  ],
  losses: {
    leave: 150,
    watch: 60,
    because: 'a load that is kept on being spread goes to other beds and stays active for a year or longer',
    source: 'UT-STEW',
  },
  remedies: [
    {
      course: 'stop-the-load',
      remains: 30,
      because: 'this bed has its share already, but all the others are spared',
      source: 'EDIS-AG416',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike:
      'New leaves that still come out curled or strap-like: residue does not mend in a fortnight. If they come out flat, that speaks against residue but clears no load: keep it aside until a pot test has.',
    source: 'NCSU-PDIC',
  },
  cautions: ['residue', 'do-not-compost', 'local-rules', 'compost-dust', 'ask'],
};
