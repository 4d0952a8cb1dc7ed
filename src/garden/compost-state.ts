import { normalBelow } from './normal.ts';

/**
 * State of a heap. Fresh: not yet through its heat. Hot: in it. Curing: past it, not yet ripe. Finished: stable.
 * Phases after UCRRA and NRCS-317: up to 40–45 °C within 1–3 days, 49–71 °C while hot, below 38–41 °C without heating again
 * the end of active rotting, then curing for weeks to months.
 */
export type CompostState = 'fresh' | 'hot' | 'curing' | 'finished';
export const COMPOST_STATES = ['fresh', 'hot', 'curing', 'finished'] as const;
export type StateChances = Readonly<Record<CompostState, number>>;

/** What is known of a heap. All of it speaks of one hidden state, so nothing counts twice. */
export interface HeapKnown {
  /** Default compost. */
  readonly kind?: 'compost' | 'manure';
  /** Hottest reading in its middle, °C, and the air at that time; without it, air is taken as `assumedAir`. */
  readonly celsius?: number;
  readonly airCelsius?: number;
  readonly ageWeeks?: number;
  readonly smellsOfAmmonia?: boolean;
  /** How a sowing in it came out beside one in clean mix, where that was tried. */
  readonly sown?: SownTest;
  /** How the grower names it. */
  readonly told?: 'finished' | 'fresh' | 'still-warm' | 'hot';
}

/** A sowing test: about as many came up and grew as in clean mix, or clearly fewer or smaller. */
export type SownTest = 'passed' | 'failed';

/** Air temperature where nobody measured it: about 14 °C, give or take 6 (common practice, no source). */
export interface AssumedAir {
  readonly celsius: number;
  readonly sd: number;
}
const SOME_AIR: AssumedAir = { celsius: 14, sd: 6 };

/** In what state growers put it on, nothing else known (common practice, no source): manure rawer than compost. */
const SHARES: Record<'compost' | 'manure', StateChances> = {
  compost: { fresh: 0.15, hot: 0.05, curing: 0.1, finished: 0.7 },
  manure: { fresh: 0.35, hot: 0.1, curing: 0.2, finished: 0.35 },
};

/** Rise over the air that parts very mature from mature from immature, K (CCQC-2001, numbers from memory). */
export const SELF_HEATING = { veryMatureBelow: 10, matureBelow: 20 } as const;

export type Maturity = 'very-mature' | 'mature' | 'immature';

/** Class of a self-heating test by its greatest rise over the air, K (CCQC-2001). */
export function maturityOfRise(rise: number): Maturity {
  if (rise <= SELF_HEATING.veryMatureBelow) return 'very-mature';
  return rise <= SELF_HEATING.matureBelow ? 'mature' : 'immature';
}

/** Laboratory figures of a compost; leave out what was not measured. */
export interface MaturityFigures {
  /** Ammonium nitrogen over nitrate nitrogen. */
  readonly ammoniumToNitrate?: number;
  /** Ammonia nitrogen, mg per kg dry matter. */
  readonly ammoniaMgPerKg?: number;
  /** Seedlings or growth, percent of a control. */
  readonly growthPercent?: number;
  /** Carbon given off, mg CO2-C per g organic matter a day. */
  readonly carbonDioxide?: number;
}

const graded = (value: number | undefined, veryMature: number, mature: number): Maturity | undefined =>
  value === undefined
    ? undefined
    : value < veryMature
      ? 'very-mature'
      : value <= mature
        ? 'mature'
        : 'immature';

/**
 * Class of the Californian index, the worst of the figures given (CCQC-2001; the bands are from memory and no law).
 * `undefined` when nothing was measured.
 */
export function maturityOfFigures(figures: MaturityFigures): Maturity | undefined {
  const { growthPercent } = figures;
  const classes = [
    graded(figures.ammoniumToNitrate, 0.5, 3),
    graded(figures.ammoniaMgPerKg, 75, 500),
    graded(growthPercent === undefined ? undefined : 100 - growthPercent, 10, 20),
    graded(figures.carbonDioxide, 2, 8),
  ];
  return (['immature', 'mature', 'very-mature'] as const).find((one) => classes.includes(one));
}

export interface HeatLog {
  readonly method: 'vessel-or-aerated' | 'windrow';
  /** Temperature of each day, °C. */
  readonly dailyCelsius: readonly number[];
  readonly turns: number;
  /** Carbon to nitrogen at the start. */
  readonly startRatio: number;
}

/**
 * Was it hot long enough by the American organic rule (CFR-205203): started at a carbon to nitrogen of 25–40, at 55–77 °C for
 * three days in a vessel or aerated pile, or for fifteen days in a windrow with five turns?
 */
export function metHotCompostRule({ method, dailyCelsius, turns, startRatio }: HeatLog): boolean {
  const hotDays = dailyCelsius.filter((celsius) => celsius >= 55 && celsius <= 77).length;
  if (startRatio < 25 || startRatio > 40) return false;
  return method === 'windrow' ? hotDays >= 15 && turns >= 5 : hotDays >= 3;
}

