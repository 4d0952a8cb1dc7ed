import type { Zone } from '../days/growing-year.ts';
import { COMPOST_STATES, type CompostState, judgeCompost } from '../garden/compost-state.ts';
import { typicalSoilCelsius } from '../season/soil-temperature.ts';
import type { Chain, Said } from './chain-leanings.ts';

/**
 * Odds multipliers of harm from a heap in each state (our own scale): fresh "more", curing "a little more", finished "far
 * less"; hot is set so that a heap which its grower calls hot leans "far more".
 */
const HARM_ODDS: Record<CompostState, number> = { hot: 12, fresh: 3, curing: 1.65, finished: 1 / 9 };

/** Mean air of a month lies near that of the soil at 10 cm; single days differ by more (common practice, no source). */
const AIR_SD = 5;

/** What is said of the heap, for the judge of its state. */
export function heapOf(said: Said): Parameters<typeof judgeCompost>[0] {
  return {
    ...(said['compost-celsius'] === undefined ? {} : { celsius: said['compost-celsius'] as number }),
    ...(said['compost-age'] === undefined
      ? {}
      : { ageWeeks: WEEKS_A_MONTH * (said['compost-age'] as number) }),
    ...(said['compost-state'] === undefined ? {} : { told: said['compost-state'] as 'hot' }),
    ...(said['compost-ammonia'] === undefined ? {} : { smellsOfAmmonia: said['compost-ammonia'] as boolean }),
  };
}
const WEEKS_A_MONTH = 4.35;

/**
 * How a heap's state leans on harm by unfinished compost. What the grower calls it, its temperature, its age and its
 * smell all speak of the one state, so they count together and never twice.
 */
export function hotCompostChain(date: string | undefined, zone: Zone): Chain {
  const air = { celsius: typicalSoilCelsius(date, zone).celsius, sd: AIR_SD };
  return {
    cause: 'hot-compost',
    order: ['compost-state', 'compost-celsius', 'compost-age', 'compost-ammonia'],
    odds: (said) => {
      const chances = judgeCompost(heapOf(said), air);
      return COMPOST_STATES.reduce((sum, state) => sum + chances[state] * HARM_ODDS[state], 0);
    },
    because: (id, said) => {
      if (id !== 'compost-celsius') return undefined;
      const rise = Math.round((said['compost-celsius'] as number) - air.celsius);
      if (rise > 20) return `about ${rise} degrees over the air it is still working`;
      if (rise > 10) return `about ${rise} degrees over the air it is nearly ready, and not quite finished`;
      return 'near the warmth of the air a heap is finished, or never heated';
    },
  };
}
