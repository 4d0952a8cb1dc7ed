import { describe, expect, it } from 'vitest';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';
import { lookAt, tell } from './look-at.ts';

const SINGLE_ELEMENTS: readonly CauseId[] = [
  'magnesium-short',
  'potassium-short',
  'phosphorus-short',
  'iron-short',
  'manganese-short',
  'sulphur-short',
  'calcium-short',
  'boron-short',
  'molybdenum-short',
];

describe('A. nutrient shortage keys', () => {
  it('A1 old leaves evenly yellow: nitrogen before iron, calcium and boron (IPNI-4R, CORNELL-NRCCA)', () => {
    const { p } = lookAt({ seen: 'yellow-even@old oldest-first' });
    for (const immobile of ['iron-short', 'calcium-short', 'boron-short'] as const)
      expect(p('nitrogen-short')).toBeGreaterThan(p(immobile));
  });

  it('A1 newest leaves yellow between the veins: iron and manganese before nitrogen and magnesium (IPNI-4R)', () => {
    const { p } = lookAt({ seen: 'yellow-between-veins@new' });
    for (const young of ['iron-short', 'manganese-short'] as const)
      for (const old of ['nitrogen-short', 'magnesium-short'] as const)
        expect(p(young)).toBeGreaterThan(p(old));
  });

  it.each(['sulphur-short', 'molybdenum-short'] as const)(
    'A2 %s is of variable mobility: neither old nor young leaves exclude it (CIMMYT-MOB)',
    (cause) => {
      const crop: CropId = 'cauliflower';
      const before = lookAt({ crop }).p(cause);
      expect(lookAt({ crop, seen: 'yellow-even@old' }).p(cause)).toBeGreaterThan(before / 4);
      expect(lookAt({ crop, seen: 'yellow-even@new' }).p(cause)).toBeGreaterThan(before / 4);
    },
  );

  it('A3 with ample nitrogen, pale young leaves speak for sulphur more than with none (CIMMYT-MOB)', () => {
    const pale = { seen: 'yellow-even@new', absent: 'yellow-even@old' } as const;
    const ratio = (feed: 'heavy' | 'none'): number => {
      const { p } = lookAt({ ...pale, setting: { feed } });
      return p('sulphur-short') / p('nitrogen-short');
    };
    expect(ratio('heavy')).toBeGreaterThan(2 * ratio('none'));
  });

  it('A4 young, between the veins, no spots: iron before manganese (PNW-KEY, GMC-KEY)', () => {
    const { p, first } = lookAt({ seen: 'yellow-between-veins@new', absent: 'brown-spots@new' });
    expect(first).toBe('iron-short');
    expect(p('iron-short')).toBeGreaterThan(2 * p('manganese-short'));
  });

  it('A4 the same with dead specks: manganese before iron (GMC-KEY)', () => {
    const { p, first } = lookAt({ seen: 'yellow-between-veins@new brown-spots@new' });
    expect(first).toBe('manganese-short');
    expect(p('manganese-short')).toBeGreaterThan(2 * p('iron-short'));
  });

  it.each(['iron-short', 'manganese-short'] as const)('A4 lime raises %s (PNW-KEY)', (cause) => {
    const seen = 'yellow-between-veins@new';
    const at = (reaction: 'acid' | 'about-neutral' | 'chalky-or-limed') =>
      lookAt({ seen, setting: { 'soil-ph': reaction } }).p(cause);
    expect(at('chalky-or-limed')).toBeGreaterThan(2 * at('about-neutral'));
    expect(at('about-neutral')).toBeGreaterThan(at('acid'));
  });

  it('A5 a mark on older leaves does not exclude manganese: sources disagree (PNW-KEY, RLF-MN)', () => {
    const limed = { setting: { 'soil-ph': 'chalky-or-limed' } } as const;
    const { p } = lookAt({ ...limed, seen: 'yellow-between-veins@old' });
    expect(p('manganese-short')).toBeGreaterThan(lookAt(limed).p('manganese-short'));
  });

  it('A6 a scorched edge on old leaves: potassium before magnesium (DOC-NUT, UMD-NUT)', () => {
    const { p, first } = lookAt({ seen: 'yellow-edges@old brown-edges@old oldest-first' });
    expect(first).toBe('potassium-short');
    expect(p('potassium-short')).toBeGreaterThan(2 * p('magnesium-short'));
  });

  it('A6 clean marbling between green veins: magnesium before potassium (PNW-KEY)', () => {
    const { p, first } = lookAt({
      seen: 'yellow-between-veins@old oldest-first',
      absent: 'brown-edges@old yellow-edges@old',
    });
    expect(first).toBe('magnesium-short');
    expect(p('magnesium-short')).toBeGreaterThan(5 * p('potassium-short'));
  });

  it.each(['cupped-up@old', 'cupped-down@old', 'yellow-between-veins@old'])(
    'A6 potassium keeps weight with %s, as the keys differ (UMD-NUT, PNW-KEY)',
    (sign) => {
      const scorched = { seen: 'brown-edges@old oldest-first' };
      const without = lookAt(scorched).p('potassium-short');
      expect(lookAt(tell(scorched, { seen: sign })).p('potassium-short')).toBeGreaterThan(without / 2);
    },
  );

  it('A7 molybdenum follows crop, strap leaf and acid soil, not position (PNW-KEY, UAF-TAB)', () => {
    const strap = { crop: 'cauliflower', seen: 'twisted-narrow@new' } as const;
    const acid = lookAt(tell(strap, { setting: { 'soil-ph': 'acid' } }));
    const limed = lookAt(tell(strap, { setting: { 'soil-ph': 'chalky-or-limed' } }));
    const tomato = lookAt({ ...strap, crop: 'tomato', setting: { 'soil-ph': 'acid' } });
    expect(acid.p('molybdenum-short')).toBeGreaterThan(10 * limed.p('molybdenum-short'));
    expect(acid.p('molybdenum-short')).toBeGreaterThan(10 * tomato.p('molybdenum-short'));
  });

  it('A8 heavy potash feeding raises magnesium shortage; so does acid soil (PNW-KEY)', () => {
    const marbled = { seen: 'yellow-between-veins@old' };
    const at = (setting: object) => lookAt({ ...marbled, setting }).p('magnesium-short');
    expect(at({ feed: 'heavy' })).toBeGreaterThan(at({ feed: 'none' }));
    expect(at({ 'soil-ph': 'acid' })).toBeGreaterThan(at({ 'soil-ph': 'about-neutral' }));
  });

  it('A9 brassica, hollow brown stem, drought and lime: boron among the first three (BORAX-CAB, WIKI-B)', () => {
    const { causes } = lookAt({
      crop: 'broccoli',
      setting: { 'recent-rain': 'dry', 'soil-ph': 'chalky-or-limed' },
      seen: 'pith-brown',
    });
    expect(causes.slice(0, 3).map(({ id }) => id)).toContain('boron-short');
  });

  it('A10 a dead heart with thick, brittle young leaves: boron before calcium (MTG-BLOG)', () => {
    const { p } = lookAt({ crop: 'beetroot', seen: 'heart-blackened thickened@new' });
    expect(p('boron-short')).toBeGreaterThan(p('calcium-short'));
  });

  it('A10 a brown edge round the inner leaves of lettuce: calcium before boron (MTG-BLOG)', () => {
    const { p } = lookAt({ crop: 'lettuce', seen: 'heart-blackened brown-edges@new' });
    expect(p('calcium-short')).toBeGreaterThan(5 * p('boron-short'));
  });

  it('A11 torn holes on every plant of a cabbage bed are not read as insects alone: boron gains (FW-SA)', () => {
    const torn = { crop: 'cauliflower', seen: 'ragged-holes@new thickened@new' } as const;
    const everywhere = lookAt(tell(torn, { seen: 'whole-bed', absent: 'scattered droppings-pellets slime' }));
    const here = lookAt(tell(torn, { seen: 'scattered droppings-pellets', absent: 'whole-bed' }));
    expect(everywhere.odds('boron-short')).toBeGreaterThan(5 * here.odds('boron-short'));
    expect(here.odds('caterpillars')).toBeGreaterThan(5 * everywhere.odds('caterpillars'));
  });

  it.each(SINGLE_ELEMENTS)(
    'A12 a one-sided trouble lowers %s: shortages are symmetrical (PHILRICE)',
    (cause) => {
      const crop: CropId = 'cauliflower';
      const pale = { crop, seen: 'yellow-even@old' } as const;
      expect(lookAt(tell(pale, { seen: 'wilts-one-side' })).p(cause)).toBeLessThan(lookAt(pale).p(cause));
    },
  );

  it.each([
    'yellow-between-veins@new',
    'yellow-between-veins@old',
    'yellow-edges@old',
    'purple-tint@old',
    'yellow-even@new',
    'brown-edges@new',
    'thickened@new',
    'twisted-narrow@new',
  ])(
    'A13 %s alone proves no single element: none above 0.6 without soil or history (MPA-FERT, HYD-AU)',
    (sign) => {
      const { p } = lookAt({ seen: sign });
      for (const element of SINGLE_ELEMENTS) expect(p(element)).toBeLessThan(0.6);
    },
  );

  it('A14 a waterlogged week explains part of a nitrogen shortage away (PURDUE-WL)', () => {
    const pale = { crop: 'tomato', seen: 'yellow-even@old oldest-first stunted' } as const;
    const wet = lookAt(tell(pale, { setting: { 'soil-water': 'waterlogged' }, seen: 'after-rain' }));
    const dry = lookAt(tell(pale, { setting: { 'soil-water': 'moist' } }));
    expect(wet.p('nitrogen-short')).toBeLessThan(dry.p('nitrogen-short') / 2);
    expect(wet.p('wet-roots')).toBeGreaterThan(wet.p('nitrogen-short'));
  });

  it('A14 cold for the crop explains part of a nitrogen shortage away (PURDUE-CHILL)', () => {
    const pale = { crop: 'tomato', seen: 'yellow-even@old stunted' } as const;
    const cold = lookAt(
      tell(pale, { setting: { 'recent-temperature': 'cold-for-crop' }, seen: 'after-cold' }),
    );
    expect(cold.p('nitrogen-short')).toBeLessThan(lookAt(pale).p('nitrogen-short') / 2);
    expect(cold.first).toBe('cold-check');
  });
});
