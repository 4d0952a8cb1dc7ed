import { describe, expect, it } from 'vitest';
import { describeReason, type Reported } from '../../src/app/words/reasons.ts';
import { describeOutcome } from '../../src/app/words/settings.ts';
import { sayShortly } from '../../src/app/words/signs.ts';
import type { Reason } from '../../src/ranker/types.ts';
import { SETTINGS, type Setting } from '../../src/signs/settings.ts';
import {
  BROADER_MARKS,
  CREATURE_SIGNS,
  CROPS,
  MARKS,
  PLANT_SIGNS,
  SPREAD_SIGNS,
  TEST_SIGNS,
} from '../../src/signs/vocabulary.ts';
import { triage } from '../../src/triage.ts';

const nothing: Reported = { answers: { signs: {} }, findings: [] };
const reason = (sign: string, more: Partial<Reason> = {}): Reason => ({
  sign,
  decibans: 3,
  from: ['eye'],
  ...more,
});

describe('a reason in words', () => {
  it('says where a mark was seen', () => {
    const reported: Reported = { answers: { signs: { 'mottled@new': 'seen' } }, findings: [] };
    expect(describeReason(reason('mottled@new'), reported)).toEqual({
      says: 'on the youngest leaves: patchwork of light and dark green (mosaic)',
      by: 'you',
      kind: 'eye',
    });
  });

  it('tells a sign that was looked for and not found from one that was seen, also when it speaks for a cause', () => {
    const reported: Reported = {
      answers: { signs: { aphids: 'absent', 'one-plant': 'absent' } },
      findings: [],
    };
    expect(describeReason(reason('aphids'), reported).says).toMatch(/^looked for, not found: aphids/);
    expect(describeReason(reason('one-plant'), reported).says).toBe('not so: only one plant');
  });

  it('takes the word of the camera from its likelihoods, and the person’s before it', () => {
    const findings = [{ sign: 'brown-spots@old', from: 'camera', ifPresent: 0.1, ifAbsent: 0.8 }] as const;
    const camera = reason('brown-spots@old', { from: ['camera'] });
    expect(describeReason(camera, { answers: { signs: {} }, findings })).toMatchObject({
      says: expect.stringMatching(/^looked for, not found/),
      by: 'the camera',
      kind: 'camera',
    });
    const overruled: Reported = { answers: { signs: { 'brown-spots@old': 'seen' } }, findings };
    const both = reason('brown-spots@old', { from: ['camera', 'eye'] });
    expect(describeReason(both, overruled)).toMatchObject({
      says: 'on the oldest leaves: brown, black or tan spots with a clear edge',
      by: 'the camera and you',
      kind: 'eye',
    });
  });

  it.each([
    ['netted=yes', 'netted or meshed'],
    ['netted=no', 'netted or meshed: no'],
    ['soil-water=waterlogged', 'soil a finger deep: sodden'],
    ['cold-days=10+', 'ten cold days or more in three weeks'],
    ['compost-kinds:horse-manure=yes', 'what went on the bed this year: horse manure'],
    ['compost-kinds:horse-manure=no', 'what went on the bed this year: not horse manure'],
    ['crop=french-bean', 'the crop is french bean'],
    ['season=winter', 'it is winter'],
    ['season=no-winter', 'no winter comes here'],
  ])('says %s as "%s"', (sign, says) => {
    const described = describeReason(reason(sign, { because: 'why' }), nothing);
    expect(described).toMatchObject({ says, kind: 'circumstance', because: 'why' });
  });

  it('says why a circumstance speaks against a cause that has no quarrel with it: others explain it better', () => {
    const dry = triage({
      photos: [],
      answers: {
        crop: 'courgette',
        signs: { 'yellowing@old': 'seen', 'yellowing@new': 'absent' },
        setting: { 'recent-rain': 'dry', 'soil-water': 'dry' },
      },
      today: '2026-07-15',
      zone: 'north',
      draws: 2,
    });
    const ofMite = dry.causes.find(({ id }) => id === 'spider-mite');
    const [against] = ofMite?.against.filter(({ sign }) => sign === 'soil-water=dry') ?? [];
    expect(describeReason(against!, nothing)).toMatchObject({
      says: 'soil a finger deep: dry',
      because: 'likelier with other causes',
    });
    // A reason of the cause's own stays, and what speaks for it, the crop and the season need none.
    const weighs = (sign: string, more: Partial<Reason>) =>
      describeReason(reason(sign, more), nothing).because;
    expect(weighs('soil-water=dry', { decibans: -3, because: 'why' })).toBe('why');
    expect(weighs('soil-water=dry', { decibans: 3 })).toBeUndefined();
    expect(weighs('crop=courgette', { decibans: -3 })).toBeUndefined();
    expect(weighs('season=summer', { decibans: -3 })).toBeUndefined();
  });

  it('has words for every sign at every place, and for every outcome of every setting', () => {
    const marks = [...MARKS.map(({ id }) => id), ...Object.keys(BROADER_MARKS)];
    const signs = [
      ...marks.flatMap((id) => ['old', 'new', 'some'].map((place) => `${id}@${place}`)),
      ...[...PLANT_SIGNS, ...CREATURE_SIGNS, ...SPREAD_SIGNS, ...TEST_SIGNS].map(({ id }) => id),
    ];
    for (const sign of signs) {
      const says = sayShortly(sign);
      expect(says, sign).not.toContain('@');
      expect(says, sign).not.toContain('undefined');
      if (sign.includes('@')) expect(says, sign).toMatch(/^on (the oldest|the youngest|some) leaves: \S/);
    }
    for (const crop of CROPS)
      expect(describeReason(reason(`crop=${crop}`), nothing).says).toMatch(/^the crop is /);
    for (const [id, setting] of Object.entries<Setting>(SETTINGS))
      for (const [factor, outcome] of outcomesOf(id, setting))
        expect(describeOutcome(factor, outcome), `${factor}=${outcome}`).not.toMatch(/undefined|=|@/);
  });

  it('shows an id that this version does not know as its own words instead of failing', () => {
    expect(sayShortly('a-later-sign@old')).toBe('on the oldest leaves: a later sign');
    expect(describeOutcome('a-later-setting', 'so-so')).toBe('a later setting: so so');
  });
});

function outcomesOf(id: string, setting: Setting): [string, string][] {
  if (setting.kind === 'yes-no')
    return [
      [id, 'yes'],
      [id, 'no'],
    ];
  if (setting.kind === 'number') return setting.bands.map((band) => [id, band.id]);
  if (setting.kind === 'one-of') return setting.options.map((option) => [id, option.id]);
  return setting.options.flatMap((option): [string, string][] => [
    [`${id}:${option.id}`, 'yes'],
    [`${id}:${option.id}`, 'no'],
  ]);
}
