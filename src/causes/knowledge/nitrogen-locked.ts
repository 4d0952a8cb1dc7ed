import type { Cause } from '../schema.ts';

export const nitrogenLocked: Cause = {
  id: 'nitrogen-locked',
  what: 'Wood, sawdust, straw or half-made compost among the roots is rotting, and the microbes take the nitrogen first. The plants go pale and stand still until it has rotted, mostly one to three months.',
  baseRate: { rate: 0.02, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    // What was mixed in, when, and in what state is weighed together in src/signs/lean-on-lock-up.ts.
    {
      when: { setting: 'wood-in-root-zone', is: 'yes' },
      leans: 'far-more',
      because:
        'what holds more than thirty parts of carbon to one of nitrogen ties nitrogen up where it is mixed in',
      source: 'AB-NMP',
    },
    {
      when: { setting: 'wood-in-root-zone', is: 'no' },
      leans: 'less',
      because: 'without wood among the roots little is tied up',
      source: 'CHALKER-WC',
    },
    {
      when: { setting: 'wood-on-surface', is: 'yes' },
      leans: 'a-little-more',
      because:
        'on the surface only a thin layer is robbed; one trial with fine wood renewed each year found more, while an inch of coarse chips a year does not starve plants',
      source: 'SPU-MULCH',
    },
    {
      when: { setting: 'compost-state', is: 'fresh' },
      leans: 'a-little-more',
      because: 'unfinished compost goes on rotting in the bed and takes nitrogen',
      source: 'CCQC-INTRO',
    },
    {
      when: { setting: 'compost-kinds', is: 'horse-manure' },
      leans: 'a-little-more',
      because: 'horse manure with bedding holds much carbon',
      source: 'UCSC-COMP',
    },
    {
      when: { setting: 'compost-kinds', is: 'wood' },
      leans: 'a-little-more',
      because: 'wood holds far more carbon for its nitrogen than rotting leaves to the plants',
      source: 'UCSC-COMP',
    },
    {
      when: { setting: 'compost-kinds', is: 'poultry-manure' },
      leans: 'a-little-less',
      because: 'poultry manure brings more nitrogen than it takes',
      source: 'UCSC-COMP',
    },
    {
      when: { setting: 'compost-kinds', is: 'none' },
      leans: 'less',
      because: 'nothing was brought that could rot',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-age', is: '12+' },
      leans: 'less',
      because: 'after some months the wood has given the nitrogen back',
      source: 'SOLOMON',
    },
    {
      when: { setting: 'weeks-since-mixed-in', is: '0-3' },
      leans: 'a-little-more',
      because: 'in a few weeks hardly any of it has rotted',
      source: 'KUSON-2005',
    },
    {
      when: { setting: 'weeks-since-mixed-in', is: '26+' },
      leans: 'far-less',
      because: 'after half a year the nitrogen has mostly come back',
      source: 'SOLOMON',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'a-little-less',
      because: 'a little extra nitrogen makes up for what is tied up',
      source: 'BARKER',
    },
    {
      when: { crop: 'legume' },
      leans: 'less',
      because: 'beans and peas make their own nitrogen',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'usually', new: 'often', source: 'BARKER-HPN' },
    { mark: 'yellow-edges', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-between-veins', old: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'from memory' },
    { mark: 'small-leaves', old: 'often', new: 'often', source: 'from memory' },
    { mark: 'leaf-dead', old: 'rarely', source: 'common practice, no source' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'usually', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'often', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'often', source: 'common practice, no source' },
    { sign: 'same-compost-only', frequency: 'often', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'often', source: 'from memory' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-feed', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'early-flowering', frequency: 'rarely', source: 'from memory' },
    { sign: 'getting-better', frequency: 'rarely', source: 'KUSON-2005' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-short',
      tellsApart:
        'General hunger does not stop where the wood or straw stops; lock-up follows what was mixed in, and the strip without it is green.',
      source: 'common practice, no source',
    },
    {
      cause: 'wet-roots',
      tellsApart: 'Drowned roots yellow the leaves too, but the soil is sodden and the plants hang.',
      source: 'PURDUE-WL',
    },
    {
      cause: 'cold-check',
      tellsApart:
        'Cold soil halts and pales tender crops alone; lock-up takes hungry crops of every kind and goes on in warm weather.',
      source: 'common practice, no source',
    },
    {
      cause: 'soil-disturbed',
      tellsApart:
        'A freshly forked bed grows a little paler for some weeks, with no wood or straw among the roots.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'look-in-root-zone',
      ifFound: 'Wood, sawdust or straw lies among the roots: lock-up is likely.',
      ifNotFound: 'None there: lock-up needs another source, such as raw compost.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'The same sowing is green where nothing was dug in: lock-up fits.',
      ifNotFound: 'It is pale there too: look for general hunger or cold.',
    },
    {
      check: 'compare-other-crops',
      ifFound: 'Every crop on that load is pale, beans least: lock-up fits.',
      ifNotFound: 'Only one crop is pale: something particular to that crop.',
    },
  ],
  losses: {
    leave: 22,
    watch: 16,
    because: 'plants stand still for one to three months while the wood takes the nitrogen',
    source: 'SOLOMON',
  },
  tempered: [
    {
      when: { sign: 'getting-better' },
      leave: 7,
      watch: 6,
      because: 'the nitrogen is already coming back',
      source: 'SOLOMON',
    },
  ],
  remedies: [
    {
      course: 'feed-while-it-rots',
      remains: 5,
      because:
        'a little nitrogen now and again makes up for what the rotting takes, and nothing more is mixed in',
      source: 'BARKER',
    },
    {
      course: 'quick-nitrogen',
      remains: 10,
      because: 'the rotting wood takes its share of a single feed too',
      source: 'BARKER',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike:
      'The two newest leaves come out greener and larger than those below; the old yellow ones will not turn green again.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'compost-dust'],
};
