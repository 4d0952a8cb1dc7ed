import type { Cause } from '../schema.ts';

export const molybdenumShort: Cause = {
  id: 'molybdenum-short',
  what: 'Short of molybdenum, on acid soil: cauliflower and its kin make strap-like leaves of little but midrib; other crops are mottled or pale.',
  baseRate: { rate: 0.003, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-ph', is: 'acid' },
      leans: 'far-more',
      because: 'acid soil holds molybdenum fast',
      source: 'from memory',
    },
    {
      when: { setting: 'soil-ph', is: 'chalky-or-limed' },
      leans: 'far-less',
      because: 'lime sets it free',
      source: 'from memory',
    },
    {
      when: { crop: 'cauliflower' },
      leans: 'more',
      because: 'cauliflower shows it as whiptail',
      source: 'from memory',
    },
    {
      when: { crop: 'broccoli' },
      leans: 'a-little-more',
      because: 'broccoli shows it as whiptail',
      source: 'from memory',
    },
    {
      when: { crop: 'calabrese' },
      leans: 'a-little-more',
      because: 'broccoli shows it as whiptail',
      source: 'from memory',
    },
    {
      when: { crop: 'cabbage' },
      leans: 'a-little-more',
      because: 'this kin of cauliflower can show it',
      source: 'from memory',
    },
    {
      when: { crop: 'brussels-sprout' },
      leans: 'a-little-more',
      because: 'this kin of cauliflower can show it',
      source: 'from memory',
    },
    {
      when: { crop: 'kale' },
      leans: 'a-little-more',
      because: 'this kin of cauliflower can show it',
      source: 'from memory',
    },
    {
      when: { crop: 'legume' },
      leans: 'a-little-more',
      because: 'beans and peas need it to make their nitrogen',
      source: 'from memory',
    },
    {
      when: { crop: 'nightshade' },
      leans: 'less',
      because: 'this crop hardly ever shows it',
      source: 'from memory',
    },
    {
      when: { crop: 'allium' },
      leans: 'less',
      because: 'this crop hardly ever shows it',
      source: 'from memory',
    },
    {
      when: { crop: 'carrot-family' },
      leans: 'less',
      because: 'this crop hardly ever shows it',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'twisted-narrow', new: 'usually', source: 'from memory' },
    { mark: 'mottled', old: 'sometimes', new: 'rarely', source: 'PNW-KEY', confidence: 'disputed' },
    { mark: 'yellow-even', old: 'sometimes', new: 'sometimes', source: 'UAF-TAB', confidence: 'disputed' },
    { mark: 'yellow-along-veins', old: 'rarely', new: 'rarely', source: 'PNW-KEY', confidence: 'disputed' },
    {
      mark: 'yellow-between-veins',
      old: 'rarely',
      new: 'rarely',
      source: 'from memory',
      confidence: 'disputed',
    },
    { mark: 'yellow-patches', old: 'rarely', new: 'rarely', source: 'from memory', confidence: 'disputed' },
    { mark: 'cupped-up', old: 'sometimes', new: 'sometimes', source: 'UAF-TAB' },
    { mark: 'brown-edges', old: 'sometimes', new: 'rarely', source: 'PNW-KEY', confidence: 'disputed' },
    { mark: 'puckered', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'small-leaves', old: 'rarely', new: 'sometimes', source: 'from memory' },
    { mark: 'leaf-dead', old: 'rarely', source: 'from memory' },
    { mark: 'thickened', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'ragged-holes', old: 'rarely', new: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'often', source: 'from memory' },
    { sign: 'heart-blackened', frequency: 'rarely', source: 'from memory' },
    { sign: 'fruit-misshapen', frequency: 'sometimes', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'variety-only', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'rarely', source: 'PNW-KEY', confidence: 'disputed' },
    { sign: 'always-so', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Residue hurts beans and tomatoes first and follows a load; whiptail takes cauliflower on acid soil.',
      source: 'common practice, no source',
    },
    {
      cause: 'nitrogen-short',
      tellsApart: 'Pale beans on acid soil may lack molybdenum to make their nitrogen; a soil test decides.',
      source: 'from memory',
    },
    {
      cause: 'virus',
      tellsApart: 'Virus is scattered and mottles; whiptail is alike in the whole bed.',
      source: 'common practice, no source',
    },
    {
      cause: 'spray-drift',
      tellsApart: 'Weedkiller makes strap leaves too, so ask what was sprayed before blaming the soil.',
      source: 'MPA-FERT',
    },
    {
      cause: 'sulphur-short',
      tellsApart:
        'Sulphur pales a leaf without changing its shape; molybdenum narrows it towards the rib, on acid soil.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'test-soil-reaction',
      ifFound: 'Acid: it fits, and lime is the slow cure.',
      ifNotFound: 'Neutral or limy: it is hardly molybdenum.',
    },
    {
      check: 'compare-other-crops',
      ifFound: 'Only cauliflower and its kin: it fits.',
      ifNotFound: 'Beans and tomatoes curl too: think of residue or drift.',
    },
  ],
  losses: { leave: 12, watch: 10, because: 'whiptailed plants make no head', source: 'from memory' },
  remedies: [
    {
      course: 'correct-ph',
      remains: 6,
      because: 'less acid soil sets molybdenum free for later sowings',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 21,
    looksLike:
      'New leaves have a full blade on both sides of the rib; plants without a growing point will not head.',
    source: 'common practice, no source',
  },
  cautions: ['soil-test', 'lime'],
};
