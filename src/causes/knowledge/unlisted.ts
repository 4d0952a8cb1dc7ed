import type { Cause } from '../schema.ts';

/** What none of the listed causes explains. It lists only how any trouble may lie and come, and the creatures that are a listed cause by themselves; on every other sign the ranker gives it the flat `UNLISTED_Q` of `leaks.ts`, so that it rises when nothing fits. */
export const unlisted: Cause = {
  id: 'unlisted',
  what: 'Something this tool does not know: a rarer pest, disease or mishap, or several small things together.',
  baseRate: { rate: 0.05, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'pests-about', is: 'mice-or-voles' },
      leans: 'a-little-more',
      because: 'mice and voles dig up seed and gnaw roots, and this tool does not know them',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { sign: 'one-plant', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'sudden', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'stunted', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'spreading', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'aphids', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'cast-skins', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'whitefly', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'thrips', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'caterpillars', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'jumping-beetles', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'other-beetles', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'maggots-at-root', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'fine-webbing', frequency: 'hardly-ever', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'leaf-spot',
      tellsApart:
        'If the marks fit no description in the list well, do not force them: compare them with a pictured guide.',
      source: 'DEMESNE',
    },
    { cause: 'virus', tellsApart: 'A sign that is there need not be the cause.', source: 'RUGG' },
  ],
  checks: [
    {
      check: 'wait-and-compare',
      ifFound:
        'It spreads or climbs: something living. Take a sample to an advisory service or plant clinic.',
      ifNotFound: 'It stands still: often no action is the best one.',
    },
    {
      check: 'compare-other-bed',
      ifFound: 'The same sowing is well elsewhere: look for what this place had and the other had not.',
      ifNotFound: 'It is the same everywhere: think of seed, weather and water.',
    },
  ],
  losses: {
    leave: 12,
    watch: 8,
    because: 'unknown trouble is mostly slight, now and then grave',
    source: 'common practice, no source',
  },
  tempered: [
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leave: 20,
      watch: 12,
      because: 'seedlings have little to spare',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'old' },
      leave: 3,
      watch: 2,
      because: 'the crop is made',
      source: 'common practice, no source',
    },
  ],
  remedies: [],
  recovery: {
    lookAgainDays: 7,
    looksLike:
      'New leaves that look right, and no neighbour that begins; if not, take a sample to an advisory service or plant clinic.',
    source: 'common practice, no source',
  },
  cautions: ['ask'],
};
