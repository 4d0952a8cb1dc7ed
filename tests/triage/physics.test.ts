import { describe, expect, it } from 'vitest';
import { CROP_TEMPERATURES } from '../../src/season/crop-temperatures.ts';
import type { Answers } from '../../src/signs/types.ts';
import { type CauseId, CROPS, type CropId } from '../../src/signs/vocabulary.ts';
import { triage } from '../../src/triage.ts';
import { lookAt, type Told, tell } from './look-at.ts';

type Setting = Answers['setting'];
const oddsOf = (p: number): number => p / (1 - p);
const PALE: Told = { crop: 'cabbage', date: '2026-06-10', seen: 'yellow-even@old stunted' };
const locked = (setting: Setting, more: Told = {}): number =>
  lookAt(tell(tell(PALE, { setting }), more)).p('nitrogen-locked');

describe('lock-up, from what was mixed in and the warmth since', () => {
  it('B4, B1 poultry manure at 9 lowers it, straw at 75 raises it, horse manure lies between (AB-NMP, NRCS-CN, UCSC-COMP)', () => {
    const mixedIn = (kind: 'poultry-manure' | 'horse-manure' | 'straw-or-hay') =>
      locked({ 'compost-kinds': [kind], 'weeks-since-mixed-in': 3 });
    expect(locked({ 'compost-kinds': ['poultry-manure'] })).toBeLessThan(locked({}));
    expect(mixedIn('horse-manure')).toBeGreaterThan(2 * mixedIn('poultry-manure'));
    expect(mixedIn('straw-or-hay')).toBeGreaterThan(mixedIn('horse-manure'));
  });

  it('B7 it decays with the warmth since: soil at 18 °C is done with it before soil at 6 °C (KUSON-2005)', () => {
    const at = (soilCelsius: number) =>
      triage({
        photos: [],
        answers: {
          ...PALE,
          setting: { 'wood-in-root-zone': true, 'weeks-since-mixed-in': 14 },
          signs: { 'yellow-even@old': 'seen', stunted: 'seen' },
        } as Answers,
        today: '2026-06-10',
        zone: 'north',
        soilCelsius,
        draws: 1,
      }).causes.find(({ id }) => id === 'nitrogen-locked')!.probability;
    expect(oddsOf(at(6))).toBeGreaterThan(3 * oddsOf(at(18)));
  });

  it('B8 two weeks against six months and more change it strongly; not knowing lies between (SOLOMON)', () => {
    const since = (weeks?: number) =>
      locked({
        'wood-in-root-zone': true,
        ...(weeks === undefined ? {} : { 'weeks-since-mixed-in': weeks }),
      });
    expect(oddsOf(since(2))).toBeGreaterThan(2.5 * oddsOf(since(26)));
    expect(oddsOf(since(26))).toBeGreaterThan(2 * oddsOf(since(60)));
    expect(since(2)).toBeGreaterThan(since());
    expect(since()).toBeGreaterThan(since(40));
  });

  it('B7 the same weeks count for more over a summer than over a winter (KUSON-2005)', () => {
    const on = (date: string) =>
      lookAt({
        crop: 'cabbage',
        date,
        setting: { 'wood-in-root-zone': true, 'weeks-since-mixed-in': 12 },
        seen: 'yellow-even@old stunted',
      });
    const reason = (date: string) =>
      [...on(date).of('nitrogen-locked').for, ...on(date).of('nitrogen-locked').against].find(({ sign }) =>
        sign.startsWith('weeks-since-mixed-in'),
      )!.decibans;
    expect(reason('2026-03-10')).toBeGreaterThan(reason('2026-09-10') + 2);
  });

  it('B9, B10 dug in far more than on top, which is a little more than nothing (CHALKER-WC, SPU-MULCH)', () => {
    const dugIn = locked({ 'wood-in-root-zone': true, 'wood-on-surface': false });
    const onTop = locked({ 'wood-in-root-zone': false, 'wood-on-surface': true });
    const neither = locked({ 'wood-in-root-zone': false, 'wood-on-surface': false });
    expect(oddsOf(dugIn)).toBeGreaterThan(10 * oddsOf(onTop));
    expect(onTop).toBeGreaterThan(neither);
    expect(onTop).toBeLessThan(0.15);
  });

  it('B9 shallow-rooted seedlings feel what lies on top more than grown plants (CHALKER-WC)', () => {
    const by = (stage: 'seedling' | 'growing') => {
      const cover = (onSurface: boolean) =>
        oddsOf(locked({ 'crop-stage': stage, 'wood-in-root-zone': false, 'wood-on-surface': onSurface }));
      return cover(true) / cover(false);
    };
    expect(by('seedling')).toBeGreaterThan(by('growing'));
  });

  it('B11 something rich among the wood makes up for part of it (NRCS-CN)', () => {
    expect(oddsOf(locked({ 'wood-in-root-zone': true, 'compost-kinds': ['poultry-manure'] }))).toBeLessThan(
      0.8 * oddsOf(locked({ 'wood-in-root-zone': true })),
    );
  });

  it('the worked leaning replaces the plain one: straw told twice over counts once', () => {
    const wood = oddsOf(locked({ 'wood-in-root-zone': true, 'weeks-since-mixed-in': 2 }));
    const both = oddsOf(
      locked({
        'wood-in-root-zone': true,
        'compost-kinds': ['straw-or-hay'],
        'weeks-since-mixed-in': 2,
        'compost-state': 'fresh',
        'compost-age': 1,
      }),
    );
    expect(both).toBeLessThan(1.4 * wood);
  });

  it('B13 end to end: sawdust dug in three weeks ago, the strip without it green: lock-up, and what helps (WHATCOM-CN, BARKER)', () => {
    const result = lookAt(
      tell(PALE, {
        setting: { 'wood-in-root-zone': true, 'weeks-since-mixed-in': 3 },
        seen: 'same-compost-only elsewhere-fine oldest-first',
      }),
    );
    expect(result.first).toBe('nitrogen-locked');
    expect(result.p('nitrogen-locked')).toBeGreaterThan(3 * result.p('nitrogen-short'));
    const weeks = result.of('nitrogen-locked').for.find(({ sign }) => sign === 'weeks-since-mixed-in=0-3')!;
    expect(weeks.decibans).toBeGreaterThan(0);
    expect(weeks.because).toMatch(/warmth/);
  });

  it('asks how many weeks ago once wood is among the roots, and not before', () => {
    const asks = (setting: Setting) => lookAt(tell(PALE, { setting })).openQuestions.map(({ id }) => id);
    expect(asks({})).not.toContain('weeks-since-mixed-in');
    expect(asks({ 'wood-in-root-zone': true })).toContain('weeks-since-mixed-in');
  });
});

