import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../src/causes/cautions.ts';
import { checkPotTest } from '../../../src/compare/pot-test/check-pot-test.ts';
import { INJURY_STEPS } from '../../../src/compare/pot-test/injury-scale.ts';
import { POT_TEST_CAUTIONS, planPotTest } from '../../../src/compare/pot-test/plan-pot-test.ts';
import { endsOn, halfUpOn, nextLook, scheduleLooks } from '../../../src/compare/pot-test/schedule-looks.ts';
import { TEST_CROPS } from '../../../src/compare/pot-test/test-crops.ts';
import { type PotScore, type PotTest, PotTestError } from '../../../src/compare/pot-test/types.ts';
import { daysBetween } from '../../../src/days/days.ts';
import { CROPS } from '../../../src/signs/vocabulary.ts';

const SOWN = '2026-04-01';
const wish = { question: 'residue', sowOn: SOWN, seed: 7 } as const;
const codeOf = (work: () => unknown): string => {
  try {
    work();
    return 'fine';
  } catch (cause) {
    return cause instanceof PotTestError ? cause.code : String(cause);
  }
};

describe('the plan', () => {
  it('keeps to the growers’ protocol (OSU-CARRY): three to six pots of 10 to 13 cm, 2 to 1, three beans or peas, as many controls', () => {
    for (const beds of [1, 2, 9])
      for (const sensitiveFollows of [false, true]) {
        const card = planPotTest({ ...wish, beds, sensitiveFollows });
        expect(card.potsEach).toBeGreaterThanOrEqual(3);
        expect(card.potsEach).toBeLessThanOrEqual(6);
        expect(card.pots.filter(({ role }) => role === 'control').length).toBe(card.potsEach);
        expect(card.pots.filter(({ role }) => role === 'test').length).toBe(card.potsEach);
        expect(card.mix).toEqual({ test: { batch: 2, pottingMix: 1 }, control: { batch: 0, pottingMix: 1 } });
        expect(card.potCm).toEqual([10, 13]);
        expect(card.seedsPerPot).toBe(3);
        expect(card.steps).toContain('own-saucers');
        expect(card.steps).toContain('take-many-samples');
      }
    expect(planPotTest({ ...wish, beds: 1 }).potsEach).toBeLessThan(
      planPotTest({ ...wish, beds: 3 }).potsEach,
    );
  });

  it('takes the crop that answers the question, of which there is seed and that grows at that temperature', () => {
    expect(planPotTest(wish).crop.id).toBe('french-bean');
    expect(planPotTest({ ...wish, celsius: 10 }).crop.id).toBe('pea');
    expect(planPotTest({ ...wish, celsius: 7 }).crop.id).toBe('broad-bean');
    const tomato = planPotTest({ ...wish, seedsAtHand: ['tomato', 'radish'] });
    expect(tomato.crop.id).toBe('tomato');
    // Equal volumes for tomato (WFA), looked at to the 28th day (REAL-PRT).
    expect(tomato.mix.test).toEqual({ batch: 1, pottingMix: 1 });
    expect(daysBetween(SOWN, tomato.looks.at(-1)!.on)).toBe(28);
    expect(codeOf(() => planPotTest({ ...wish, seedsAtHand: ['radish'] }))).toBe('no-such-crop');
    expect(codeOf(() => planPotTest({ ...wish, celsius: 2 }))).toBe('no-such-crop');
    // Twenty radish seeds, of which fifteen must come up and grow on (UF-SARASOTA).
    const ripe = planPotTest({ ...wish, question: 'ripeness' });
    expect([ripe.crop.id, ripe.potsEach * ripe.seedsPerPot, ripe.mix.test.pottingMix]).toEqual([
      'radish',
      20,
      0,
    ]);
    const crops = new Set<string>(CROPS);
    for (const { id } of TEST_CROPS) expect(crops.has(id), id).toBe(true);
  });

  it('lets chance choose the places, in pairs, the same again for the same number', () => {
    const firsts = new Map<string, number>();
    for (let seed = 0; seed < 400; seed++) {
      const { pots } = planPotTest({ ...wish, beds: 2, seed });
      expect(pots).toEqual(planPotTest({ ...wish, beds: 2, seed }).pots);
      expect(new Set(pots.map(({ label }) => label)).size).toBe(12);
      for (let block = 0; block < 6; block++) {
        const pair = pots.filter((pot) => pot.block === block).map(({ role }) => role);
        expect([...pair].sort()).toEqual(['control', 'test']);
      }
      for (const { label, role } of pots)
        if (role === 'test') firsts.set(label, (firsts.get(label) ?? 0) + 1);
    }
    // No letter tells what is in a pot: of 400 draws about half, within four standard errors (10).
    expect(firsts.size).toBe(12);
    for (const [label, count] of firsts) expect(Math.abs(count - 200), label).toBeLessThan(40);
  });

  it('carries cautions that the knowledge base has, and names no weedkiller anywhere', () => {
    for (const id of [...POT_TEST_CAUTIONS, 'do-not-compost']) expect(CAUTIONS).toHaveProperty(id);
    const folder = new URL('../../../src/compare/pot-test/', import.meta.url);
    const names = /pyralid|picloram|dicamba|2,4-D|glyphosate|triclopyr|fluroxypyr|MCPA|mecoprop/i;
    const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));
    expect(files.length).toBeGreaterThan(10);
    for (const name of files)
      expect(names.test(readFileSync(new URL(name, folder), 'utf8')), name).toBe(false);
  });
});

