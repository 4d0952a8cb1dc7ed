import { CAUSES, type CauseId } from '../signs/vocabulary.ts';
import {
  brierScore,
  type Forecast,
  logLoss,
  type ReliabilityBin,
  reliabilityTable,
} from './score-forecasts.ts';

/** Chances as they were shown at one look, by cause. Causes below `LEAST_KEPT` are left out. */
export type ShownChances = { readonly [Id in CauseId]?: number };

/** Chances below this are not kept with a case; one that is missing is scored as half of it. */
export const LEAST_KEPT = 0.001;
/** From this chance on a cause has a line of its own on the screen; only those go into the reliability table. */
const SHOWN_FROM = 0.06;
/** A garden has few cases: five bins of two in ten each. */
const BINS = 5;

/** One settled case: what it turned out to be, what was shown, and what the table alone would have said. */
export interface JudgedLook {
  readonly causes: readonly CauseId[];
  readonly shown: ShownChances;
  readonly tableAlone: ShownChances;
}

/** How well a set of forecasts did, each cause of each case being one yes-or-no forecast. */
export interface ForecastScore {
  /** Mean over the cases of the sum of squares: 0 is perfect (BRIER). */
  readonly brier: number;
  /** Nats a case, summed over the causes: 0 is perfect. */
  readonly logLoss: number;
}

export interface GardenScore {
  readonly cases: number;
  /** Cases in which a cause that came true led, or was among the first three. */
  readonly first: number;
  readonly inFirstThree: number;
  readonly shown: ForecastScore;
  /** The same cases, had the base rates for crop and season been all that was said. */
  readonly tableAlone: ForecastScore;
  readonly reliability: readonly ReliabilityBin[];
}

function forecastsOf(chances: ShownChances, causes: readonly CauseId[]): Forecast[] {
  return CAUSES.map(({ id }) => ({
    probability: chances[id] ?? LEAST_KEPT / 2,
    happened: causes.includes(id),
  }));
}

function scoreOf(cases: readonly (readonly Forecast[])[]): ForecastScore {
  const all = cases.flat();
  const nats = all.reduce(
    (sum, { probability, happened }) => sum + logLoss(happened ? probability : 1 - probability),
    0,
  );
  return { brier: brierScore(all) * CAUSES.length, logLoss: nats / cases.length };
}

/** Place of the likeliest cause that came true, counted from 1. A tie goes against the tool. */
function placeOf({ causes, shown }: JudgedLook): number {
  const best = Math.max(...causes.map((id) => shown[id] ?? 0));
  return 1 + CAUSES.filter(({ id }) => !causes.includes(id) && (shown[id] ?? 0) >= best).length;
}

/** The tool's own score over settled cases; `undefined` without any. */
export function scoreLooks(looks: readonly JudgedLook[]): GardenScore | undefined {
  if (looks.length === 0) return undefined;
  const places = looks.map(placeOf);
  const shown = looks.map((look) => forecastsOf(look.shown, look.causes));
  return {
    cases: looks.length,
    first: places.filter((place) => place === 1).length,
    inFirstThree: places.filter((place) => place <= 3).length,
    shown: scoreOf(shown),
    tableAlone: scoreOf(looks.map((look) => forecastsOf(look.tableAlone, look.causes))),
    reliability: reliabilityTable(
      shown.flat().filter(({ probability }) => probability >= SHOWN_FROM),
      BINS,
    ),
  };
}
