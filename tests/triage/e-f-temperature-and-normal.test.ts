import { describe, expect, it } from 'vitest';
import type { CropId } from '../../src/signs/vocabulary.ts';
import { lookAt, type Told, tell } from './look-at.ts';

describe('E. temperature', () => {
  const COLD: Told = { setting: { 'recent-temperature': 'cold-for-crop' }, seen: 'stunted' };

  it('E1 beans that stand still in cold ground: too cold first; the same said of peas far less (OSU-HARR)', () => {
    const on = (crop: CropId) => lookAt({ ...COLD, crop, date: '2026-05-10' });
    expect(on('french-bean').first).toBe('cold-check');
    expect(on('french-bean').p('cold-check')).toBeGreaterThan(on('pea').p('cold-check'));
    expect(on('french-bean').p('cold-check')).toBeGreaterThan(on('spinach').p('cold-check'));
  });

  it('E5 many days below the growing minimum raise it, few lower it (UCSC-KNOTT)', () => {
    const cold = (days: number) =>
      lookAt({ crop: 'cucumber', setting: { 'cold-days': days }, seen: 'yellow-even@old' }).p('cold-check');
    expect(cold(14)).toBeGreaterThan(cold(6));
    expect(cold(6)).toBeGreaterThan(cold(1));
  });

  it('E6 cold nights, wilted transplants, moist soil: chilling over drought (PURDUE-CHILL)', () => {
    const { p } = lookAt({
      crop: 'cucumber',
      date: '2026-05-15',
      setting: { 'recent-temperature': 'cold-for-crop', 'soil-water': 'moist', 'crop-stage': 'just-planted' },
      seen: 'dull-limp@old wilts-wet-soil after-cold',
    });
    expect(p('cold-check') + p('frost')).toBeGreaterThan(5 * p('drought'));
  });

  it('E6 cucumber before tomato (PURDUE-CHILL)', () => {
    const on = (crop: CropId) => lookAt({ ...COLD, crop }).p('cold-check');
    expect(on('cucumber')).toBeGreaterThan(on('tomato'));
  });

  it('E8 basil with black edges after a cold night: frost or cold first (UMASS-2021)', () => {
    const { first } = lookAt({ crop: 'basil', seen: 'blackened@all sudden after-cold' });
    expect(['frost', 'cold-check']).toContain(first);
  });

  it('E9 aubergine is chilled where broad beans are not (PSU-TOM, UCSC-KNOTT)', () => {
    const on = (crop: CropId) => lookAt(tell(COLD, { crop, seen: 'yellow-even@old' }));
    expect(on('aubergine').first).toBe('cold-check');
    expect(on('aubergine').p('cold-check')).toBeGreaterThan(2 * on('broad-bean').p('cold-check'));
  });

  it('E10 cucumber pale in cool weather: cold first (AGMET-VEG)', () => {
    const { first } = lookAt({
      crop: 'cucumber',
      setting: { 'recent-temperature': 'cold-for-crop' },
      seen: 'yellow-even@old yellow-even@new',
    });
    expect(first).toBe('cold-check');
  });

  it('E11 purple in cold soil: cold before phosphorus; in warm soil phosphorus before cold (UMD-P, OSU-FRANKLIN, BB-PURPLE)', () => {
    const purple = (weather: 'cold-for-crop' | 'about-right') =>
      lookAt({
        crop: 'tomato',
        date: '2026-05-10',
        setting: { 'recent-temperature': weather },
        seen: 'purple-tint@old',
      });
    const cold = purple('cold-for-crop');
    const warm = purple('about-right');
    expect(cold.p('cold-check')).toBeGreaterThan(cold.p('phosphorus-short'));
    expect(warm.p('phosphorus-short')).toBeGreaterThan(warm.p('cold-check'));
  });

  it('E11 purple in cold soil needs no phosphate now: wait (UMD-P)', () => {
    const { verdict } = lookAt({
      crop: 'tomato',
      date: '2026-05-10',
      setting: { 'recent-temperature': 'cold-for-crop' },
      seen: 'purple-tint@old after-cold',
    });
    expect(verdict.id).not.toBe('act');
    expect(verdict.courses).not.toContain('supply-element');
  });

  it('E12 cramped roots explain purple on brassica transplants (UMD-P)', () => {
    const { p } = lookAt({
      crop: 'cabbage',
      setting: { 'crop-stage': 'just-planted' },
      seen: 'purple-tint@old root-bound stunted',
    });
    expect(p('root-bound')).toBeGreaterThan(p('phosphorus-short'));
  });

  it('E12 purple says less of soil on brassicas than elsewhere, for they redden readily (UMD-P)', () => {
    const readily = (crop: CropId) => {
      const { p } = lookAt({ crop, seen: 'purple-tint@old' });
      return p('phosphorus-short') + p('root-bound') + p('cold-check') + p('variety-colour');
    };
    expect(readily('cabbage')).toBeGreaterThan(readily('parsnip'));
  });

  it('E13 after frost: courgettes far more than kale (CAN-LETT)', () => {
    const on = (crop: CropId) =>
      lookAt({ crop, setting: { 'recent-temperature': 'frost' }, seen: 'blackened@new sudden' }).p('frost');
    expect(on('courgette')).toBeGreaterThan(on('kale'));
    expect(on('courgette')).toBeGreaterThan(0.8);
  });

  // MSU-FREEZE: what froze looks wet all over, then brown; leaf spots are separate (common practice, no source).
  it.each(['2026-05-10', '2026-09-20'])(
    'spots alone are no mark of frost, even on a tender crop on %s',
    (date) => {
      const { p, first, of } = lookAt({
        crop: 'french-bean',
        date,
        seen: 'spotted@some',
        absent: 'yellowing@some',
      });
      expect(['rust', 'leaf-spot']).toContain(first);
      expect(p('frost')).toBeLessThan(p('rust') / 2);
      expect(of('frost').against.map(({ sign }) => sign)).toContain('spotted@some');
    },
  );
  it('common practice, no source: tender leaves black and limp are frost still', () => {
    const { first } = lookAt({
      crop: 'french-bean',
      date: '2026-05-10',
      seen: 'blackened@new dull-limp@new sudden',
    });
    expect(first).toBe('frost');
  });

  it('common practice, no source: no frost in hot weather', () => {
    expect(
      lookAt({ crop: 'courgette', setting: { 'recent-temperature': 'hot' } }).of('frost').ruledOut,
    ).toBeDefined();
  });
});

