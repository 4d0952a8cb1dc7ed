import { betaBelow } from './beta-functions.ts';
import { stepOf } from './injury-scale.ts';
import { type EffectWeighed, midpoints, remembering, timesOver, weighEffect } from './weigh-effect.ts';

/**
 * A batch harms where sensitive plants come out a tenth more injured than in clean mix, in points of the scale over 100. Beans
 * scored 8 of 100 when young lost a tenth of their yield (Robinson and others 2013).
 */
export const HARMFUL_INJURY = 0.1;

/**
 * How much of the injury shows with so many sets of true leaves: it comes with the second set (SEATTLEPI-2002), and the
 * protocols judge at three (OSU-CARRY, WSU-WHATCOM). The shares are ours.
 */
const SHOWN_AT_LEAF_SETS = [0, 0.35, 0.75, 1] as const;

/** Injury that control pots have by themselves, share of the scale, with weights (common practice, no source). */
const BACKGROUND: readonly (readonly [mean: number, weight: number])[] = [
  [0.005, 0.2],
  [0.015, 0.25],
  [0.03, 0.22],
  [0.05, 0.15],
  [0.08, 0.1],
  [0.12, 0.05],
  [0.2, 0.03],
];
/**
 * How alike pots of one kind and their raters are: spread of pot scores is √(m(1 − m)/(1 + sharpness)). At m 0.3: 17, 11 and 7
 * points; raters are asked for steps of ten (CWSS-SCM 2018). Ours.
 */
const SHARPNESS: readonly (readonly [sharpness: number, weight: number])[] = [
  [6, 0.3],
  [16, 0.4],
  [45, 0.3],
];
/** One pot in fifty goes wrong in its own way and may read anything (common practice, no source). */
const ODD_POT = 0.02;

const STEPS = 11;
const INJURIES = [0, ...midpoints(0, 1, 40)] as const;
/** Half of all tested loads are taken to do nothing; else any strength is as likely as any other. */
const NOTHING = 0.5;

/** P(step) of a pot: a Beta cut at the middles between the steps, and the odd pot. */
function stepChances(mean: number, sharpness: number): Float64Array {
  const [a, b] = [mean * sharpness, (1 - mean) * sharpness];
  const chances = new Float64Array(STEPS);
  let below = 0;
  for (let step = 0; step < STEPS; step++) {
    const next = step === STEPS - 1 ? 1 : betaBelow((step + 0.5) / (STEPS - 1), a, b);
    chances[step] = (1 - ODD_POT) * Math.max(0, next - below) + ODD_POT / STEPS;
    below = next;
  }
  return chances;
}

type Table = readonly { readonly chances: readonly Float64Array[]; readonly weight: number }[][];
const tables = new Map<number, Table>();

/** Step chances by background and by injury (0 first), for each sharpness; worked out once for each share shown. */
function tableFor(shown: number): Table {
  const known = tables.get(shown);
  if (known) return known;
  const made = BACKGROUND.map(([mean]) =>
    SHARPNESS.map(([sharpness, weight]) => ({
      weight,
      chances: INJURIES.map((injury) => stepChances(mean + (1 - mean) * injury * shown, sharpness)),
    })),
  );
  tables.set(shown, made);
  return made;
}

/** How often each step was scored, in order. */
function tally(injuries: readonly number[]): [step: number, times: number][] {
  const times = new Map<number, number>();
  for (const injury of injuries) times.set(stepOf(injury), (times.get(stepOf(injury)) ?? 0) + 1);
  return [...times].sort(([a], [b]) => a - b);
}

/** Likelihood of one arm's scores at each background (rows) and each of the first so many injuries. */
function likelihoodOfArm(injuries: readonly number[], shown: number, upTo: number): readonly Float64Array[] {
  const steps = tally(injuries);
  const key = `${shown} ${upTo} ${steps.map(([step, times]) => `${step}x${times}`).join(' ')}`;
  return remember(key, () =>
    tableFor(shown).map((rows) =>
      Float64Array.from({ length: upTo }, (_, at) =>
        rows.reduce((sum, { chances, weight }) => {
          let all = weight;
          for (const [step, times] of steps) all *= timesOver(chances[at]![step]!, times);
          return sum + all;
        }, 0),
      ),
    ),
  );
}
const remember = remembering<readonly Float64Array[]>();

/**
 * What the scores say of the injury that the batch does at full show, 0 to 1 of the scale. Scores are steps of a Beta whose mean is
 * the background of the control pots, and in test pots that and the injury; summed over a grid of background, injury and of how
 * alike pots are, in each arm by itself: exact up to the grid.
 * @param leafSets sets of true leaves of the control plants, 0 to 3
 */
export function weighInjury(
  test: readonly number[],
  control: readonly number[],
  leafSets: number,
): EffectWeighed {
  const shown = SHOWN_AT_LEAF_SETS[Math.max(0, Math.min(3, Math.floor(leafSets)))]!;
  const tests = likelihoodOfArm(test, shown, INJURIES.length);
  const controls = likelihoodOfArm(control, shown, 1);
  const likelihood = INJURIES.map((_, at) =>
    BACKGROUND.reduce((sum, [, share], row) => sum + share * controls[row]![0]! * tests[row]![at]!, 0),
  );
  const slab = (1 - NOTHING) / (INJURIES.length - 1);
  return weighEffect(
    { values: INJURIES, prior: INJURIES.map((_, at) => (at === 0 ? NOTHING : slab)), likelihood },
    HARMFUL_INJURY,
  );
}
