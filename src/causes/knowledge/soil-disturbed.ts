import type { Cause } from '../schema.ts';

export const soilDisturbed: Cause = {
  id: 'soil-disturbed',
  what: 'The bed was dug, forked or rotavated not long before: roots, fungi and soil life begin anew, and the plants grow a little paler and slower than in undisturbed ground for a while.',
  baseRate: { rate: 0.008, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'bed-disturbed', is: 'yes' },
      leans: 'more',
      because: "it was forked to a fork's depth lately",
      source: 'common practice, no source',
    },
    {
      when: { setting: 'bed-disturbed', is: 'no' },
      leans: 'far-less',
      because: 'the bed was left alone',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'just-planted' },
      leans: 'a-little-more',
      because: 'it shows while roots are young',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'old' },
      leans: 'less',
      because: 'by now the soil has settled',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'days-since-planting', is: '21+' },
      leans: 'a-little-less',
      because: 'by now roots have found their way',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'container' },
      leans: 'far-less',
      because: 'there is no bed to dig',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'far-less',
      because: 'there is no bed to dig',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'soil-kind', is: 'potting-mix' },
      leans: 'less',
      because: 'a potting mix has no structure to lose',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'yellow-even', old: 'often', new: 'often', source: 'common practice, no source' },
    { mark: 'small-leaves', old: 'rarely', new: 'rarely', source: 'common practice, no source' },
    { mark: 'dull-limp', old: 'sometimes', new: 'rarely', source: 'common practice, no source' },
    { mark: 'purple-tint', old: 'hardly-ever', new: 'hardly-ever', source: 'common practice, no source' },
    {
      mark: 'yellow-between-veins',
      old: 'hardly-ever',
      new: 'hardly-ever',
      source: 'common practice, no source',
    },
    { sign: 'stunted', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'wilts-dry-soil', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'wilts-wet-soil', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'recovers-overnight', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'roots-few-brown', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'whole-bed', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'usually', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'scattered', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'always-so', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'oldest-first', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'sudden', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'getting-better', frequency: 'sometimes', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'nitrogen-locked',
      tellsApart: 'Where wood, straw or raw compost was dug in, lock-up is the stronger reason.',
      source: 'common practice, no source',
    },
    {
      cause: 'nitrogen-short',
      tellsApart:
        'Hunger climbs from the lowest leaves; a disturbed bed is a shade paler all over and catches up.',
      source: 'common practice, no source',
    },
    {
      cause: 'planting-check',
      tellsApart:
        'Setback from planting comes in every bed planted that day; here the undisturbed bed beside it is greener.',
      source: 'common practice, no source',
    },
  ],
  checks: [
    {
      check: 'compare-other-bed',
      ifFound: 'The undisturbed neighbour is a shade greener: it fits.',
      ifNotFound: 'Just as pale there: not the digging.',
    },
    {
      check: 'look-in-root-zone',
      ifFound: 'Wood or straw was turned in: think of lock-up.',
      ifNotFound: 'Only soil: digging alone stays possible.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'It catches up within weeks: it fits.',
      ifNotFound: 'It falls further behind: look for hunger or lock-up.',
    },
  ],
  losses: {
    leave: 2,
    watch: 2,
    because: 'it catches up; a little yield and time are lost',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'leave-soil-be',
      remains: 1,
      because: 'left alone the soil life comes back',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 21,
    looksLike: 'New leaves as dark as those in the undisturbed bed.',
    source: 'common practice, no source',
  },
  cautions: [],
};
