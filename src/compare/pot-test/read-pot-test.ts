import { dayAfter } from '../../days/days.ts';
import { checkPotTest } from './check-pot-test.ts';
import { type Invalid, judgeValidity, PATIENCE_DAYS } from './judge-validity.ts';
import type { PotTestCaution } from './plan-pot-test.ts';
import { nextLook, type PlannedLook } from './schedule-looks.ts';
import { LAST_LEAF_SET, type PotNow, type StandAtLook, standAtLook } from './stand-at-look.ts';
import type { PotTest, TestQuestion } from './types.ts';
import { chanceAfter, type EffectWeighed } from './weigh-effect.ts';
import { weighEmergence } from './weigh-emergence.ts';
import { weighInjury } from './weigh-injury.ts';
import { weighSize } from './weigh-size.ts';

/** What a batch may do to plants. `injury`: twisted and cupped growth of the auxin type, which active is never known. */
export type Harm = 'injury' | 'emergence' | 'size';
const HARMS = ['injury', 'emergence', 'size'] as const satisfies readonly Harm[];

/**
 * Chance of each harm taken beforehand. What the question is about stands at even odds (injury), or so that one of the two
 * does (ripeness); what it is not about is unlikely. What is known besides (where the load comes from) belongs to the ranking, which takes
 * the Bayes factor and not this chance. Ours.
 */
export const HARM_BEFORE: Readonly<Record<TestQuestion, Readonly<Record<Harm, number>>>> = {
  residue: { injury: 0.5, emergence: 0.1, size: 0.1 },
  ripeness: { injury: 0.05, emergence: 0.3, size: 0.3 },
};

/**
 * Chances at which a test stops. Spreading a poisoned load costs years, a test that goes on costs weeks: one in twenty is the most
 * that is risked, and nineteen in twenty is asked before a load is given up (ours; the README's table shows what follows).
 */
export const STOP_AT = { safe: 0.05, harm: 0.95 } as const;

export interface HarmWeighed extends EffectWeighed {
  /** Chance before and after the data. */
  readonly before: number;
  readonly chance: number;
}

/** What is to be done. `go-on`: neither is sure enough. */
export type PotTestVerdict = 'safe-enough' | 'do-not-spread' | 'go-on' | 'invalid';

export interface PotTestResult {
  readonly verdict: PotTestVerdict;
  /** Day of the look that it rests on; `undefined` while there was none. */
  readonly on?: string;
  /** What makes the test void; empty unless `invalid`. */
  readonly invalid: readonly Invalid[];
  /** Absent where the test is void or nothing was scored. */
  readonly harms?: Readonly<Record<Harm, HarmWeighed>>;
  /** Chance that the batch does at least one of the harms. */
  readonly chance?: number;
  /** The same chance for one who thought harm by what is asked about unlikely (1 in 5), and likely (4 in 5). */
  readonly range?: { readonly low: number; readonly high: number };
  /** The harms that are more likely than not, the likeliest first. */
  readonly because: readonly Harm[];
  /** Could it be called safe at this look, if it were? Not before the protocol's time and leaves. */
  readonly complete: boolean;
  /** With `go-on`: look again, or the time is up and it takes a new test with more pots. With `invalid`: sow again. */
  readonly next?: 'look-again' | 'sow-again';
  readonly look?: PlannedLook;
  /** Words of the knowledge base's cautions. */
  readonly cautions: readonly PotTestCaution[];
}

const numbers = (pots: readonly PotNow[], key: 'injury' | 'heightMm'): number[] =>
  pots.flatMap((pot) => pot[key] ?? []);
const counts = (pots: readonly PotNow[]): { seeds: number; emerged: number }[] =>
  pots.flatMap(({ seeds, emerged }) => (emerged === undefined ? [] : [{ seeds, emerged }]));

const NOTHING_SAID: EffectWeighed = {
  ratio: 1,
  chanceFrom: (before) => before,
  effect: { mean: 0, low: 0, high: 0 },
};

/** Weighs each harm by what the look says of it; what was not measured in two pots of each kind says nothing. */
export function weighHarms(stand: StandAtLook): Readonly<Record<Harm, EffectWeighed>> {
  const both = <Value>(of: (pots: readonly PotNow[]) => Value[]): [Value[], Value[]] | undefined => {
    const [test, control] = [of(stand.test), of(stand.control)];
    return test.length >= 2 && control.length >= 2 ? [test, control] : undefined;
  };
  const injury = both((pots) => numbers(pots, 'injury'));
  const emergence = both(counts);
  const size = both((pots) => numbers(pots, 'heightMm'));
  return {
    injury: injury ? weighInjury(...injury, stand.leafSets) : NOTHING_SAID,
    emergence: emergence ? weighEmergence(...emergence) : NOTHING_SAID,
    size: size ? weighSize(...size) : NOTHING_SAID,
  };
}

