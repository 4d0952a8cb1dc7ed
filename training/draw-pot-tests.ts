/**
 * Makes up pot tests whose truth is known, to see how often reading them goes wrong. What happens in these pots is not what the
 * reading assumes: pots differ by a normal spread of log-odds and not by a Beta, injury shows along a curve and not by steps,
 * raters err by a normal error and round, compost feeds, healthy pots go wrong by themselves. All spreads are our own.
 */

import { type PotTestResult, readPotTest } from '../src/compare/pot-test/read-pot-test.ts';
import { scheduleLooks } from '../src/compare/pot-test/schedule-looks.ts';
import { testCrop } from '../src/compare/pot-test/test-crops.ts';
import type { Pot, PotScore, PotTest } from '../src/compare/pot-test/types.ts';
import { dayAfter, daysBetween } from '../src/days/days.ts';
import { seededRandom } from '../src/leaf/draw-leaf.ts';

/** One kind of test, sown again and again. */
export interface PotTestTruth {
  readonly crop: string;
  readonly potsEach: number;
  /** True mean injury of test plants when all of it shows, points. 0: harmless. */
  readonly dose: number;
  /** How unlike pots are: spread of the log-odds to come up, and of injury. */
  readonly spread: number;
  /** Of an unripe batch: share by which it thins and stunts radish. With it the test asks about ripeness. */
  readonly unripe?: number;
  /** Mean share of seed that comes up in clean mix; default 0.88. */
  readonly comesUp?: number;
  /** Points by which the rater scores test pots higher than what is there, because they know which they are. Default 0. */
  readonly leaning?: number;
  /** Share of control pots that water from a test pot reaches. Default 0. */
  readonly crossed?: number;
}

export interface Ended {
  readonly verdict: PotTestResult['verdict'];
  readonly result: PotTestResult;
  /** Days from sowing to the look at which it ended. */
  readonly days: number;
}

const SOWN = '2026-04-01';
const oddsShift = (p: number, by: number): number => 1 / (1 + ((1 - p) / p) * Math.exp(-by));

/** One made-up test, looked at as scheduled until it stops. */
export function runPotTest(truth: PotTestTruth, random: () => number): Ended {
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const { crop, potsEach, dose, spread, comesUp = 0.88, leaning = 0, crossed = 0, unripe } = truth;
  const { seedsPerPot, upAfterDays } = testCrop(crop)!;
  const hurt = dose / 100;
  // What is alike for all pots of the test: vigour of the seed lot, speed, how compost feeds.
  const lot = oddsShift(comesUp, 0.3 * normal());
  const pace = Math.exp(0.12 * normal());
  const feeds = Math.exp(0.03 + 0.08 * normal());
  const plain = 150 * Math.exp(0.1 * normal());
  const pots = Array.from({ length: 2 * potsEach }, (_, at) => {
    const role: Pot['role'] = at % 2 === 0 ? 'test' : 'control';
    const reached = role === 'test' || random() < crossed;
    const injury = !reached || hurt === 0 ? 0 : oddsShift(hurt, 0.8 * spread * normal());
    const kept = role === 'test' ? 1 - (unripe ?? 0) : 1;
    const up = oddsShift(lot, spread * normal()) * (1 - 0.3 * injury) * kept;
    let emerged = 0;
    for (let seed = 0; seed < seedsPerPot; seed++) if (random() < up) emerged++;
    const wrong = random() < 0.08 ? -12 * Math.log(1 - random()) : 0;
    const height =
      plain *
      kept *
      (role === 'test' ? feeds : 1) *
      Math.exp((0.08 + 0.08 * spread) * normal()) *
      (1 - 0.5 * injury);
    return { id: `p${at}`, role, seeds: seedsPerPot, injury, emerged, wrong, height };
  });
  const scores: PotScore[] = [];
  const test = (): PotTest => ({
    question: unripe === undefined ? 'residue' : 'ripeness',
    crop,
    sownOn: SOWN,
    pots,
    scores,
  });
  const first = (upAfterDays[0] + upAfterDays[1]) / 2;
  let last: PotTestResult | undefined;
  for (let look = 0; ; look++) {
    const due = scheduleLooks(test())[look];
    if (!due) break;
    const age = Math.max(0, daysBetween(SOWN, due.on) - first) * pace;
    const sets = Math.min(4, Math.floor(age / 4.2));
    const shows = 1 / (1 + Math.exp(-(age - 7) / 1.6));
    for (const { id, role, injury, emerged, wrong, height } of pots) {
      const seen = 100 * injury * shows + wrong * shows + (role === 'test' ? leaning : 0);
      // Nobody scores a plain healthy plant 7: raters err little near nothing, more in the middle.
      const error = (seen < 3 ? 2.5 : 7) * normal();
      const rated = Math.max(0, Math.min(100, 10 * Math.round((seen + error) / 10)));
      scores.push({
        potId: id,
        date: due.on,
        emerged,
        leafSets: sets,
        ...(emerged > 0 && sets > 0
          ? { injury: rated, heightMm: Math.max(5, height * Math.min(1, 0.2 + age / 18)) }
          : {}),
      });
    }
    last = readPotTest(test());
    if (last.verdict !== 'go-on') break;
  }
  const result = last!;
  return { verdict: result.verdict, result, days: daysBetween(SOWN, result.on ?? dayAfter(SOWN, 0)) };
}

/** How many made-up tests of one kind ended how. */
export interface Tally {
  readonly runs: number;
  readonly safe: number;
  readonly stopped: number;
  readonly goesOn: number;
  readonly invalid: number;
  readonly meanDays: number;
}

/** Runs a kind of test so many times. Seeded: the same again. */
export function tallyPotTests(truth: PotTestTruth, runs: number, seed: number): Tally {
  const random = seededRandom(seed);
  const counts = { 'safe-enough': 0, 'do-not-spread': 0, 'go-on': 0, invalid: 0 };
  let days = 0;
  for (let run = 0; run < runs; run++) {
    const ended = runPotTest(truth, random);
    counts[ended.verdict] += 1;
    days += ended.days;
  }
  return {
    runs,
    safe: counts['safe-enough'],
    stopped: counts['do-not-spread'],
    goesOn: counts['go-on'],
    invalid: counts.invalid,
    meanDays: days / runs,
  };
}
