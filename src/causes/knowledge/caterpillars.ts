import type { Cause } from '../schema.ts';

export const caterpillars: Cause = {
  id: 'caterpillars',
  what: 'Caterpillars of butterflies and moths eat ragged holes and leave dark droppings. On cabbages they take the leaf and then the heart.',
  baseRate: { rate: 0.045, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { crop: 'brassica' },
      leans: 'more',
      because: 'cabbage whites and moths look for the cabbage family',
      source: 'RUTGERS-COLE',
    },
    {
      when: { crop: 'allium' },
      leans: 'far-less',
      because: 'only the leek moth touches these',
      source: 'from memory',
    },
    {
      when: { crop: 'cucurbit' },
      leans: 'less',
      because: 'few caterpillars take these',
      source: 'from memory',
    },
    {
      when: { crop: 'carrot-family' },
      leans: 'less',
      because: 'few caterpillars take these',
      source: 'from memory',
    },
    {
      when: { crop: 'legume' },
      leans: 'a-little-less',
      because: 'fewer than on cabbages',
      source: 'from memory',
    },
    {
      when: { setting: 'netted', is: 'yes' },
      leans: 'less',
      because: 'fine mesh keeps the butterflies from laying',
      source: 'common practice, no source',
    },
    {
      when: { season: 'summer' },
      leans: 'a-little-more',
      because: 'butterflies lay from early summer',
      source: 'common practice, no source',
    },
    {
      when: { season: 'autumn' },
      leans: 'a-little-more',
      because: 'the second brood feeds into autumn',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'a-little-less',
      because: 'the first broods are small',
      source: 'common practice, no source',
    },
    {
      when: { season: 'winter' },
      leans: 'less',
      because: 'only a few moth caterpillars feed in mild winters',
      source: 'from memory',
    },
  ],
  signs: [
    { mark: 'ragged-holes', old: 'usually', new: 'often', source: 'OSU-SLUG' },
    { mark: 'shot-holes', old: 'rarely', new: 'rarely', source: 'FW-SA' },
    { mark: 'edge-bites', old: 'often', new: 'sometimes', source: 'from memory' },
    { mark: 'veins-left', old: 'sometimes', new: 'rarely', source: 'from memory' },
    { mark: 'surface-grazed', old: 'sometimes', new: 'sometimes', source: 'from memory' },
    { mark: 'pale-trails', old: 'rarely', new: 'rarely', source: 'from memory' },
    { sign: 'caterpillars', frequency: 'often', source: 'common practice, no source' },
    { sign: 'droppings-pellets', frequency: 'often', source: 'OSU-SLUG' },
    { sign: 'fine-webbing', frequency: 'rarely', source: 'from memory' },
    { sign: 'tip-eaten', frequency: 'rarely', source: 'from memory' },
    { sign: 'torn-cut', frequency: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'rarely', source: 'from memory' },
    { sign: 'fruit-misshapen', frequency: 'rarely', source: 'from memory' },
    { sign: 'scattered', frequency: 'often', source: 'FW-SA' },
    { sign: 'one-plant', frequency: 'sometimes', source: 'from memory' },
    { sign: 'patch', frequency: 'sometimes', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'rarely', source: 'from memory' },
    { sign: 'spreading', frequency: 'sometimes', source: 'AZ-MG-SUM' },
    { sign: 'sudden', frequency: 'sometimes', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'sometimes', source: 'from memory' },
    { sign: 'every-year', frequency: 'rarely', source: 'from memory' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'slugs-snails',
      tellsApart:
        'Slugs leave slime and no droppings of this kind; caterpillars leave dark pellets and no slime.',
      source: 'OSU-SLUG',
    },
    {
      cause: 'birds',
      tellsApart: 'Pigeons tear the leaf from above and leave the ribs standing, with white droppings about.',
      source: 'TGA-PIGEON',
    },
    {
      cause: 'boron-short',
      tellsApart:
        'Holes from a shortage are torn and take every plant in the patch; caterpillar holes are smooth and skip plants.',
      source: 'FW-SA',
    },
    {
      cause: 'leaf-beetles',
      tellsApart: 'Beetles and their grubs sit on the leaf by day and drop when touched.',
      source: 'from memory',
    },
  ],
  checks: [
    {
      check: 'look-by-torch',
      ifFound: 'Caterpillars that hide by day sit on the leaf after dark.',
      ifNotFound: 'Neither caterpillars nor slime by night: think of birds, or it is over.',
    },
    {
      check: 'look-for-tracks',
      ifFound: 'Dark pellets in the leaf angles are caterpillar droppings.',
      ifNotFound: 'Slime instead of pellets means slugs; white splashes mean birds.',
    },
    {
      check: 'turn-leaf-over',
      ifFound: 'Egg clusters or young ones under the leaf: rub them off.',
      ifNotFound: 'Nothing under the leaf: look deep in the heart before giving up.',
    },
  ],
  losses: {
    leave: 12,
    watch: 6,
    because: 'each eats more in its last week than in all its life before',
    source: 'from memory',
  },
  tempered: [
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leave: 35,
      watch: 18,
      because: 'up to four leaves, one plant in ten with caterpillars is the point to act',
      source: 'RUTGERS-COLE',
    },
    {
      when: { setting: 'crop-stage', is: 'just-planted' },
      leave: 25,
      watch: 12,
      because: 'right after transplanting even one plant in twenty counts',
      source: 'UDEL-8938',
    },
    {
      when: { setting: 'crop-stage', is: 'growing' },
      leave: 6,
      watch: 3,
      because:
        'from four leaves until the heads fill, a plant bears more: the point to act is one plant in five',
      source: 'RUTGERS-COLE',
    },
    {
      when: { setting: 'crop-stage', is: 'fruiting' },
      leave: 15,
      watch: 8,
      because: 'in a nearly ripe head one plant in twenty is the point to act',
      source: 'RUTGERS-COLE',
    },
    {
      when: { setting: 'crop-stage', is: 'old' },
      leave: 1,
      watch: 1,
      because: 'an old plant has given its crop',
      source: 'common practice, no source',
    },
  ],
  remedies: [
    {
      course: 'pick-off-pests',
      remains: 4,
      because: 'picked every other day, few grow large',
      source: 'common practice, no source',
    },
    {
      course: 'cover',
      remains: 5,
      because: 'under fine mesh no more eggs are laid',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 5,
    looksLike: 'No fresh droppings and no new holes in the youngest leaves.',
    source: 'common practice, no source',
  },
  cautions: ['sprays'],
};
