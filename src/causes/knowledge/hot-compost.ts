import type { Cause } from '../schema.ts';

export const hotCompost: Cause = {
  id: 'hot-compost',
  what: 'The compost is not finished: it is still heating, gives off ammonia or acids and uses up the air. Roots in it burn, most in the middle of a fresh heap.',
  baseRate: { rate: 0.012, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    // State, warmth, age and smell speak of one heap and share its weight; together they are weighed in
    // src/signs/lean-on-hot-compost.ts.
    {
      when: { setting: 'compost-state', is: 'hot' },
      leans: 'far-more',
      because: 'a hot heap is still working',
      source: 'UCRRA',
    },
    {
      when: { setting: 'compost-state', is: 'still-warm' },
      leans: 'more',
      because: 'a warm heap is not quite finished',
      source: 'UCRRA',
    },
    {
      when: { setting: 'compost-state', is: 'fresh' },
      leans: 'more',
      because: 'fresh material gives off ammonia and acids',
      source: 'CCQC-INTRO',
    },
    {
      when: { setting: 'compost-state', is: 'finished' },
      leans: 'far-less',
      because: 'finished compost does no harm',
      source: 'CCQC-2001',
    },
    {
      when: { setting: 'compost-celsius', is: '45+' },
      leans: 'more',
      because: 'at more than 45 °C the heap is in its hot phase',
      source: 'NRCS-317',
    },
    {
      when: { setting: 'compost-celsius', is: '30-45' },
      leans: 'a-little-more',
      because: 'at 30 °C after six or seven weeks it is nearly ready',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-celsius', is: 'below-30' },
      leans: 'less',
      because: 'a cool heap is near its end, though ammonia can linger',
      source: 'CCQC-2001',
    },
    {
      when: { setting: 'compost-age', is: '0-2' },
      leans: 'a-little-more',
      because: 'it needs weeks to months to mature',
      source: 'UCRRA',
    },
    {
      when: { setting: 'compost-age', is: '12+' },
      leans: 'far-less',
      because: 'after a year it has matured',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'compost-ammonia', is: 'yes' },
      leans: 'a-little-more',
      because: 'a smell of ammonia counts even where the heap is cool',
      source: 'SOLVITA-NOTE',
    },
    {
      when: { setting: 'compost-kinds', is: 'none' },
      leans: 'far-less',
      because: 'no compost went on',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'brown-edges', old: 'often', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'yellow-even', old: 'often', new: 'sometimes', source: 'CCQC-INTRO' },
    { mark: 'yellow-edges', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'blackened', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'brown-patches', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'bleached-patches', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'rarely', source: 'common practice, no source' },
    { mark: 'cupped-up', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'cupped-down', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'small-leaves', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { sign: 'wilts-wet-soil', frequency: 'often', source: 'common practice, no source' },
    { sign: 'wilts-dry-soil', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'recovers-overnight', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'stunted', frequency: 'often', source: 'CCQC-2001' },
    { sign: 'roots-few-brown', frequency: 'often', source: 'common practice, no source' },
    { sign: 'stem-base-rot', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'seedlings-gone', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'same-compost-only', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'often', source: 'common practice, no source' },
    { sign: 'after-feed', frequency: 'often', source: 'common practice, no source' },
    { sign: 'sudden', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'elsewhere-fine', frequency: 'often', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'salt-burn',
      tellsApart:
        'Salt comes from feed or strong dung and can be washed out of cool soil; a warm heap or a smell of ammonia points to unfinished compost.',
      source: 'common practice, no source',
    },
    {
      cause: 'nitrogen-locked',
      tellsApart:
        'Lock-up pales the plants slowly without scorch; raw compost burns roots and leaf edges within days.',
      source: 'common practice, no source',
    },
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Residue cups and twists the new leaves of beans and tomatoes; raw compost scorches and wilts every crop.',
      source: 'common practice, no source',
    },
    {
      cause: 'wet-roots',
      tellsApart: 'Both wilt on moist soil; here plants set outside that compost are sound although as wet.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'read-heap-thermometer',
      ifFound: 'About 60 °C, or much warmer than the air: unfinished, wait.',
      ifNotFound: "Close to the air's warmth: nearly ready, though a smell of ammonia still counts.",
    },
    {
      check: 'compare-other-crops',
      ifFound: 'Every crop in that load suffers, most in the middle: it fits.',
      ifNotFound: 'Those outside it suffer as well: look further.',
    },
    {
      check: 'lift-plant',
      ifFound: 'Few, brown root tips: burnt roots.',
      ifNotFound: 'White roots: not the compost.',
    },
  ],
  losses: {
    leave: 30,
    watch: 22,
    because: 'roots in raw compost go on burning until it has cooled and aired',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'replant-cooler',
      remains: 10,
      because: 'out of the hot middle, in finished soil, new roots form',
      source: 'common practice, no source',
    },
    {
      course: 'flush-salts',
      remains: 18,
      because: 'water carries off some of the ammonia and salts',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 7,
    looksLike:
      'Firm leaves at noon and a new leaf without burnt edges; the heap is hardly warmer than the air.',
    source: 'common practice, no source',
  },
  cautions: ['compost-dust', 'fresh-manure', 'local-rules'],
};