describe('compost, from its warmth over the air, its age and its smell', () => {
  const SCORCHED: Told = {
    crop: 'squash',
    date: '2026-06-05',
    seen: 'brown-edges@old dull-limp@old after-planting',
  };
  const hot = (setting: Setting, date = '2026-06-05'): number =>
    lookAt({ ...SCORCHED, date, setting }).p('hot-compost');

  it('C2, C3 60 °C is unfinished, 30 °C after six or seven weeks nearly ready (UCRRA, CCQC-2001; common practice, no source)', () => {
    const hottest = hot({ 'compost-celsius': 60 });
    const nearly = hot({ 'compost-celsius': 30, 'compost-age': 1.5 });
    expect(oddsOf(hottest)).toBeGreaterThan(3 * oddsOf(nearly));
    expect(nearly).toBeGreaterThan(hot({ 'compost-celsius': 18, 'compost-age': 14 }));
  });

  it('C3 the rise over the air counts: 28 °C in January is a working heap, in July a cool one (CCQC-2001)', () => {
    const lean = (date: string) =>
      [
        ...lookAt({ ...SCORCHED, date, setting: { 'compost-celsius': 28 } }).of('hot-compost').for,
        ...lookAt({ ...SCORCHED, date, setting: { 'compost-celsius': 28 } }).of('hot-compost').against,
      ].find(({ sign }) => sign.startsWith('compost-celsius'))!.decibans;
    expect(lean('2026-01-20')).toBeGreaterThan(lean('2026-07-25') + 3);
  });

  it('told and measured do not count twice: both together hardly more than the stronger', () => {
    const told = oddsOf(hot({ 'compost-state': 'hot' }));
    const read = oddsOf(hot({ 'compost-celsius': 58 }));
    const both = oddsOf(hot({ 'compost-state': 'hot', 'compost-celsius': 58 }));
    expect(both).toBeGreaterThanOrEqual(Math.max(told, read));
    expect(both).toBeLessThan(1.6 * Math.max(told, read));
  });

  it('C15 a thermometer overrules that it looks finished (CCQC-INTRO)', () => {
    const looks = hot({ 'compost-state': 'finished' });
    expect(hot({ 'compost-state': 'finished', 'compost-celsius': 58 })).toBeGreaterThan(4 * looks);
  });

  it('C6 ammonia counts although the heap is cool (SOLVITA-NOTE)', () => {
    const cool: Setting = { 'compost-kinds': ['own-compost'], 'compost-celsius': 20 };
    const smells = hot({ ...cool, 'compost-ammonia': true });
    expect(oddsOf(smells)).toBeGreaterThan(2.5 * oddsOf(hot(cool)));
    expect(hot({ ...cool, 'compost-ammonia': false })).toBeLessThan(hot(cool));
  });

  it('C2 end to end: squash in a heap at 58 °C, only where that load went: unfinished compost, and its reason names the heat', () => {
    const result = lookAt(
      tell(SCORCHED, { setting: { 'compost-celsius': 58 }, seen: 'same-compost-only wilts-wet-soil' }),
    );
    expect(result.first).toBe('hot-compost');
    const heat = result.of('hot-compost').for.find(({ sign }) => sign === 'compost-celsius=45+')!;
    expect(heat.because).toMatch(/degrees over the air/);
  });
});

