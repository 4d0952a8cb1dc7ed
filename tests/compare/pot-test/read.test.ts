import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPotTest } from '../../../src/compare/pot-test/plan-pot-test.ts';
import { HARM_BEFORE, readPotTest, STOP_AT } from '../../../src/compare/pot-test/read-pot-test.ts';
import { standAtLook } from '../../../src/compare/pot-test/stand-at-look.ts';
import type { PotScore, PotTest } from '../../../src/compare/pot-test/types.ts';
import { tallyPotTests } from '../../../training/draw-pot-tests.ts';

const SOWN = '2026-04-01';
const LAST = '2026-04-25';
const { pots } = planPotTest({ question: 'residue', sowOn: SOWN, sensitiveFollows: true, seed: 1 });
type Seen = Partial<Omit<PotScore, 'potId'>>;

/** A test of four pots each in which all test pots look like this, and all control pots like that, after 24 days. */
function sown(inTest: Seen, inControl: Seen = {}, more: Partial<PotTest> = {}): PotTest {
  const well = { date: LAST, emerged: 3, heightMm: 140, injury: 0, leafSets: 3 };
  const all = more.pots ?? pots;
  return {
    question: 'residue',
    crop: 'french-bean',
    sownOn: SOWN,
    pots: all,
    scores: all.map(({ id, role }, at) => {
      const seen = { ...well, ...(role === 'test' ? inTest : inControl) };
      // No two pots are equally tall.
      return { potId: id, ...seen, heightMm: seen.heightMm * (1 + 0.03 * ((at % 4) - 1.5)) };
    }),
    ...more,
  };
}

