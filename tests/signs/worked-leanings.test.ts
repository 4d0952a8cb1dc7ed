import { describe, expect, it } from 'vitest';
import { LEANING_LOG_ODDS } from '../../src/causes/schema.ts';
import { CROP_TEMPERATURES } from '../../src/season/crop-temperatures.ts';
import { askSetting } from '../../src/signs/ask-setting.ts';
import { type Chain, chainLeanings, type Said } from '../../src/signs/chain-leanings.ts';
import { FACTORS } from '../../src/signs/factors.ts';
import { coldChain } from '../../src/signs/lean-on-cold.ts';
import { hotCompostChain } from '../../src/signs/lean-on-hot-compost.ts';
import { lockUpChain } from '../../src/signs/lean-on-lock-up.ts';
import { SETTINGS, type Setting, type SettingId } from '../../src/signs/settings.ts';
import { settleWood } from '../../src/signs/settle-wood.ts';
import type { Answers } from '../../src/signs/types.ts';
import { CROPS } from '../../src/signs/vocabulary.ts';
import { isToTheMatter } from '../../src/signs/when-to-ask.ts';
import { workOutLeanings } from '../../src/signs/work-out-leanings.ts';

const JUNE = { date: '2026-06-10', zone: 'north' } as const;
const chains: readonly (readonly [string, Chain])[] = [
  ['lock-up', lockUpChain(JUNE)],
  ['hot compost', hotCompostChain(JUNE.date, JUNE.zone)],
  ['cold', coldChain('french-bean')],
];

/** The outcome of a factor that an answer settles, by its place. */
function placeOf(factor: string, said: Said): number {
  const [id, option] = factor.split(':') as [SettingId, string | undefined];
  const setting: Setting = SETTINGS[id];
  const answer = said[id];
  if (option !== undefined) return (answer as string[]).includes(option) ? 0 : 1;
  if (setting.kind === 'yes-no') return answer ? 0 : 1;
  if (setting.kind === 'number')
    return setting.bands.findIndex(({ below }) => below === undefined || (answer as number) < below);
  return 'options' in setting ? setting.options.findIndex((one) => one.id === answer) : -1;
}

describe('leanings that are worked out together', () => {
  const SAID: Said = {
    'wood-in-root-zone': true,
    'compost-kinds': ['horse-manure', 'leaf-mould'],
    'weeks-since-mixed-in': 9,
    'compost-state': 'fresh',
    'compost-celsius': 52,
    'compost-age': 2,
    'recent-temperature': 'cold-for-crop',
    'cold-days': 12,
    'soil-celsius': 11,
  };

  it.each(chains)('of %s multiply to what all answers say together, so nothing counts twice', (_, chain) => {
    const said = { ...SAID };
    const product = chainLeanings(chain, said)
      .filter(([factor]) => said[factor.split(':')[0] as SettingId] !== undefined)
      .reduce((odds, [factor, { odds: each }]) => odds * each[placeOf(factor, said)]!, 1);
    expect(product).toBeCloseTo(chain.odds(said) / chain.odds({}), 9);
  });

  it.each(chains)('of %s do not depend on the order in which the answers were given', (_, chain) => {
    const turned = Object.fromEntries(Object.entries(SAID).reverse());
    expect(chainLeanings(chain, turned)).toEqual(chainLeanings(chain, SAID));
  });

  it.each(chains)('of %s never rule anything out', (_, chain) => {
    for (const [, { odds }] of chainLeanings(chain, SAID))
      for (const each of odds) expect(each).toBeGreaterThan(0);
  });

  it('have a multiplier for every outcome of their factor', () => {
    const leanings = workOutLeanings({ setting: SAID, signs: {} } as Answers, { zone: 'north' });
    expect(leanings.size).toBeGreaterThan(8);
    for (const [id, leans] of leanings) {
      const factor = FACTORS.find((one) => one.id === id)!;
      for (const { odds } of leans) expect(odds, id).toHaveLength(factor.outcomes.length);
    }
  });

  it('average to about one over the answers that growers give, so that asking alone moves nothing', () => {
    const mean = (chain: Chain, said: Said, id: 'compost-state' | 'weeks-since-mixed-in'): number => {
      const [, { odds }] = chainLeanings(chain, said).find(([factor]) => factor === id)!;
      const factor = FACTORS.find((one) => one.id === id)!;
      return factor.outcomes.reduce((sum, { rate }, at) => sum + rate * odds[at]!, 0);
    };
    expect(mean(hotCompostChain(JUNE.date, JUNE.zone), {}, 'compost-state')).toBeCloseTo(1, 1);
    // Wood that is still to be found is younger than what is mixed in as a rule.
    const wood = mean(lockUpChain(JUNE), { 'wood-in-root-zone': true }, 'weeks-since-mixed-in');
    expect(wood).toBeGreaterThan(0.8);
    expect(wood).toBeLessThan(1);
  });

  it('stay within the scale of the words: at their strongest about "far more", at their weakest "far less"', () => {
    const { odds: lockUp } = lockUpChain(JUNE);
    const { odds: heap } = hotCompostChain(JUNE.date, JUNE.zone);
    const farMore = Math.exp(LEANING_LOG_ODDS['far-more']);
    expect(lockUp({ 'wood-in-root-zone': true })).toBeGreaterThan(farMore / 1.2);
    expect(lockUp({ 'wood-in-root-zone': true })).toBeLessThan(farMore * 1.2);
    expect(heap({ 'compost-state': 'hot' })).toBeGreaterThan(farMore / 1.2);
    expect(heap({ 'compost-state': 'hot' })).toBeLessThan(farMore * 1.2);
    expect(lockUp({ 'wood-in-root-zone': false, 'compost-kinds': ['none'] })).toBeLessThan(0.3);
    expect(heap({ 'compost-state': 'finished' })).toBeLessThan(0.4);
  });
});

