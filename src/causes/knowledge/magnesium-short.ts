import type { Cause } from '../schema.ts';

export const magnesiumShort: Cause = {
  id: 'magnesium-short',
  what: 'Short of magnesium: older leaves yellow between veins that stay green, like marbling, often late in the season on a plant in full fruit.',
  baseRate: { rate: 0.025, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { setting: 'soil-ph', is: 'acid' },
      leans: 'more',
      because: 'magnesium runs short mostly on acid soils',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'a-little-more',
      because: 'much potash keeps magnesium out of the plant',
      source: 'PNW-KEY',
    },
    {
      when: { setting: 'compost-kinds', is: 'biochar-or-ash' },
      leans: 'a-little-more',
      because: 'ash brings potash, which keeps magnesium out',
      source: 'from memory',
    },
    {
      when: { setting: 'soil-kind', is: 'sandy' },
      leans: 'a-little-more',
      because: 'magnesium washes out of sandy soil',
      source: 'from memory',
    },
    {
      when: { setting: 'crop-stage', is: 'fruiting' },
      leans: 'a-little-more',
      because: 'it shows when the plant fills its fruit',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leans: 'less',
      because: 'a seedling still lives from its seed',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'nightshade' },
      leans: 'a-little-more',
      because: 'tomatoes and potatoes show it most',
      source: 'from memory',
    },
    {
      when: { crop: 'melon' },
      leans: 'a-little-more',
      because: 'melons show it more than other cucurbits',
      source: 'UKY-MG',
    },
  ],
  signs: [
    { mark: 'yellow-between-veins', old: 'usually', new: 'rarely', source: 'PNW-KEY' },
    { mark: 'mottled', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'yellow-edges', old: 'sometimes', source: 'from memory' },
    { mark: 'yellow-patches', old: 'sometimes', source: 'common practice, no source' },
    { mark: 'yellow-even', old: 'rarely', source: 'from memory' },
    { mark: 'purple-tint', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'cupped-up', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'thickened', old: 'sometimes', source: 'PNW-KEY' },
    { mark: 'brown-patches', old: 'sometimes', source: 'UKY-MG' },
    { mark: 'brown-spots', old: 'rarely', source: 'from memory' },
    { mark: 'brown-edges', old: 'rarely', source: 'from memory' },
    { mark: 'leaf-dead', old: 'rarely', source: 'from memory' },
    { mark: 'shot-holes', old: 'rarely', source: 'UKY-MG' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'from memory' },
    { sign: 'stunted', frequency: 'rarely', source: 'from memory' },
    { sign: 'new-growth-clean', frequency: 'usually', source: 'IPNI-4R' },
    { sign: 'oldest-first', frequency: 'usually', source: 'IPNI-4R' },
    { sign: 'whole-bed', frequency: 'often', source: 'AZ-MG-SUM' },
    { sign: 'scattered', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'elsewhere-fine', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'every-year', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'after-feed', frequency: 'rarely', source: 'PNW-KEY' },
    { sign: 'always-so', frequency: 'hardly-ever', source: 'common practice, no source' },
    { sign: 'patch', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'after-rain', frequency: 'rarely', source: 'common practice, no source' },
  ],
  mistakenFor: [
    {
      cause: 'potassium-short',
      tellsApart:
        'Potassium scorches the edge of old leaves brown; magnesium leaves the edge clean and marbles between green veins.',
      source: 'PNW-KEY',
    },
    {
      cause: 'iron-short',
      tellsApart: 'Iron shows on the newest leaves, magnesium on the old ones.',
      source: 'GMC-KEY',
    },
    {
      cause: 'manganese-short',
      tellsApart: 'Manganese begins on young or middle leaves, with grey or tan dead specks.',
      source: 'PNW-KEY',
    },
    {
      cause: 'old-leaves',
      tellsApart:
        'An ageing leaf yellows veins and all; here the veins stay green and leaves well above the lowest are marked.',
      source: 'common practice, no source',
    },
    {
      cause: 'leaf-roll',
      tellsApart:
        'Rolled leaves stay plain green; magnesium marbles them yellow between green veins before they curl.',
      source: 'PNW-KEY',
    },
  ],
  checks: [
    {
      check: 'test-soil-reaction',
      ifFound: 'Acid: magnesium shortage becomes more likely.',
      ifNotFound: 'Neutral or limy: less likely, unless much potash was given.',
    },
    {
      check: 'look-with-lens',
      ifFound: 'Fine dots or webbing: mites, not a shortage.',
      ifNotFound: 'No animals, clean marbling: shortage stays likely.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'Marbling moves up a pair of leaves while the tip stays green: it fits.',
      ifNotFound: 'The youngest leaves are marked first: think of iron or manganese.',
    },
  ],
  losses: {
    leave: 7,
    watch: 4,
    because: 'late in the season it costs little, early a good part of the leaf',
    source: 'common practice, no source',
  },
  remedies: [
    {
      course: 'supply-element',
      remains: 3,
      because: 'magnesium by the label of the product reaches the next leaves',
      source: 'from memory',
    },
  ],
  recovery: {
    lookAgainDays: 14,
    looksLike: 'New and middle leaves stay green between the veins; marbled old leaves do not recover.',
    source: 'common practice, no source',
  },
  cautions: ['feeds', 'soil-test'],
};
