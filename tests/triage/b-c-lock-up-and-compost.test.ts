import { describe, expect, it } from 'vitest';
import { lookAt, type Told, tell } from './look-at.ts';

const PALE = {
  crop: 'kale',
  date: '2026-06-10',
  seen: 'yellow-even@old stunted',
} as const;

describe('B. nitrogen locked up', () => {
  it('B1 straw and wood among the roots (C:N 80 to 400) raise it, rotted manure (20) does not (NRCS-CN, UCSC-COMP)', () => {
    const wood = lookAt(tell(PALE, { setting: { 'wood-in-root-zone': true } }));
    const none = lookAt(tell(PALE, { setting: { 'wood-in-root-zone': false } }));
    const manure = lookAt(
      tell(PALE, {
        setting: {
          'compost-kinds': ['cattle-manure'],
          'compost-state': 'finished',
          'wood-in-root-zone': false,
        },
      }),
    );
    expect(wood.first).toBe('nitrogen-locked');
    expect(wood.p('nitrogen-locked')).toBeGreaterThan(5 * none.p('nitrogen-locked'));
    expect(manure.p('nitrogen-locked')).toBeLessThan(wood.p('nitrogen-locked') / 5);
  });

  it('B2 horse manure, widened by its bedding, more than poultry manure at 6 to 12 (UCSC-COMP, OSU-ASK)', () => {
    const locked = (kind: 'horse-manure' | 'poultry-manure') =>
      lookAt(tell(PALE, { setting: { 'compost-kinds': [kind] } })).p('nitrogen-locked');
    expect(locked('horse-manure')).toBeGreaterThan(2 * locked('poultry-manure'));
  });

  it('B8 compost a year old ties up less than fresh (SOLOMON)', () => {
    const aged = (months: number) =>
      lookAt(tell(PALE, { setting: { 'compost-age': months } })).p('nitrogen-locked');
    expect(aged(14)).toBeLessThan(aged(1));
  });

  it('B9 dug in far more than lying on the surface, which is not nothing (CHALKER-WC, SPU-MULCH)', () => {
    const locked = (setting: object) => lookAt(tell(PALE, { setting })).p('nitrogen-locked');
    const surface = locked({ 'wood-on-surface': true });
    expect(locked({ 'wood-in-root-zone': true })).toBeGreaterThan(3 * surface);
    expect(surface).toBeGreaterThan(locked({ 'wood-on-surface': false }));
  });

  it('B9 wood mixed into the whole bed leaves no ground to compare: "only one load?" answered no hardly counts', () => {
    const wood = tell(PALE, { setting: { 'wood-in-root-zone': true } });
    const locked = (told: Told): number => lookAt(told).p('nitrogen-locked');
    expect(locked(tell(wood, { absent: 'same-compost-only' }))).toBeGreaterThan(0.95 * locked(wood));
    expect(locked(tell(PALE, { absent: 'same-compost-only' }))).toBeLessThan(0.6 * locked(PALE));
  });

  it('B13 the amended strip pale, the other green: lock-up before a general shortage (WHATCOM-CN)', () => {
    const { p } = lookAt(
      tell(PALE, { setting: { 'wood-in-root-zone': true }, seen: 'same-compost-only elsewhere-fine' }),
    );
    expect(p('nitrogen-locked')).toBeGreaterThan(5 * p('nitrogen-short'));
  });
});

describe('C. compost finished or not', () => {
  const SCORCHED = {
    crop: 'squash',
    date: '2026-06-05',
    seen: 'brown-edges@old dull-limp@old after-planting',
  } as const;
  const hot = (setting: object) => lookAt(tell(SCORCHED, { setting })).p('hot-compost');

  it('C2 a core of 50 °C is unfinished, one below 30 °C a candidate for finished (UCRRA, NRCS-317)', () => {
    expect(hot({ 'compost-celsius': 50 })).toBeGreaterThan(5 * hot({ 'compost-celsius': 22 }));
    expect(hot({ 'compost-celsius': 50 })).toBeGreaterThan(hot({ 'compost-celsius': 38 }));
  });

  it('C4 hot, warm, fresh, finished: the less mature the more harm (CCQC-2001)', () => {
    const states = ['hot', 'still-warm', 'finished'] as const;
    const chances = states.map((state) => hot({ 'compost-state': state }));
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(hot({ 'compost-state': 'fresh' })).toBeGreaterThan(3 * hot({ 'compost-state': 'finished' }));
  });

  it('C15 that it looks finished only lowers it: some doubt stays (CCQC-INTRO)', () => {
    expect(hot({ 'compost-state': 'finished' })).toBeGreaterThan(0);
  });
});