describe('wood among what went on the bed', () => {
  const { odds } = lockUpChain(JUNE);
  const brought = (more: Said): number => odds({ 'compost-kinds': ['wood'], ...more });

  it('leans on a lock-up, less than wood that was found among the roots', () => {
    expect(brought({})).toBeGreaterThan(2 * odds({ 'compost-kinds': ['own-compost'] }));
    expect(brought({})).toBeLessThan(odds({ 'wood-in-root-zone': true }));
    expect(brought({ 'bed-disturbed': true })).toBeGreaterThan(brought({ 'bed-disturbed': false }));
  });
  it('counts once: where it lies is the question, and the answer says all', () => {
    expect(brought({ 'wood-in-root-zone': true }) / odds({ 'wood-in-root-zone': true })).toBeCloseTo(1, 1);
    const onTop = { 'wood-in-root-zone': false, 'wood-on-surface': true } as const;
    expect(brought(onTop)).toBeCloseTo(odds({ ...onTop, 'compost-kinds': [] }), 9);
    // Not in the soil, so it lies on top.
    expect(brought({ 'wood-in-root-zone': false })).toBeCloseTo(brought(onTop), 9);
  });
});

describe('"nothing" and wood', () => {
  it('cannot both stand: what was said last holds', () => {
    const both = { 'compost-kinds': ['none'], 'wood-in-root-zone': true, netted: true };
    expect(settleWood(both, 'wood-in-root-zone')).toEqual({ 'wood-in-root-zone': true, netted: true });
    expect(settleWood(both, 'compost-kinds')).toEqual({ 'compost-kinds': ['none'], netted: true });
  });
  it('leaves alone what does not contradict', () => {
    const no = { 'compost-kinds': ['none'], 'wood-in-root-zone': false };
    expect(settleWood(no, 'wood-in-root-zone')).toEqual(no);
    const compost = { 'compost-kinds': ['own-compost'], 'wood-on-surface': true };
    expect(settleWood(compost, 'wood-on-surface')).toEqual(compost);
    // A look as it was kept before is changed by nothing else that is answered.
    const kept = { 'compost-kinds': ['none'], 'wood-on-surface': true, netted: true };
    expect(settleWood(kept, 'netted')).toEqual(kept);
  });
});

describe('what is asked', () => {
  it('names the number of degrees of the crop', () => {
    expect(askSetting('cold-days', 'french-bean')).toContain('below 10 °C');
    expect(askSetting('cold-days', 'broad-bean')).toContain('below 4 °C');
    expect(askSetting('cold-days', 'melon')).toContain('below 16 °C');
    for (const crop of CROPS) expect(askSetting('cold-days', crop)).toMatch(/\?$/);
    // Nobody knows a growing minimum by heart.
    expect(askSetting('cold-days')).not.toMatch(/minimum/);
    expect(askSetting('netted', 'kale')).toBe(SETTINGS.netted.asks);
  });

  it('asks when it was mixed in only where something may have been', () => {
    expect(isToTheMatter('weeks-since-mixed-in', new Set())).toBe(false);
    expect(isToTheMatter('weeks-since-mixed-in', new Set(['compost-kinds=none']))).toBe(false);
    expect(isToTheMatter('weeks-since-mixed-in', new Set(['wood-in-root-zone=yes']))).toBe(true);
    expect(isToTheMatter('compost-ammonia', new Set(['compost-kinds=horse-manure']))).toBe(true);
    expect(isToTheMatter('netted', new Set())).toBe(true);
  });

  it('asks of no wood where nothing went on, and when wood was mixed in where some did', () => {
    for (const wood of ['wood-in-root-zone', 'wood-on-surface'] as const) {
      expect(isToTheMatter(wood, new Set(['compost-kinds=none']))).toBe(false);
      expect(isToTheMatter(wood, new Set(['compost-kinds=wood']))).toBe(true);
    }
    expect(isToTheMatter('weeks-since-mixed-in', new Set(['compost-kinds=wood']))).toBe(true);
    // Wood does not smell of ammonia.
    expect(isToTheMatter('compost-ammonia', new Set(['compost-kinds=wood']))).toBe(false);
  });

  it('counts a day as cold at a temperature at which the crop could well be hurt', () => {
    for (const [crop, { coldBelowCelsius, hardiness }] of Object.entries(CROP_TEMPERATURES)) {
      if (hardiness === 'tender') expect(coldBelowCelsius, crop).toBeGreaterThanOrEqual(9);
      else expect(coldBelowCelsius, crop).toBeLessThan(8);
    }
  });
});
