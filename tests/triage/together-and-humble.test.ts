import { describe, expect, it } from 'vitest';
import type { CauseId } from '../../src/signs/vocabulary.ts';
import { lookAt, type Told, tell } from './look-at.ts';

const COMBINATIONS: readonly (readonly [readonly CauseId[], Told])[] = [
  [
    ['variety-colour', 'aphids', 'old-leaves'],
    {
      crop: 'courgette',
      date: '2026-07-20',
      setting: { 'variety-colour': 'yellow-or-golden', 'crop-stage': 'fruiting' },
      seen: 'whole-colour-golden@new variety-only aphids yellow-even@old leaf-dead@old oldest-first new-growth-clean',
      absent: 'stunted',
    },
  ],
  [
    ['cold-check', 'slugs-snails'],
    {
      crop: 'french-bean',
      date: '2026-05-20',
      setting: { 'recent-temperature': 'cold-for-crop', 'recent-rain': 'wet' },
      seen: 'stunted yellow-even@old after-cold ragged-holes@old slime',
    },
  ],
  [
    ['wet-roots', 'old-leaves'],
    {
      crop: 'tomato',
      date: '2026-08-20',
      setting: { 'soil-water': 'waterlogged', 'crop-stage': 'old' },
      seen: 'wilts-wet-soil dull-limp@old after-rain leaf-dead@old yellow-even@old oldest-first new-growth-clean',
    },
  ],
  [
    ['variety-colour', 'aphids'],
    {
      crop: 'courgette',
      setting: { 'variety-colour': 'yellow-or-golden' },
      seen: 'whole-colour-golden@all aphids aphid-hunters',
      absent: 'stunted',
    },
  ],
  [
    ['flea-beetle', 'slugs-snails'],
    { crop: 'pak-choi', seen: 'shot-holes@all jumping-beetles ragged-holes@old slime' },
  ],
  [
    ['aphids', 'virus'],
    { crop: 'courgette', seen: 'aphids cast-skins mottled@all stunted fruit-misshapen scattered' },
  ],
  [
    ['magnesium-short', 'powdery-mildew'],
    { crop: 'cucumber', date: '2026-08-15', seen: 'yellow-between-veins@old oldest-first white-powder@old' },
  ],
  [
    ['birds', 'caterpillars'],
    { crop: 'cabbage', seen: 'veins-left@old torn-cut birds-seen caterpillars droppings-pellets' },
  ],
];

describe('two and three causes at once', () => {
  it.each(COMBINATIONS.map(([causes, told]) => ({ name: causes.join(' + '), causes, told })))(
    '$name',
    ({ causes, told }) => {
      const { causes: ranked } = lookAt(told);
      const leading = ranked.slice(0, causes.length + 1).map(({ id }) => id);
      for (const cause of causes) expect(leading).toContain(cause);
    },
  );

  it('the set itself is named, not only its members', () => {
    const { together } = lookAt(COMBINATIONS[3]![1]);
    expect(together[0]?.causes).toEqual(expect.arrayContaining(['variety-colour', 'aphids']));
    expect(together[0]?.probability).toBeGreaterThan(0.3);
  });

  it('one cause explains another away: greenfly make residue less likely for the same curl', () => {
    const curled: Told = { crop: 'pepper', seen: 'puckered@new cupped-down@new' };
    expect(lookAt(tell(curled, { seen: 'aphids' })).p('residue-in-compost')).toBeLessThan(
      lookAt(curled).p('residue-in-compost'),
    );
  });
});

describe('it stays humble', () => {
  it('with nothing said the ranking is the prior and says so', () => {
    const { nothingSaid, causes } = lookAt({});
    expect(nothingSaid).toBe(true);
    for (const { probability } of causes) expect(probability).toBeLessThan(0.13);
  });

  it.each<[string, Told]>([
    [
      'signs of five unrelated troubles',
      {
        crop: 'leek',
        seen: 'silver-pattern@new felled pith-brown heart-blackened rust-pustules@new fruit-end-black',
      },
    ],
    [
      'a crust under young leaves that is no known mould, on one plant',
      {
        crop: 'lettuce',
        seen: 'grey-mould-under@new blisters-under@new thickened@new one-plant',
        absent: 'yellow-patches@old yellow-patches@new spreading aphids white-powder@new',
      },
    ],
    [
      'swollen roots on a crop that clubroot cannot have',
      {
        crop: 'cucumber',
        seen: 'roots-swollen stunted scattered',
        absent: 'roots-eaten roots-few-brown root-bound stem-base-rot pith-brown',
      },
    ],
  ])('when findings fit nothing, something else leads: %s', (_, told) => {
    expect(lookAt(told).first).toBe('unlisted');
  });

  it('something else falls when a listed cause fits', () => {
    const before = lookAt({ crop: 'courgette' }).p('unlisted');
    const { p } = lookAt({ crop: 'courgette', seen: 'white-powder@old spreading oldest-first' });
    expect(p('unlisted')).toBeLessThan(before);
  });

  it.each<[string, NonNullable<Told['setting']>]>([
    [
      'horse manure from sprayed fields',
      { 'compost-kinds': ['horse-manure', 'straw-or-hay'], 'hay-source': 'yes' },
    ],
    ['a hot heap', { 'compost-state': 'hot', 'compost-celsius': 62, 'compost-age': 1 }],
    ['frost', { 'recent-temperature': 'frost' }],
    ['sodden clay', { 'soil-water': 'waterlogged', 'recent-rain': 'wet', 'soil-kind': 'clay' }],
    ['pigeons without a net', { 'pests-about': ['pigeons'], netted: false }],
    ['chalk', { 'soil-ph': 'chalky-or-limed' }],
    ['wood dug in', { 'wood-in-root-zone': true, 'bed-disturbed': true }],
    ['a golden variety', { 'variety-colour': 'yellow-or-golden' }],
  ])('settings alone never make a cause more likely than not: %s', (_, setting) => {
    for (const crop of ['tomato', 'kale', 'courgette'] as const)
      for (const { id, probability } of lookAt({ crop, setting }).causes)
        expect(probability, `${id} on ${crop}`).toBeLessThanOrEqual(0.5);
  });

  it('no finding makes anything certain', () => {
    const { causes } = lookAt({
      crop: 'leek',
      seen: 'rust-pustules@old rust-pustules@new spreading every-year',
    });
    expect(causes[0]!.probability).toBeLessThan(1);
  });
});