describe('reading a pot test', () => {
  it('follows the protocol’s table (OSU-CARRY): normal and normal, injured and normal, injured and injured', () => {
    expect(readPotTest(sown({})).verdict).toBe('safe-enough');
    const hurt = readPotTest(sown({ injury: 40, heightMm: 100 }));
    expect(hurt).toMatchObject({ verdict: 'do-not-spread', invalid: [] });
    expect(hurt.because[0]).toBe('injury');
    expect(hurt.cautions).toEqual(
      expect.arrayContaining(['residue', 'do-not-compost', 'compost-dust', 'local-rules']),
    );
    const both = readPotTest(sown({ injury: 40 }, { injury: 40 }));
    expect(both).toMatchObject({
      verdict: 'invalid',
      next: 'sow-again',
      invalid: [{ code: 'control-injured' }],
    });
    expect(both.chance).toBeUndefined();
  });

  it.each([
    // Two in five came up in clean mix: the home trial that gave up (RGB-BLOG); 70 % is asked (OECD-208).
    ['control-poor-germination', sown({ emerged: 2 }, { emerged: 1 })],
    [
      'too-few-control-pots',
      sown({}, {}, { pots: pots.filter(({ role, block }) => role === 'test' || block < 2) }),
    ],
    [
      'too-few-test-pots',
      sown({}, {}, { pots: pots.filter(({ role, block }) => role === 'control' || block < 2) }),
    ],
    ['control-not-grown', sown({ leafSets: 1, date: '2026-05-20' }, { leafSets: 1, date: '2026-05-20' })],
    // 1.5 g a plant was the limit once, 2.0 g is now (REAL-PRT).
    ['control-too-light', sown({ grams: 6 }, { grams: 3 * 1.9, emerged: 3 }, { crop: 'tomato' })],
  ])('says nothing where it is void: %s', (code, test) => {
    const read = readPotTest(test);
    expect(read.verdict).toBe('invalid');
    expect(read.invalid.map((fault) => fault.code)).toContain(code);
    for (const fault of read.invalid) expect(fault.source).not.toBe('');
  });

  it('does not judge germination before its time, nor the weight that holds', () => {
    const early = sown({ date: '2026-04-08', emerged: 1 }, { date: '2026-04-08', emerged: 1 });
    expect(readPotTest(early).verdict).toBe('go-on');
    const heavy = sown({ grams: 6 }, { grams: 6.3 }, { crop: 'tomato', sownOn: '2026-03-28' });
    expect(readPotTest(heavy).invalid).toEqual([]);
  });

  it('stops a load at any look, and frees one only when the test is complete', () => {
    const at = (date: string, leafSets: number, seen: Seen): PotTest =>
      sown({ date, leafSets, ...seen }, { date, leafSets });
    expect(readPotTest(at('2026-04-17', 2, { injury: 50 })).verdict).toBe('do-not-spread');
    const clean = readPotTest(at('2026-04-17', 2, {}));
    expect(clean).toMatchObject({ verdict: 'go-on', next: 'look-again', complete: false });
    expect(readPotTest(at('2026-04-17', 3, {})).verdict).toBe('go-on');
    expect(readPotTest(at(LAST, 2, {})).verdict).toBe('go-on');
    expect(readPotTest(at(LAST, 3, {})).verdict).toBe('safe-enough');
    // Half of the pots scored is no complete look.
    const half = sown({});
    const some = half.scores.map(({ injury, ...score }, i) =>
      i < 4 ? { ...score, injury: injury! } : score,
    );
    expect(readPotTest({ ...half, scores: some }).complete).toBe(false);
  });

  it('goes on where neither is sure, and asks for a new sowing when the time is up', () => {
    const doubtful = readPotTest(sown({ injury: 10 }));
    expect(doubtful).toMatchObject({ verdict: 'go-on', next: 'sow-again', complete: true });
    expect(doubtful.chance).toBeGreaterThan(STOP_AT.safe);
    expect(doubtful.chance).toBeLessThan(STOP_AT.harm);
    const { low, high } = doubtful.range!;
    expect(low).toBeLessThan(doubtful.chance!);
    expect(high).toBeGreaterThan(doubtful.chance!);
  });

  it('does not wait for ever for pots that nobody can score', () => {
    const some = sown({});
    const few = (date: string): PotTest => ({
      ...some,
      scores: some.scores.map(({ injury, ...score }, at) =>
        at % 3 === 0 ? { ...score, date } : { ...score, date, injury: injury! },
      ),
    });
    expect(readPotTest(few(LAST))).toMatchObject({ verdict: 'go-on', complete: false, next: 'look-again' });
    expect(readPotTest(few('2026-05-20'))).toMatchObject({ verdict: 'go-on', next: 'sow-again' });
  });

  it('says what it was: seedlings that do not come up or stay small without a twisted leaf', () => {
    expect(readPotTest(sown({ emerged: 0 })).because).toEqual(['emergence']);
    const small = readPotTest(sown({ heightMm: 60 }));
    expect(small).toMatchObject({ verdict: 'do-not-spread', because: ['size'] });
    // What the ranking takes is the injury's own factor, and that speaks against residue here.
    expect(small.harms!.injury.ratio).toBeLessThan(1);
  });

  it('adds its harms up as independent ones', () => {
    const { harms, chance } = readPotTest(sown({ injury: 10, emerged: 2, heightMm: 120 }));
    const none = Object.values(harms!).reduce((product, harm) => product * (1 - harm.chance), 1);
    expect(chance).toBeCloseTo(1 - none, 12);
    for (const harm of ['injury', 'emergence', 'size'] as const) {
      const before = HARM_BEFORE.residue[harm];
      const odds = (before / (1 - before)) * harms![harm].ratio;
      expect(harms![harm].chance).toBeCloseTo(odds / (1 + odds), 12);
    }
  });

  it('does not mind the order of pots or scores, nor their names, and reads back in time', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.integer({ min: 0, max: 10 })), fc.integer(), (stream, shift) => {
        const test = sown({});
        const scores = test.scores.map((score) => ({ ...score, injury: 10 * stream.next().value! }));
        const read = readPotTest({ ...test, scores });
        const turned = [...scores.slice(Math.abs(shift) % 8), ...scores.slice(0, Math.abs(shift) % 8)];
        const renamed = {
          ...test,
          pots: [...test.pots].reverse().map((pot) => ({ ...pot, id: `x${pot.id}` })),
          scores: turned.map((score) => ({ ...score, potId: `x${score.potId}` })),
        };
        const again = readPotTest(renamed);
        expect(again.verdict).toBe(read.verdict);
        if (read.chance !== undefined) expect(again.chance).toBeCloseTo(read.chance, 10);
        const longer = {
          ...test,
          scores: [...scores, ...scores.map((score) => ({ ...score, date: '2026-05-02' }))],
        };
        expect(readPotTest(longer, LAST).chance).toEqual(read.chance);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('compares heights and injuries of one look only, and never forgets who came up', () => {
    const first = sown({ date: '2026-04-13', emerged: 3, injury: 20 }, { date: '2026-04-13' });
    const later = sown({ emerged: 1 }, {});
    const partly = later.scores.filter(({ potId }) => potId !== pots[0]!.id);
    const stand = standAtLook({ ...first, scores: [...first.scores, ...partly] })!;
    const all = [...stand.test, ...stand.control];
    expect(all.find(({ id }) => id === pots[0]!.id)).toMatchObject({ emerged: 3 });
    expect(all.find(({ id }) => id === pots[0]!.id)!.injury).toBeUndefined();
    for (const pot of all) expect(pot.emerged).toBe(3);
  });
});

describe('made-up tests whose truth is known (a few hundred; ten thousand a line in the README)', () => {
  // Bounds are the rates asked for, 2 and 5 in 100, and two standard errors of 400 runs above: 3.4 and 7.2 in 100.
  it.each([
    [3, 0.3],
    [3, 1],
    [6, 1],
  ])(
    '%i pots each, spread %f: hardly ever safe at an injury of 30, hardly ever an alarm at none',
    (potsEach, spread) => {
      const truth = { crop: 'french-bean', potsEach, spread };
      const harmful = tallyPotTests({ ...truth, dose: 30 }, 400, 41);
      expect(harmful.safe / harmful.runs).toBeLessThanOrEqual(0.034);
      expect(harmful.stopped / harmful.runs).toBeGreaterThan(0.5);
      const harmless = tallyPotTests({ ...truth, dose: 0 }, 400, 42);
      expect(harmless.stopped / harmless.runs).toBeLessThanOrEqual(0.072);
      expect(harmless.safe / harmless.runs).toBeGreaterThan(0.3);
    },
  );
  it('the sowing card promises no more than that', () => {
    for (const wish of [{ beds: 1 }, { beds: 1, sensitiveFollows: true }, { beds: 3 }]) {
      const { potsEach, tells } = planPotTest({ question: 'residue', sowOn: SOWN, seed: 1, ...wish });
      const shares = [0.3, 1].map((spread) => {
        const of = (dose: number, seed: number) =>
          tallyPotTests({ crop: 'french-bean', potsEach, spread, dose }, 150, seed);
        return [of(0, 44).safe / 150, of(30, 45).stopped / 150] as const;
      });
      const mean = (at: 0 | 1): number => (shares[0]![at] + shares[1]![at]) / 2;
      // Two standard errors of 300 runs: 0.06.
      expect(Math.abs(mean(0) - tells!.freesClean)).toBeLessThan(0.06);
      expect(Math.abs(mean(1) - tells!.stopsHarmful)).toBeLessThan(0.06);
    }
    // The table's lines for radish: 74.3 and 55.7 passed, 84.4 and 65.9 found.
    const { tells } = planPotTest({ question: 'ripeness', sowOn: SOWN, seed: 1 });
    expect(tells?.freesClean).toBeCloseTo(0.65, 3);
    expect(tells?.stopsHarmful).toBeCloseTo(0.7515, 4);
  });
  it('more pots decide more often', () => {
    const decided = [3, 6].map((potsEach) => {
      const { safe, runs } = tallyPotTests({ crop: 'tomato', potsEach, spread: 0.3, dose: 0 }, 400, 43);
      return safe / runs;
    });
    expect(decided[1]!).toBeGreaterThan(decided[0]! + 0.05);
  });
});