describe('cold, by what the crop bears', () => {
  const STANDING: Told = { date: '2026-05-10', seen: 'stunted yellow-even@old' };
  const cold = (crop: CropId, setting: Setting): number =>
    lookAt({ ...STANDING, crop, setting }).p('cold-check');
  /** What an answer multiplies the odds of cold by. */
  const lift = (crop: CropId, setting: Setting): number =>
    oddsOf(cold(crop, setting)) / oddsOf(cold(crop, {}));

  it('E1, E5, E13 the same count of cold days says much of melons, less of tomatoes, little of broad beans (UCSC-KNOTT; common practice, no source)', () => {
    const days: Setting = { 'cold-days': 7 };
    expect(cold('melon', days)).toBeGreaterThan(cold('pepper', days));
    expect(cold('pepper', days)).toBeGreaterThan(cold('tomato', days));
    expect(cold('tomato', days)).toBeGreaterThan(cold('lettuce', days));
    expect(cold('lettuce', days)).toBeGreaterThan(cold('broad-bean', days));
    expect(cold('french-bean', days)).toBeGreaterThan(cold('soya-bean', days));
  });

  it('E10, E11 a soil thermometer: 11 °C checks tomatoes, 20 °C does not (AGMET-VEG, UMD-P, OSU-FRANKLIN)', () => {
    expect(lift('tomato', { 'soil-celsius': 11 })).toBeGreaterThan(1.5);
    expect(lift('tomato', { 'soil-celsius': 20 })).toBeLessThan(0.5);
    const purple = (soil: number) =>
      lookAt({
        crop: 'tomato',
        date: '2026-05-10',
        setting: { 'soil-celsius': soil },
        seen: 'purple-tint@old',
      });
    expect(purple(11).p('cold-check')).toBeGreaterThan(purple(11).p('phosphorus-short'));
    expect(purple(20).p('phosphorus-short')).toBeGreaterThan(purple(20).p('cold-check'));
  });

  it('E1 soil at 8 °C holds beans and cucumbers back, peas and spinach not (OSU-HARR)', () => {
    for (const crop of ['french-bean', 'cucumber'] as const)
      expect(lift(crop, { 'soil-celsius': 8 }), crop).toBeGreaterThan(1.5);
    for (const crop of ['pea', 'spinach'] as const)
      expect(lift(crop, { 'soil-celsius': 8 }), crop).toBeLessThan(
        lift('french-bean', { 'soil-celsius': 8 }) / 1.5,
      );
  });

  it('a soil thermometer is asked for as a check, once', () => {
    const open = lookAt({ ...STANDING, crop: 'french-bean' }).openQuestions.map(({ id }) => id);
    expect(open).toContain('read-soil-thermometer');
    expect(open).not.toContain('soil-celsius');
    const read = lookAt({ ...STANDING, crop: 'french-bean', setting: { 'soil-celsius': 12 } });
    expect(read.openQuestions.map(({ id }) => id)).not.toContain('read-soil-thermometer');
  });

  it('French beans want soil near 20 °C and stand still below it (common practice, no source)', () => {
    expect(lift('french-bean', { 'soil-celsius': 15 })).toBeGreaterThan(1);
    expect(lift('french-bean', { 'soil-celsius': 15 })).toBeGreaterThan(lift('pea', { 'soil-celsius': 15 }));
    expect(lift('french-bean', { 'soil-celsius': 21 })).toBeLessThan(0.5);
  });

  it('word, count and thermometer speak of one thing: all three hardly more than the strongest', () => {
    const one = lift('french-bean', { 'recent-temperature': 'cold-for-crop' });
    const all = lift('french-bean', {
      'recent-temperature': 'cold-for-crop',
      'cold-days': 15,
      'soil-celsius': 9,
    });
    expect(all).toBeGreaterThan(one);
    expect(all).toBeLessThan(2.5 * one);
  });

  it('E5 end to end: French beans pale and small, fourteen days below 10 °C: cold, left or watched (UCSC-KNOTT)', () => {
    const { first, verdict, of } = lookAt({
      ...STANDING,
      crop: 'french-bean',
      setting: { 'cold-days': 14, 'soil-celsius': 11 },
      seen: 'stunted yellow-even@old after-cold new-growth-clean',
    });
    expect(first).toBe('cold-check');
    expect(verdict.id).not.toBe('act');
    const days = of('cold-check').for.find(({ sign }) => sign === 'cold-days=10+')!;
    expect(days.because).toContain('below 10 °C');
  });

  it('E13 the groups of hardiness agree with how frost leans (from memory, CAN-LETT)', () => {
    const frost = (crop: CropId) =>
      lookAt({
        crop,
        date: '2026-05-10',
        setting: { 'recent-temperature': 'frost' },
        seen: 'blackened@new',
      }).p('frost');
    const worst = (hardiness: 'tender' | 'very-hardy') =>
      CROPS.filter((crop) => CROP_TEMPERATURES[crop]?.hardiness === hardiness).map(frost);
    expect(Math.min(...worst('tender'))).toBeGreaterThan(Math.max(...worst('very-hardy')));
  });
});

