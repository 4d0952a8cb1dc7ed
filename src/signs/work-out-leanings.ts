import { chainLeanings } from './chain-leanings.ts';
import { coldChain } from './lean-on-cold.ts';
import { hotCompostChain } from './lean-on-hot-compost.ts';
import { lockUpChain, type Surroundings } from './lean-on-lock-up.ts';
import type { Answers, FactorId, WorkedLeaning } from './types.ts';

export type WorkedLeanings = ReadonlyMap<FactorId, readonly WorkedLeaning[]>;

/**
 * The leanings that physics gives under these answers: nitrogen tied up by what was mixed in, a heap that is still
 * working, cold for this crop. For answered factors they hold instead of the general leanings; for open ones they say
 * what asking would be worth.
 */
export function workOutLeanings(answers: Answers, surroundings: Omit<Surroundings, 'date'>): WorkedLeanings {
  const { crop, date, setting } = answers;
  const { zone } = surroundings;
  const chains = [
    lockUpChain({ ...surroundings, ...(date === undefined ? {} : { date }) }),
    hotCompostChain(date, zone),
    coldChain(crop),
  ];
  const worked = new Map<FactorId, WorkedLeaning[]>();
  for (const chain of chains)
    for (const [factor, leaning] of chainLeanings(chain, setting))
      worked.set(factor, [...(worked.get(factor) ?? []), leaning]);
  return worked;
}
