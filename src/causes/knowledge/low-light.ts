import type { Cause } from '../schema.ts';

export const lowLight: Cause = {
  id: 'low-light',
  what: 'Too little light: the plant stretches, leans towards the light, pales and sets little.',
  baseRate: { rate: 0.015, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'light', is: 'dull' },
      leans: 'more',
      because: 'the spot is dull',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'light', is: 'about-right' },
      leans: 'less',
      because: 'it has light enough',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'light', is: 'scorching' },
      leans: 'far-less',
      because: 'it stands in full sun',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'more',
      because: 'a windowsill gives light from one side only',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'under-cover' },
      leans: 'a-little-more',
      because: 'glass, film and crowding take light',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'more',
      because: 'seedlings stretch first',
      source: 'common practice, no source',
    },
    {
      when: { season: 'winter' },
      leans: 'a-little-more',
      because: 'winter days are short',
      source: 'common practice, no source',
    },
    {
      when: { season: 'summer' },
      leans: 'a-little-less',
      because: 'summer days are long',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'small-leaves', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'sometimes', new: 'sometimes', source: 'common practice, no source' },
    { mark: 'leaf-dead', old: 'rarely', source: 'common practice, no source' },
    { mark: 'yellow-between-veins', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'puckered', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'blisters-under', old: 'rarely', new: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'stunted', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'stem-twisted', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'leaf-drop', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'flowers-dropping', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'fruit-misshapen', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'stem-base-rot', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'felled', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'often', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'often', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'elsewhere-fine', frequency: 'often', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'often', source: 'common practice, no source' },
    { sign: 'after-cold', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'hardly-ever', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-short',
      tellsApart: 'A hungry plant is short and stiff; a plant in the shade is long, soft and leaning.',
      source: 'common practice, no source',
    },
    {
      cause: 'cold-check',
      tellsApart: 'Cold makes plants squat; want of light makes them long.',
      source: 'common practice, no source',
    },
    {
      cause: 'root-rot',
      tellsApart:
        'Seedlings that fall with a thread-thin stem have damping off, which dull crowding invites.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'compare-other-bed',
      ifFound: 'Stout and green in better light: it fits.',
      ifNotFound: 'As pale in the sun: not the light.',
    },
    {
      check: 'scrape-soil',
      ifFound: 'Stem thin and dark at the soil: damping off.',
      ifNotFound: 'Stem sound, only long: light.',
    },
  ],
  losses: {
    leave: 14,
    watch: 10,
    because: 'long, soft plants set little and fall over',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'more-light',
      remains: 3,
      because: 'in better light the next leaves come stout and green',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 10,
    looksLike: 'New leaves are darker and closer together; the long stem stays long.',
    source: 'common practice, no source',
  },
  cautions: [],
};
