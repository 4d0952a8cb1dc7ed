import type { Cause } from '../schema.ts';

export const varietyColour: Cause = {
  id: 'variety-colour',
  what: 'Nothing is wrong: the variety is bred to look like this, golden, lime, purple, silver-marked or pale. Every plant of it looks alike and grows well.',
  baseRate: { rate: 0.03, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'variety-colour', is: 'yellow-or-golden' },
      leans: 'far-more',
      because: 'in yellow-fruited squash the same gene can turn stems and leaves yellow',
      source: 'CGC-LIETZOW',
    },
    {
      when: { setting: 'variety-colour', is: 'pale-or-self-blanching' },
      leans: 'far-more',
      because: 'self-blanching kinds are pale in stalk and leaf by nature',
      source: 'BI-CELERY',
    },
    {
      when: { setting: 'variety-colour', is: 'variegated-or-silver' },
      leans: 'far-more',
      because: 'silver patches in the angles of the veins are inherited',
      source: 'CGC-GENES',
    },
    {
      when: { setting: 'variety-colour', is: 'red-or-purple' },
      leans: 'more',
      because: 'red and purple kinds carry their colour in leaf and stem',
      source: 'from memory',
    },
    {
      when: { setting: 'variety-colour', is: 'ordinary-green' },
      leans: 'far-less',
      because: 'the packet promises ordinary green',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'courgette' },
      leans: 'more',
      because: 'many courgettes carry silver or yellow genes',
      source: 'CGC-GENES',
    },
    {
      when: { crop: 'squash' },
      leans: 'a-little-more',
      because: 'squashes may carry silver or yellow genes',
      source: 'CGC-GENES',
    },
    {
      when: { crop: 'pumpkin' },
      leans: 'a-little-more',
      because: 'squashes may carry silver or yellow genes',
      source: 'CGC-GENES',
    },
    {
      when: { crop: 'celery' },
      leans: 'a-little-more',
      because: 'self-blanching celery is common',
      source: 'BI-CELERY',
    },
    {
      when: { crop: 'chard' },
      leans: 'a-little-more',
      because: 'this crop has many coloured varieties',
      source: 'from memory',
    },
    {
      when: { crop: 'beetroot' },
      leans: 'a-little-more',
      because: 'this crop has many coloured varieties',
      source: 'from memory',
    },
    {
      when: { crop: 'lettuce' },
      leans: 'a-little-more',
      because: 'this crop has many coloured varieties',
      source: 'from memory',
    },
    {
      when: { crop: 'kale' },
      leans: 'a-little-more',
      because: 'this crop has many coloured varieties',
      source: 'from memory',
    },
    {
      when: { crop: 'basil' },
      leans: 'a-little-more',
      because: 'this crop has many coloured varieties',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'whole-colour-golden', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'yellow-even', old: 'often', new: 'often', source: 'BI-CELERY' },
    { mark: 'yellow-patches', old: 'sometimes', new: 'sometimes', source: 'VOLCANI' },
    { mark: 'yellow-along-veins', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-between-veins', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'silver-pattern', old: 'sometimes', new: 'sometimes', source: 'CGC-GENES' },
    { mark: 'mottled', old: 'rarely', new: 'rarely', source: 'VOLCANI' },
    { mark: 'purple-tint', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'variety-only', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'hardly-ever', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-short',
      tellsApart:
        'A hungry plant is small and yellows from the lowest leaves; a golden variety is coloured evenly from the start, old and new, and grows on strongly.',
      source: 'common practice, no source',
    },
    {
      cause: 'powdery-mildew',
      tellsApart:
        'Mildew rubs off on the finger and lies in round patches on older shaded leaves; silver marking does not rub off.',
      source: 'UCONN-MILD',
    },
    {
      cause: 'whitefly',
      tellsApart:
        'Silvering from whitefly begins in and along the veins and spreads over the leaf; the inherited pattern sits in the vein angles and is alike on every plant.',
      source: 'CGC-PARIS-1993',
    },
    {
      cause: 'virus',
      tellsApart:
        "Virus makes a ragged patchwork on scattered, stunted plants; a variety's pattern is alike on all its plants.",
      source: 'OMAFRA-V',
    },
  ],
  checks: [
    {
      check: 'read-seed-packet',
      ifFound: 'The packet says so: this is the colour it should have.',
      ifNotFound: 'Ordinary green is promised, so the pale colour needs another reason.',
    },
    {
      check: 'compare-varieties',
      ifFound: 'The green variety beside it is green: the colour belongs to the variety.',
      ifNotFound: 'The green variety is just as pale: the bed or the weather is at work, not the variety.',
    },
    {
      check: 'rub-leaf',
      ifFound: 'White dust comes off: that is mildew, not the pattern of the variety.',
      ifNotFound: 'Nothing comes off: the marking is in the leaf itself.',
    },
  ],
  losses: {
    leave: 0,
    watch: 0,
    because: 'the plant grows as its variety grows',
    source: 'common practice, no source',
  },
  remedies: [],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'New leaves come out in the same clean colour as the old ones and the plant goes on growing.',
    source: 'common practice, no source',
  },
  cautions: [],
};