describe('F. age and variety', () => {
  it('F1 loss confined to the oldest leaves while new ones look well is ageing, left alone (AZ-MG-DEFINE)', () => {
    const { first, verdict } = lookAt({
      crop: 'tomato',
      date: '2026-08-20',
      setting: { 'crop-stage': 'fruiting' },
      seen: 'yellow-even@old new-growth-clean oldest-first',
      absent: 'brown-spots@old stunted spreading yellow-even@new',
    });
    expect(first).toBe('old-leaves');
    expect(['leave', 'watch']).toContain(verdict.id);
  });

  it('F1 loss of new leaves is a problem, not age (AZ-MG-DEFINE)', () => {
    const { p, first } = lookAt({ crop: 'tomato', seen: 'yellow-even@new leaf-dead@new' });
    const old = lookAt({ crop: 'tomato', seen: 'yellow-even@old leaf-dead@old' });
    expect(old.first).toBe('old-leaves');
    expect(first).not.toBe('old-leaves');
    expect(p('old-leaves')).toBeLessThan(old.p('old-leaves') / 2);
  });

  it('F2 a golden variety explains yellow leaves away (AZ-MG-DEFINE)', () => {
    const yellow: Told = {
      crop: 'courgette',
      seen: 'yellow-even@old yellow-even@new whole-bed always-so',
      absent: 'stunted',
    };
    const golden = lookAt(tell(yellow, { setting: { 'variety-colour': 'yellow-or-golden' } }));
    const green = lookAt(tell(yellow, { setting: { 'variety-colour': 'ordinary-green' } }));
    expect(golden.first).toBe('variety-colour');
    expect(golden.p('nitrogen-short')).toBeLessThan(green.p('nitrogen-short') / 2);
  });

  it('F3 yellow-fruited courgette, yellow blotches, vigorous: the variety (CGC-LIETZOW, SHIFRISS)', () => {
    const { first } = lookAt({
      crop: 'courgette',
      setting: { 'variety-colour': 'yellow-or-golden' },
      seen: 'whole-colour-golden@new yellow-patches@old variety-only',
      absent: 'stunted spreading',
    });
    expect(first).toBe('variety-colour');
  });

  it('F5 silver patches at vein angles on every courgette: the variety, not mildew (CGC-GENES)', () => {
    const { first, p } = lookAt({
      crop: 'courgette',
      seen: 'silver-pattern@all whole-bed always-so',
      absent: 'white-powder@old whitefly',
    });
    expect(first).toBe('variety-colour');
    expect(p('powdery-mildew')).toBeLessThan(0.1);
  });

  it('F6 silver along the veins with whitefly about: whitefly rises over the variety (CGC-PARIS-1993, SSL-INHERIT)', () => {
    const silver: Told = { crop: 'squash', seen: 'silver-pattern@new' };
    const flies = lookAt(tell(silver, { seen: 'whitefly spreading', absent: 'always-so' }));
    expect(flies.p('whitefly')).toBeGreaterThan(flies.p('variety-colour'));
  });

  it('F7 the rub test parts mildew from silver (UCONN-MILD, SQ-PM)', () => {
    const white: Told = { crop: 'courgette', date: '2026-08-10', seen: 'pale-marks@some' };
    const rubs = lookAt(tell(white, { seen: 'white-powder@old' }));
    const stays = lookAt(
      tell(white, { seen: 'silver-pattern@old', absent: 'white-powder@old white-powder@new' }),
    );
    expect(rubs.first).toBe('powdery-mildew');
    expect(stays.first).toBe('variety-colour');
  });

  it('F8 self-blanching celery is pale by nature (BI-CELERY)', () => {
    const { first } = lookAt({
      crop: 'celery',
      setting: { 'variety-colour': 'pale-or-self-blanching' },
      seen: 'yellow-even@all whole-bed',
      absent: 'stunted',
    });
    expect(first).toBe('variety-colour');
  });

  it('F8 a red variety explains a purple tint (from memory)', () => {
    const purple: Told = { crop: 'kale', seen: 'purple-tint@all whole-bed' };
    const red = lookAt(tell(purple, { setting: { 'variety-colour': 'red-or-purple' } }));
    expect(red.first).toBe('variety-colour');
    expect(red.p('phosphorus-short')).toBeLessThan(lookAt(purple).p('phosphorus-short'));
  });
});