/** Reading and air are each good to about 2 °C, and heaps differ (common practice, no source). */
const RISE_SD = 3;

/** Below this active rotting has come to its end, give or take 5 °C (UCRRA: 38–41 °C, large heaps; small ones cool sooner). */
const ENDED_BELOW_CELSIUS = 36;

/** Above this a heap is past its start-up, give or take 4 °C (UCRRA: 40–45 °C within 1–3 days). */
const STARTED_ABOVE_CELSIUS = 45;

/**
 * How well a reading fits each state: finished up to 10 K over the air, curing to 20 K, hot above (CCQC-2001), unless it
 * is below the end of active rotting. A raw heap may lie cold for want of size or water, so a low reading says little
 * against "fresh"; one well above 45 °C is past it.
 */
function likelihoodOfReading(celsius: number, airCelsius: number, airSd: number): StateChances {
  const sd = Math.hypot(RISE_SD, airSd);
  const rise = celsius - airCelsius;
  const below = (limit: number): number => normalBelow((limit - rise) / sd);
  const [cool, hot] = [below(SELF_HEATING.veryMatureBelow), 1 - below(SELF_HEATING.matureBelow)];
  const warm = Math.max(0, 1 - cool - hot);
  const active = normalBelow((celsius - ENDED_BELOW_CELSIUS) / 5);
  const starting = normalBelow((STARTED_ABOVE_CELSIUS - celsius) / 4);
  return {
    finished: cool,
    curing: warm + hot * (1 - active),
    hot: hot * active,
    fresh: 0.45 * cool + (0.35 * warm + 0.2 * hot) * starting,
  };
}

/**
 * States of heaps of an age. Half of them are past their heat after six weeks ("30 °C after six or seven weeks is
 * nearly ready": common practice, no source) and ripe after twenty (curing takes weeks to months: UCRRA).
 */
function chancesAtAge(weeks: number): StateChances {
  const spread = 0.6;
  const past = (median: number): number => (weeks > 0 ? normalBelow(Math.log(weeks / median) / spread) : 0);
  const working = 1 - past(6);
  const finished = past(20);
  // Heat comes within days (UCRRA); some heaps never heat and stay raw.
  const fresh = working * (0.25 + 0.75 * Math.exp(-weeks));
  return { fresh, hot: working - fresh, curing: Math.max(0, 1 - working - finished), finished };
}

/**
 * P(the grower calls it so | state): growers go by looks and by touch, and brown colour or a good smell prove nothing
 * (CCQC-INTRO). Our own estimate.
 */
const TOLD: Record<CompostState, Readonly<Record<NonNullable<HeapKnown['told']>, number>>> = {
  finished: { finished: 0.95, fresh: 0.02, 'still-warm': 0.025, hot: 0.005 },
  curing: { finished: 0.3, fresh: 0.05, 'still-warm': 0.6, hot: 0.05 },
  fresh: { finished: 0.06, fresh: 0.8, 'still-warm': 0.1, hot: 0.04 },
  hot: { finished: 0.05, fresh: 0.1, 'still-warm': 0.13, hot: 0.72 },
};

/** P(a smell of ammonia | state): it counts also where the heap is cool (SOLVITA-NOTE). Our own estimate. */
const AMMONIA: StateChances = { fresh: 0.5, hot: 0.5, curing: 0.1, finished: 0.01 };

/**
 * P(a sowing test is passed | state). Cress, radish and Chinese cabbage were found not sensitive enough to tell ripe from unripe
 * compost (GERM-COMP), so a test that is passed says little; one that fails says more. Our own estimate.
 */
const SOWN: StateChances = { fresh: 0.6, hot: 0.5, curing: 0.8, finished: 0.92 };

/** Chances of the four states of a heap from whatever is known of it; they sum to 1. */
export function judgeCompost(known: HeapKnown, air: AssumedAir = SOME_AIR): StateChances {
  const { celsius, airCelsius, ageWeeks, smellsOfAmmonia, told, sown } = known;
  const start = ageWeeks === undefined ? SHARES[known.kind ?? 'compost'] : chancesAtAge(ageWeeks);
  const reading =
    celsius === undefined
      ? undefined
      : likelihoodOfReading(celsius, airCelsius ?? air.celsius, airCelsius === undefined ? air.sd : 0);
  const weights = COMPOST_STATES.map((state) => {
    // No state is ever quite excluded: a thermometer may be misread.
    let weight = start[state] + 0.001;
    if (reading) weight *= reading[state] + 0.0003;
    if (told !== undefined) weight *= TOLD[state][told];
    if (smellsOfAmmonia !== undefined) weight *= smellsOfAmmonia ? AMMONIA[state] : 1 - AMMONIA[state];
    if (sown !== undefined) weight *= sown === 'passed' ? SOWN[state] : 1 - SOWN[state];
    return weight;
  });
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return Object.fromEntries(COMPOST_STATES.map((state, i) => [state, weights[i]! / sum])) as Record<
    CompostState,
    number
  >;
}
