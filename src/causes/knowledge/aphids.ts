import type { Cause } from '../schema.ts';

export const aphids: Cause = {
  id: 'aphids',
  what: 'Greenfly, blackfly or their kin sit on the tips and under the leaves and suck. The leaves curl and pucker; sticky dew and white cast skins are left behind.',
  baseRate: { rate: 0.07, confidence: 'described', source: 'common practice, no source' },
  leanings: [
    {
      when: { season: 'winter' },
      leans: 'less',
      because: 'outdoors few are about in winter',
      source: 'common practice, no source',
    },
    {
      when: { season: 'spring' },
      leans: 'a-little-more',
      because: 'greenfly arrive some weeks before their predators',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'under-cover' },
      leans: 'a-little-more',
      because: 'warmth speeds them and the hunters stay outside',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'place', is: 'windowsill' },
      leans: 'a-little-more',
      because: 'no hunters come indoors',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'broad-bean' },
      leans: 'a-little-more',
      because: 'blackfly come to the tips of broad beans',
      source: 'common practice, no source',
    },
    {
      when: { crop: 'allium' },
      leans: 'less',
      because: 'onions and leeks are seldom troubled by them',
      source: 'from memory',
    },
    {
      when: { crop: 'carrot-family' },
      leans: 'a-little-less',
      because: 'less often than on beans and cabbages',
      source: 'from memory',
    },
    {
      when: { setting: 'feed', is: 'heavy' },
      leans: 'a-little-more',
      because: 'soft, nitrogen-rich growth draws greenfly',
      source: 'common practice, no source',
    },
    {
      when: { setting: 'recent-rain', is: 'wet' },
      leans: 'a-little-less',
      because: 'heavy rain washes them off',
      source: 'common practice, no source',
    },
  ],
  signs: [
    { mark: 'cupped-down', old: 'rarely', new: 'often', source: 'FFR-APHID', confidence: 'disputed' },
    { mark: 'cupped-up', old: 'rarely', new: 'sometimes', source: 'FFR-APHID', confidence: 'disputed' },
    { mark: 'puckered', old: 'sometimes', new: 'often', source: 'FFR-APHID' },
    { mark: 'twisted-narrow', new: 'rarely', source: 'from memory' },
    { mark: 'small-leaves', new: 'sometimes', source: 'from memory' },
    { mark: 'yellow-patches', old: 'sometimes', new: 'rarely', source: 'from memory' },
    { mark: 'yellow-even', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'mottled', old: 'rarely', new: 'rarely', source: 'from memory' },
    { mark: 'dull-limp', old: 'rarely', new: 'rarely', source: 'from memory' },
    { sign: 'aphids', frequency: 'usually', source: 'SDUT-UC' },
    { sign: 'cast-skins', frequency: 'often', source: 'SUNSET' },
    { sign: 'sticky-sooty', frequency: 'often', source: 'SDUT-UC' },
    { sign: 'ants', frequency: 'sometimes', source: 'SDUT-UC' },
    { sign: 'aphid-hunters', frequency: 'sometimes', source: 'UMASS-0627' },
    { sign: 'stunted', frequency: 'sometimes', source: 'from memory' },
    { sign: 'flowers-dropping', frequency: 'rarely', source: 'from memory' },
    { sign: 'leaf-drop', frequency: 'rarely', source: 'from memory' },
    { sign: 'scattered', frequency: 'often', source: 'FFR-APHID' },
    { sign: 'patch', frequency: 'sometimes', source: 'from memory' },
    { sign: 'one-plant', frequency: 'sometimes', source: 'from memory' },
    { sign: 'whole-bed', frequency: 'sometimes', source: 'from memory' },
    { sign: 'spreading', frequency: 'sometimes', source: 'AZ-MG-SUM' },
    { sign: 'getting-better', frequency: 'sometimes', source: 'UDEL-8938' },
    { sign: 'new-growth-clean', frequency: 'rarely', source: 'from memory' },
    { sign: 'every-year', frequency: 'rarely', source: 'from memory' },
    { sign: 'several-kinds', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'sudden', frequency: 'sometimes', source: 'common practice, no source' },
    { sign: 'one-end', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'after-planting', frequency: 'rarely', source: 'common practice, no source' },
    { sign: 'wilts-wet-soil', frequency: 'rarely', source: 'from memory' },
  ],
  mistakenFor: [
    {
      cause: 'residue-in-compost',
      tellsApart:
        'Turn the curled leaf over: insects, skins or stickiness mean greenfly; a clean underside on every sensitive plant means think of the compost.',
      source: 'FFR-APHID',
    },
    {
      cause: 'virus',
      tellsApart:
        'Greenfly carry virus, but a mottle that stays on leaves without any insects is the virus itself.',
      source: 'OMAFRA-V',
    },
    {
      cause: 'whitefly',
      tellsApart: 'Whitefly lift off in a cloud when the plant is shaken; greenfly stay put.',
      source: 'from memory',
    },
    {
      cause: 'capsid-leafhopper',
      tellsApart: 'Capsids leave ragged holes with brown rims and no crowd under the leaf.',
      source: 'from memory',
    },
  ],
  checks: [
    {
      check: 'turn-leaf-over',
      ifFound: 'The insects or their white skins are there: that explains the curl without anything else.',
      ifNotFound:
        'No insect, no skin, no stickiness under three curled leaves: greenfly are not curling them now.',
    },
    {
      check: 'look-for-hunters',
      ifFound:
        'Ladybird larvae, hoverfly grubs or brown swollen shells are at work: expect the greenfly to fall within a week or two.',
      ifNotFound:
        'No hunters yet: they come some weeks after the greenfly, more slowly when it is cool. Look again in a week.',
    },
    {
      check: 'wait-and-compare',
      ifFound: 'New leaves open flat: it is over.',
      ifNotFound: 'More tips curl from week to week: time to act.',
    },
  ],
  losses: {
    leave: 12,
    watch: 5,
    because: 'a healthy plant carries a colony for weeks, and the hunters usually catch up',
    source: 'common practice, no source',
  },
  tempered: [
    {
      when: { sign: 'aphid-hunters' },
      leave: 1,
      watch: 1,
      because:
        'with ladybird larvae or mummies there the greenfly fall by themselves within one to two weeks; no spray is needed',
      source: 'UMASS-0627',
    },
    {
      when: { setting: 'crop-stage', is: 'seedling' },
      leave: 25,
      watch: 12,
      because: 'on a small pea plant five to ten greenfly are already the point to act',
      source: 'UDEL-8938',
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
      course: 'wash-off-pests',
      remains: 3,
      because: 'most do not find their way back, and the hunters finish the rest',
      source: 'common practice, no source',
    },
  ],
  recovery: {
    lookAgainDays: 7,
    looksLike:
      'Fewer live insects and more brown swollen shells or ladybird larvae among them; the newest leaves open flat.',
    source: 'UMASS-0627',
  },
  cautions: ['sprays'],
};
