import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import type { FactorId, WorkedLeaning } from './types.ts';
import type { CauseId } from './vocabulary.ts';

/** Answers to settings, whatever their kind. */
export type Said = { readonly [Id in SettingId]?: unknown };

export interface Chain {
  readonly cause: CauseId;
  /** Settings that speak of the same hidden matter, in the order in which the reasons are told. */
  readonly order: readonly SettingId[];
  /** Odds multiplier of the cause with these of the settings answered, the others left open over their usual answers. */
  readonly odds: (said: Said) => number;
  /** Why, for an answered setting that multiplies the odds by `by`; may be left to the knowledge base. */
  readonly because?: (id: SettingId, said: Said, by: number) => string | undefined;
}

/** Middle of a band, for answers that are not known exactly; of an open band half as much again as its lower end. */
export function middleOfBand(setting: Setting & { readonly kind: 'number' }, index: number): number {
  const from = setting.bands[index - 1]?.below ?? Math.max(0, setting.least);
  const below = setting.bands[index]!.below;
  return below === undefined ? 1.5 * from : (from + below) / 2;
}

type Single = Exclude<Setting, { kind: 'any-of' }>;

/** The outcomes of a setting with the values that stand for them and how often they are given. */
function outcomesOf(setting: Single): readonly { readonly value: unknown; readonly rate: number }[] {
  if (setting.kind === 'yes-no')
    return [
      { value: true, rate: setting.rate },
      { value: false, rate: 1 - setting.rate },
    ];
  if (setting.kind === 'one-of') return setting.options.map(({ id, rate }) => ({ value: id, rate }));
  return setting.bands.map(({ rate }, index) => ({ value: middleOfBand(setting, index), rate }));
}

function answeredPlace(setting: Single, answer: unknown): number {
  if (setting.kind === 'yes-no') return answer ? 0 : 1;
  if (setting.kind === 'one-of') return setting.options.findIndex(({ id }) => id === answer);
  return setting.bands.findIndex(({ below }) => below === undefined || (answer as number) < below);
}

/** Odds of an outcome that was not given never fall below this. */
const LEAST = 0.05;

/**
 * Multipliers of an answered factor. The ranker divides by their average over the usual answers; as this answer is
 * weighed against those before it and not against the usual ones, the average is made 1, so that `by` is what counts.
 */
function balanced(rates: readonly number[], place: number, by: number): number[] {
  const rate = rates[place]!;
  const other = Math.max(LEAST, (1 - rate * by) / (1 - rate));
  return rates.map((_, at) => (at === place ? by : other));
}

/**
 * A list is one answer: its whole leaning lies on the named option that leans most by itself (of an empty list, on its
 * first option not being named); the others stay level.
 */
function leaningsOfList(
  { cause, odds, because }: Chain,
  id: SettingId,
  setting: Setting & { readonly kind: 'any-of' },
  before: Said,
  named: readonly string[],
): [FactorId, WorkedLeaning][] {
  const start = odds(before);
  const by = odds({ ...before, [id]: named }) / start;
  const pull = (option: string): number => Math.abs(Math.log(odds({ ...before, [id]: [option] }) / start));
  const [carrier = setting.options[0]!.id] = [...named].sort((a, b) => pull(b) - pull(a));
  const says = because?.(id, { ...before, [id]: named }, by);
  return setting.options.map((option): [FactorId, WorkedLeaning] => {
    if (option.id !== carrier) return [`${id}:${option.id}`, { cause, odds: [1, 1] }];
    const rates = [option.rate, 1 - option.rate];
    const worked = { cause, odds: balanced(rates, named.includes(option.id) ? 0 : 1, by) };
    return [`${id}:${option.id}`, says === undefined ? worked : { ...worked, because: says }];
  });
}

/**
 * Leanings of several settings that speak of one hidden matter, so that together they lean exactly as all of them at
 * once do and nothing counts twice: each leans by what it adds to those before it. Settings that are open get the
 * leanings that asking them would bring.
 */
export function chainLeanings(chain: Chain, answers: Said): [FactorId, WorkedLeaning][] {
  const { cause, order, odds, because } = chain;
  const inChain = new Set<string>(order);
  let before: Said = Object.fromEntries(Object.entries(answers).filter(([id]) => !inChain.has(id)));
  const worked: [FactorId, WorkedLeaning][] = [];
  for (const id of order) {
    const setting: Setting = SETTINGS[id];
    const answer = answers[id];
    if (setting.kind === 'any-of') {
      if (answer === undefined) continue;
      worked.push(...leaningsOfList(chain, id, setting, before, answer as readonly string[]));
    } else if (answer === undefined) {
      const start = odds(before);
      const multipliers = outcomesOf(setting).map(({ value }) => odds({ ...before, [id]: value }) / start);
      worked.push([id, { cause, odds: multipliers }]);
      continue;
    } else {
      const after = { ...before, [id]: answer };
      const by = odds(after) / odds(before);
      const rates = outcomesOf(setting).map(({ rate }) => rate);
      const says = because?.(id, after, by);
      const leaning = { cause, odds: balanced(rates, answeredPlace(setting, answer), by) };
      worked.push([id, says === undefined ? leaning : { ...leaning, because: says }]);
    }
    before = { ...before, [id]: answer };
  }
  return worked;
}