describe('the scale', () => {
  it('has eleven steps from none to dead, each described, in the protocol’s order (OSU-CARRY: slight, moderate, severe)', () => {
    expect(INJURY_STEPS.map(({ score }) => score)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100]);
    const order = ['none', 'doubtful', 'slight', 'moderate', 'severe', 'dead'];
    const grades = INJURY_STEPS.map(({ grade }) => order.indexOf(grade));
    expect(grades).toEqual([...grades].sort((a, b) => a - b));
    expect(new Set(grades).size).toBe(order.length);
    expect(new Set(INJURY_STEPS.map(({ says }) => says)).size).toBe(11);
  });
});

const pots = planPotTest(wish).pots;
const test = (scores: readonly PotScore[] = []): PotTest => ({
  question: 'residue',
  crop: 'french-bean',
  sownOn: SOWN,
  pots,
  scores,
});
const look = (date: string, emerged: number, more: object = {}): PotScore[] =>
  pots.map(({ id }) => ({ potId: id, date, emerged, ...more }));

describe('the looks', () => {
  it('end after two to three weeks (OSU-CARRY), and 14 days or more after half the controls were up (OECD-208)', () => {
    for (const { id } of TEST_CROPS) {
      const looks = scheduleLooks({ crop: id, sownOn: SOWN });
      expect(looks[0]!.what).toBe('count');
      expect(looks.at(-1)!.what).toBe('last');
      expect(looks.map(({ on }) => on)).toEqual([...new Set(looks.map(({ on }) => on))].sort());
    }
    expect(daysBetween(SOWN, endsOn({ crop: 'french-bean', sownOn: SOWN }))).toBe(21);
    expect(halfUpOn(test(look('2026-04-08', 1)))).toBeUndefined();
    // Up at the second look, on the 15th day: 14 days after it, the 29th.
    const late = test([...look('2026-04-08', 0), ...look('2026-04-16', 2)]);
    expect(halfUpOn(late)).toBe('2026-04-16');
    expect(endsOn(late)).toBe('2026-04-30');
    // Up at the very first look: no later than the crop's usual day.
    expect(halfUpOn(test(look('2026-04-16', 3)))).toBe('2026-04-11');
  });

  it('come one after the other, and weekly after the last', () => {
    expect(nextLook(test()).what).toBe('count');
    const counted = test(look('2026-04-13', 3));
    const second = nextLook(counted);
    expect(second.on > '2026-04-13').toBe(true);
    expect(nextLook(test([...look('2026-04-13', 3), ...look('2026-05-01', 3)]))).toEqual({
      on: '2026-05-08',
      what: 'last',
    });
  });
});

describe('numbers that cannot be', () => {
  it.each([
    ['more-up-than-sown', { emerged: 4 }],
    ['bad-count', { emerged: 1.5 }],
    ['bad-count', { emerged: -1 }],
    ['bad-injury', { injury: 101 }],
    ['bad-injury', { injury: Number.NaN }],
    ['bad-height', { heightMm: 0 }],
    ['bad-height', { heightMm: 5000 }],
    ['bad-leaf-sets', { leafSets: -1 }],
    ['bad-mass', { grams: -2 }],
    ['before-sowing', { date: '2026-03-31' }],
    ['bad-day', { date: 'soon' }],
    ['no-such-pot', { potId: 'elsewhere' }],
  ])('are refused: %s', (code, more) => {
    const score = { potId: pots[0]!.id, date: '2026-04-20', emerged: 2, ...more };
    expect(codeOf(() => checkPotTest(test([score])))).toBe(code);
  });
  it('of pots too; and every sound test passes', () => {
    expect(codeOf(() => checkPotTest({ ...test(), pots: [...pots, pots[0]!] }))).toBe('same-pot-twice');
    expect(codeOf(() => checkPotTest({ ...test(), pots: [{ ...pots[0]!, seeds: 0 }] }))).toBe('bad-count');
    expect(codeOf(() => checkPotTest({ ...test(), crop: 'oak' }))).toBe('no-such-crop');
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 1, max: 900 }),
        (emerged, injury, heightMm) => {
          expect(codeOf(() => checkPotTest(test(look('2026-04-20', emerged, { injury, heightMm }))))).toBe(
            'fine',
          );
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });
});
