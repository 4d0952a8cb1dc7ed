import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { MEASURES } from '../../src/leaf/measures.ts';
import { checkAnswers, isDate } from '../../src/signs/check-answers.ts';
import { circumstancesFromAnswers } from '../../src/signs/circumstances-from-answers.ts';
import { FACTORS } from '../../src/signs/factors.ts';
import { findingsFromAnswers } from '../../src/signs/findings-from-answers.ts';
import { ALL_SIGNS, membersOf } from '../../src/signs/members-of.ts';
import { SETTINGS, type Setting } from '../../src/signs/settings.ts';
import type { Answers } from '../../src/signs/types.ts';
import {
  BROADER_MARKS,
  CAUSES,
  CREATURE_SIGNS,
  CROPS,
  MARKS,
  PLANT_SIGNS,
  SPREAD_SIGNS,
} from '../../src/signs/vocabulary.ts';
import { workOutLeanings } from '../../src/signs/work-out-leanings.ts';

const AGREED = fileURLToPath(new URL('../../../shared/vocabulary.json', import.meta.url));

describe('the words', () => {
  it('are as many as agreed, and one sign of our own', () => {
    expect(ALL_SIGNS.length).toBe(37 * 2 + 24 + 19 + 22 + 1);
    expect(new Set(ALL_SIGNS).size).toBe(ALL_SIGNS.length);
    expect(CAUSES.length).toBe(53);
  });

  it.runIf(existsSync(AGREED))(
    'are those of the agreed vocabulary, ids and meanings of broader marks alike',
    () => {
      const agreed = JSON.parse(readFileSync(AGREED, 'utf8'));
      const ids = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);
      expect(ids(MARKS)).toEqual(ids(agreed.marks));
      expect(ids(PLANT_SIGNS)).toEqual(ids(agreed.plant));
      expect(ids(CREATURE_SIGNS)).toEqual(ids(agreed.creatures));
      expect(ids(SPREAD_SIGNS)).toEqual(ids(agreed.spread));
      expect(BROADER_MARKS).toEqual(agreed.broader.marks);
      expect(CROPS).toEqual(agreed.crops);
      expect(CAUSES.map(({ id, family }) => [id, family])).toEqual(
        agreed.causes.map((cause: { id: string; family: string }) => [cause.id, cause.family]),
      );
      // Agreed measures and settings come first and unchanged; this project's own follow.
      expect(ids(MEASURES).slice(0, agreed.measures.length)).toEqual(ids(agreed.measures));
      const settings = Object.entries(SETTINGS as Record<string, Setting>);
      const agreedIds = Object.keys(agreed.setting);
      expect(settings.map(([id]) => id).slice(0, agreedIds.length)).toEqual(agreedIds);
      for (const [id, setting] of settings.slice(0, agreedIds.length)) {
        const { one_of, any_of } = agreed.setting[id];
        const agreedOptions: string[] = one_of ?? any_of ?? [];
        if ('options' in setting)
          expect(ids(setting.options).slice(0, agreedOptions.length), id).toEqual(agreedOptions);
      }
    },
  );

  it('lets a broader mark mean its members at the same position, and "some" both positions', () => {
    expect(membersOf('curled@old')).toEqual([
      'cupped-up@old',
      'cupped-down@old',
      'twisted-narrow@old',
      'puckered@old',
    ]);
    expect(membersOf('mottled@some')).toEqual(['mottled@old', 'mottled@new']);
    expect(membersOf('holes@some')).toHaveLength(8);
    expect(() => membersOf('yelow@old' as never)).toThrow(/expected a sign/);
  });

  it('gives every setting outcomes whose shares make a whole', () => {
    for (const { id, outcomes } of FACTORS) {
      const sum = outcomes.reduce((total, { rate }) => total + rate, 0);
      expect(sum, id).toBeCloseTo(1, 9);
    }
  });
});

describe('answers from anywhere', () => {
  it('keep what is good and name what is not, each with its place', () => {
    const { answers, faults } = checkAnswers({
      crop: 'tomatoe',
      date: '2026-02-30',
      colour: 'green',
      setting: {
        netted: 'yes',
        'soil-ph': 'acid',
        'cold-days': 99,
        moon: 'full',
        'compost-kinds': ['own-compost', 'gold'],
      },
      signs: { 'mottled@new': 'seen', mottled: 'seen', aphids: 'maybe', stunted: 'absent' },
    });
    expect(answers).toEqual({
      setting: { 'soil-ph': 'acid' },
      signs: { 'mottled@new': 'seen', stunted: 'absent' },
    });
    expect(faults.map(({ code, at }) => `${code} ${at}`).sort()).toEqual(
      [
        'bad-date date',
        'bad-value setting.cold-days',
        'bad-value setting.compost-kinds',
        'bad-value setting.netted',
        'bad-value signs.aphids',
        'unknown-crop crop',
        'unknown-key colour',
        'unknown-setting setting.moon',
        'unknown-sign signs.mottled',
      ].sort(),
    );
  });

  it.each([null, 3, 'text', [], [1]])('refuse %j as a whole, with nothing taken from it', (value) => {
    expect(checkAnswers(value)).toEqual({
      answers: { setting: {}, signs: {} },
      faults: [{ code: 'not-an-object', at: 'answers' }],
    });
  });

  it('are not fooled by names that every object has', () => {
    const { answers, faults } = checkAnswers(
      JSON.parse('{"setting":{"constructor":true,"__proto__":true},"signs":{"toString":"seen"}}'),
    );
    expect(answers).toEqual({ setting: {}, signs: {} });
    expect(faults.length).toBeGreaterThanOrEqual(2);
  });

  it('know which days exist', () => {
    expect(isDate('2028-02-29')).toBe(true);
    expect(isDate('2026-02-29')).toBe(false);
    expect(isDate('2026-6-1')).toBe(false);
  });
});

describe('answers as evidence', () => {
  const answers: Answers = {
    setting: { netted: true, 'cold-days': 10, 'compost-kinds': ['horse-manure'], place: 'container' },
    signs: { aphids: 'seen', 'holes@some': 'absent' },
  };

  it('turn numbers into bands and a list into a yes or no for each option', () => {
    const outcomes = Object.fromEntries(
      circumstancesFromAnswers(answers, workOutLeanings(answers, { zone: 'north' })).map(
        ({ id, outcome }) => [id, outcome],
      ),
    );
    expect(outcomes.netted).toBe('yes');
    expect(outcomes['cold-days']).toBe('10+');
    expect(outcomes.place).toBe('container');
    expect(outcomes['compost-kinds:horse-manure']).toBe('yes');
    expect(outcomes['compost-kinds:own-compost']).toBe('no');
    expect(Object.keys(outcomes)).toHaveLength(3 + SETTINGS['compost-kinds'].options.length);
  });

  it('speak for a sign when seen, against it when looked for and not found, and never with certainty', () => {
    const [seen, absent] = findingsFromAnswers(answers);
    expect(seen!.ifPresent).toBeGreaterThan(seen!.ifAbsent);
    expect(absent!.ifPresent).toBeLessThan(absent!.ifAbsent);
    for (const { ifPresent, ifAbsent } of [seen!, absent!]) {
      for (const p of [ifPresent, ifAbsent]) {
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThan(1);
      }
    }
  });
});