/** Chance of at least one harm, the harms taken as independent. */
const chanceOfAny = (
  harms: Readonly<Record<Harm, EffectWeighed>>,
  before: Readonly<Record<Harm, number>>,
): number => 1 - HARMS.reduce((none, harm) => none * (1 - harms[harm].chanceFrom(before[harm])), 1);

/** Were nearly all pots scored, after the protocol's time, at its last set of leaves? */
function isComplete(test: PotTest, stand: StandAtLook): boolean {
  if (stand.on < stand.endsOn) return false;
  const all = [...stand.test, ...stand.control];
  const scored = all.filter((pot) => (test.question === 'residue' ? pot.injury : pot.heightMm) !== undefined);
  const grown = test.question === 'ripeness' || stand.leafSets >= LAST_LEAF_SET;
  return grown && scored.length >= 0.8 * all.length;
}

const cautionsFor = (verdict: PotTestVerdict, question: TestQuestion): PotTestCaution[] => {
  if (verdict === 'do-not-spread' && question === 'residue')
    return ['residue', 'do-not-compost', 'local-rules', 'compost-dust', 'ask'];
  return verdict === 'invalid' ? ['compost-dust', 'ask'] : ['compost-dust', 'local-rules', 'ask'];
};

/**
 * Reads a pot test as it stands on a day. Whether it holds comes first; then each harm is weighed, exactly, on everything that the
 * newest look shows; then the stopping rule: nineteen in twenty stops the load at any look, one in twenty frees it, but
 * only when the test is complete. Never says which weedkiller. Pure: the same scores give the same reading.
 * @param until only what was seen up to this day, `YYYY-MM-DD`
 * @throws PotTestError where numbers cannot be
 */
export function readPotTest(test: PotTest, until?: string): PotTestResult {
  checkPotTest(test);
  const stand = standAtLook(test, until);
  const look = (): PlannedLook =>
    nextLook(
      until === undefined ? test : { ...test, scores: test.scores.filter(({ date }) => date <= until) },
    );
  if (!stand)
    return {
      verdict: 'go-on',
      invalid: [],
      because: [],
      complete: false,
      next: 'look-again',
      look: look(),
      cautions: cautionsFor('go-on', test.question),
    };
  const invalid = judgeValidity(test, stand);
  if (invalid.length > 0)
    return {
      verdict: 'invalid',
      on: stand.on,
      invalid,
      because: [],
      complete: false,
      next: 'sow-again',
      cautions: cautionsFor('invalid', test.question),
    };
  const weighed = weighHarms(stand);
  const before = HARM_BEFORE[test.question];
  const harms = Object.fromEntries(
    HARMS.map((harm) => [
      harm,
      { ...weighed[harm], before: before[harm], chance: weighed[harm].chanceFrom(before[harm]) },
    ]),
  ) as Record<Harm, HarmWeighed>;
  const chance = chanceOfAny(weighed, before);
  const complete = isComplete(test, stand);
  // What is not complete two weeks after its time, for want of seedlings or scores, will not be.
  const isOver = stand.on >= dayAfter(stand.endsOn, PATIENCE_DAYS);
  const verdict =
    chance >= STOP_AT.harm ? 'do-not-spread' : complete && chance <= STOP_AT.safe ? 'safe-enough' : 'go-on';
  const shifted = (factor: number): number =>
    chanceOfAny(
      weighed,
      Object.fromEntries(HARMS.map((harm) => [harm, chanceAfter(before[harm], factor)])) as Record<
        Harm,
        number
      >,
    );
  return {
    verdict,
    on: stand.on,
    invalid: [],
    harms,
    chance,
    range: { low: shifted(1 / 4), high: shifted(4) },
    because: HARMS.filter((harm) => harms[harm].chance > 0.5).sort(
      (a, b) => harms[b].chance - harms[a].chance,
    ),
    complete,
    ...(verdict === 'go-on'
      ? { next: complete || isOver ? ('sow-again' as const) : ('look-again' as const), look: look() }
      : {}),
    cautions: cautionsFor(verdict, test.question),
  };
}
