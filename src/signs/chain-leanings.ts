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

/** The values that stand for the outcomes of a setting, in their order; the answered band by the answer itself. */
function valuesOf(setting: Exclude<Setting, { kind: 'any-of' }>, answer: unknown): readonly unknown[] {
  if (setting.kind === 'yes-no') return [true, false];
  if (setting.kind === 'one-of') return setting.options.map(({ id }) => id);
  const answered = setting.bands.findIndex(
    ({ below }) => typeof answer === 'number' && (below === undefined || answer < below),
  );
  return setting.bands.map((_, index) => (index === answered ? answer : middleOfBand(setting, index)));
}

/**
 * A list is one answer: its whole leaning lies on the named option that leans most by itself (of an empty list, on its
 * first option not being named); the others stay level. The multipliers average to 1 over the rates of that option.
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
    const isNamed = named.includes(option.id);
    const rate = isNamed ? option.rate : 1 - option.rate;
    const otherwise = Math.max(0.05, (1 - rate * by) / (1 - rate));
    const worked = { cause, odds: isNamed ? [by, otherwise] : [otherwise, by] };
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
    const after = answer === undefined ? before : { ...before, [id]: answer };
    if (setting.kind === 'any-of') {
      if (answer !== undefined)
        worked.push(...leaningsOfList(chain, id, setting, before, answer as readonly string[]));
    } else {
      const start = odds(before);
      const multipliers = valuesOf(setting, answer).map((value) => odds({ ...before, [id]: value }) / start);
      const says = answer === undefined ? undefined : because?.(id, after, odds(after) / start);
      worked.push([id, { cause, odds: multipliers, ...(says === undefined ? {} : { because: says }) }]);
    }
    before = after;
  }
  return worked;
}
