import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import type { CropId } from '../../src/signs/vocabulary.ts';
import { lookAt, type Told, tell } from './look-at.ts';

describe('rules of thumb of the trade (common practice, no source)', () => {
  const COLD: Told = { setting: { 'recent-temperature': 'cold-for-crop' }, seen: 'stunted yellow-even@old' };
  const cold = (crop: CropId): number => lookAt({ ...COLD, crop }).p('cold-check');

  it('French beans stand still below about 20 °C in the soil, broad beans stand through winter', () => {
    expect(lookAt({ ...COLD, crop: 'french-bean' }).first).toBe('cold-check');
    expect(cold('french-bean')).toBeGreaterThan(2 * cold('broad-bean'));
  });

  it('soya is a little hardier than French beans', () => {
    expect(cold('soya-bean')).toBeLessThan(cold('french-bean'));
    expect(cold('soya-bean')).toBeGreaterThan(cold('broad-bean'));
  });

  it('tomato is hardier than pepper and aubergine, melon the most tender', () => {
    expect(cold('tomato')).toBeLessThan(cold('pepper'));
    expect(cold('tomato')).toBeLessThan(cold('aubergine'));
    expect(cold('melon')).toBeGreaterThan(cold('pepper'));
    expect(cold('melon')).toBeGreaterThan(cold('aubergine'));
  });

  const IN_THE_HEAP: Told = {
    crop: 'squash',
    date: '2026-06-05',
    seen: 'dull-limp@old brown-edges@old after-planting',
  };
  const heap = (celsius: number): number =>
    lookAt(tell(IN_THE_HEAP, { setting: { 'compost-celsius': celsius } })).p('hot-compost');

  it('a delivered heap that reads 60 °C is unfinished, at 30 °C nearly ready', () => {
    expect(heap(60)).toBeGreaterThan(3 * heap(31));
    expect(heap(31)).toBeGreaterThan(heap(20));
    expect(lookAt(tell(IN_THE_HEAP, { setting: { 'compost-celsius': 60 } })).first).toBe('hot-compost');
  });

  it('plants set in the middle of a hot heap suffer more than those at its cooler edge: a patch, worse to one side', () => {
    const hot = tell(IN_THE_HEAP, { setting: { 'compost-celsius': 60 } });
    const before = lookAt(hot).p('hot-compost');
    expect(lookAt(tell(hot, { seen: 'one-end same-compost-only' })).p('hot-compost')).toBeGreaterThan(before);
  });

  it('wood in the rooting depth starves plants, an inch a year on the surface does not', () => {
    const pale: Told = { crop: 'cabbage', seen: 'yellow-even@old stunted' };
    const deep = lookAt(tell(pale, { setting: { 'wood-in-root-zone': true, 'wood-on-surface': false } }));
    const top = lookAt(tell(pale, { setting: { 'wood-in-root-zone': false, 'wood-on-surface': true } }));
    expect(deep.first).toBe('nitrogen-locked');
    expect(top.first).not.toBe('nitrogen-locked');
    expect(top.p('nitrogen-locked')).toBeLessThan(deep.p('nitrogen-locked') / 5);
  });

  it('a bed forked shortly before planting may grow a little paler than its undisturbed neighbour', () => {
    const paler: Told = { crop: 'lettuce', date: '2026-05-20', seen: 'yellow-even@old elsewhere-fine' };
    const forked = lookAt(tell(paler, { setting: { 'bed-disturbed': true, 'wood-in-root-zone': false } }));
    const left = lookAt(tell(paler, { setting: { 'bed-disturbed': false, 'wood-in-root-zone': false } }));
    expect(forked.p('soil-disturbed')).toBeGreaterThan(10 * left.p('soil-disturbed'));
    expect(forked.causes.slice(0, 2).map(({ id }) => id)).toContain('soil-disturbed');
    expect(forked.verdict.id).not.toBe('act');
  });

  it('the lowest leaves of a strong plant yellow with age and are no sign of shortage', () => {
    const { p, first } = lookAt({
      crop: 'cabbage',
      date: '2026-09-01',
      seen: 'yellow-even@old new-growth-clean',
      absent: 'stunted small-leaves@new',
    });
    expect(first).toBe('old-leaves');
    expect(p('old-leaves')).toBeGreaterThan(5 * p('nitrogen-short'));
  });

  it('old leaves left lying feed slugs', () => {
    const holes: Told = { crop: 'lettuce', seen: 'ragged-holes@old' };
    const at = (stage: 'old' | 'growing') =>
      lookAt(tell(holes, { setting: { 'crop-stage': stage } })).p('slugs-snails');
    expect(at('old')).toBeGreaterThan(at('growing'));
  });

  it.each<[CropId, 'yellow-or-golden' | 'pale-or-self-blanching']>([
    ['courgette', 'yellow-or-golden'],
    ['celery', 'pale-or-self-blanching'],
  ])('%s of a pale variety: all plants of it alike, the green variety beside them green', (crop, colour) => {
    const { first, verdict } = lookAt({
      crop,
      date: '2026-07-01',
      setting: { 'variety-colour': colour },
      seen: 'yellow-even@all whole-bed variety-only',
      absent: 'stunted',
    });
    expect(first).toBe('variety-colour');
    expect(['leave', 'watch']).toContain(verdict.id);
  });

  it('greenfly come some weeks before their predators and need no spray once ladybird larvae are there', () => {
    const fly: Told = { crop: 'broad-bean', date: '2026-05-20', seen: 'aphids' };
    expect(lookAt(tell(fly, { absent: 'aphid-hunters' })).verdict.id).not.toBe('leave');
    const { expectedLoss } = lookAt(tell(fly, { seen: 'aphid-hunters' })).verdict.because;
    expect(expectedLoss.act!).toBeGreaterThan(Math.min(expectedLoss.leave!, expectedLoss.watch!));
  });

  it('pigeons tear brassica leaf from between the ribs, bearable in summer, not in winter', () => {
    const torn = (date: string) =>
      lookAt({
        crop: 'kale',
        date,
        seen: 'veins-left@old veins-left@new torn-cut birds-seen',
        absent: 'slime',
      });
    expect(torn('2026-01-15').first).toBe('birds');
    expect(torn('2026-01-15').verdict.because.expectedLoss.leave!).toBeGreaterThan(
      4 * torn('2026-07-15').verdict.because.expectedLoss.leave!,
    );
    expect(torn('2026-01-15').verdict.id).toBe('act');
    expect(torn('2026-07-15').verdict.id).not.toBe('act');
  });

  it('a climbing bean whose tip a rabbit took shoots again: no alarm', () => {
    const bitten = (crop: CropId) =>
      lookAt({ crop, date: '2026-06-10', seen: 'tip-eaten clean-cut mammal-signs' }).verdict.because
        .expectedLoss.leave!;
    expect(bitten('runner-bean')).toBeLessThan(bitten('lettuce') / 3);
  });

  it('after a cold windy fortnight old leaves of tender crops look poor; clean new growth means recovery', () => {
    const poor: Told = {
      crop: 'courgette',
      date: '2026-05-20',
      setting: { 'recent-temperature': 'cold-for-crop', wind: 'windy' },
      seen: 'brown-edges@old yellow-even@old after-cold',
    };
    const clean = lookAt(tell(poor, { seen: 'new-growth-clean getting-better' }));
    expect(['cold-check', 'wind-batter']).toContain(clean.first);
    expect(clean.verdict.id).not.toBe('act');
    expect(clean.verdict.because.expectedLoss.leave!).toBeLessThan(
      lookAt(poor).verdict.because.expectedLoss.leave!,
    );
  });

  it('potato and tomato show residue first, as inward-curling new leaves', () => {
    const curled = (crop: CropId) =>
      lookAt({ crop, setting: { 'compost-kinds': ['horse-manure'] }, seen: 'cupped-up@new' }).p(
        'residue-in-compost',
      );
    for (const early of ['potato', 'tomato'] as const)
      for (const later of ['pepper', 'lettuce', 'courgette', 'cabbage'] as const)
        expect(curled(early)).toBeGreaterThan(curled(later));
    expect(curled('tomato')).toBeGreaterThan(
      lookAt({ crop: 'tomato', setting: { 'compost-kinds': ['horse-manure'] }, seen: 'cupped-up@old' }).p(
        'residue-in-compost',
      ),
    );
  });

  it('where an inch of chips on the surface has a leaning at all, it is the smallest one', () => {
    const locked = KNOWLEDGE.find(({ id }) => id === 'nitrogen-locked')!;
    const surface = locked.leanings.find(
      ({ when }) => 'setting' in when && when.setting === 'wood-on-surface',
    );
    expect(surface?.leans).toBe('a-little-more');
  });
});