it('says of a crop what holds for that crop, not for another', () => {
  const why = (crop: CropId) =>
    lookAt({ crop, seen: 'stunted' })
      .of('cold-check')
      .for.find(({ sign }) => sign === `crop=${crop}`)?.because;
  expect(why('melon')).toBe('it is the most tender of all');
  expect(why('pepper')).toBe('it is tenderer than tomato');
  expect(why('french-bean')).not.toBe(why('melon'));
});

describe('by settings alone no physics carries a cause past one half', () => {
  it.each<[CauseId, CropId, Setting]>([
    [
      'nitrogen-locked',
      'cabbage',
      {
        'wood-in-root-zone': true,
        'wood-on-surface': true,
        'compost-kinds': ['straw-or-hay'],
        'weeks-since-mixed-in': 1,
        'compost-state': 'fresh',
      },
    ],
    [
      'hot-compost',
      'squash',
      {
        'compost-kinds': ['horse-manure'],
        'compost-state': 'hot',
        'compost-celsius': 65,
        'compost-age': 0.5,
        'compost-ammonia': true,
      },
    ],
    [
      'cold-check',
      'melon',
      {
        'recent-temperature': 'cold-for-crop',
        'cold-days': 21,
        'soil-celsius': 5,
        'crop-stage': 'seedling',
      },
    ],
  ])('%s', (cause, crop, setting) => {
    const chance = lookAt({ crop, date: '2026-05-10', setting }).p(cause);
    expect(chance).toBeLessThanOrEqual(0.5);
    expect(chance).toBeGreaterThan(lookAt({ crop, date: '2026-05-10' }).p(cause));
  });
});
