import { drawBeta, fingerprint, seededUniform } from './draw-beta.ts';
import { meanTables, type Network, type Tables } from './network.ts';

/** Draws of all tables of a network from their Beta distributions. */
export interface TableDraws {
  readonly count: number;
  readonly means: Tables;
  /** The tables of one draw; written over by the next call. */
  tables(draw: number): Tables;
}

/** Draws of the entries of one sign that are uncertain: `[entry × count + draw]`. */
interface SignDraws {
  /** Places in `network.q`. */
  readonly entries: readonly number[];
  readonly values: Float64Array;
}

interface QDraws {
  readonly q: Float64Array;
  readonly bySign: Map<string, SignDraws>;
}

/** Kept by the very tables that they are drawn from: a garden's own rates leave the draws of the signs as they are. */
const RATES = new WeakMap<Network['rate'], Map<number, Float64Array[]>>();
const SIGNS = new WeakMap<Float64Array, QDraws>();

function rateDraws({ causes, rate }: Network, count: number): Float64Array[] {
  const byCount = RATES.get(rate) ?? new Map<number, Float64Array[]>();
  RATES.set(rate, byCount);
  const known = byCount.get(count);
  if (known) return known;
  const draws = Array.from({ length: count }, () => new Float64Array(causes.length));
  causes.forEach((id, cause) => {
    const uniform = seededUniform(fingerprint(id));
    const { mean, observations } = rate[cause]!;
    for (const draw of draws) draw[cause] = drawBeta(mean, observations, uniform);
  });
  byCount.set(count, draws);
  return draws;
}

function signDraws({ causes, signs, q, qObservations }: Network, sign: number, count: number): SignDraws {
  const kept = SIGNS.get(qObservations);
  const { bySign } = kept?.q === q ? kept : { bySign: new Map<string, SignDraws>() };
  SIGNS.set(qObservations, { q, bySign });
  const key = `${sign}/${count}`;
  const known = bySign.get(key);
  if (known) return known;
  const uncertain = causes
    .map((id, cause) => ({ id, entry: cause * signs.length + sign }))
    .filter(({ entry }) => q[entry]! > 0 && qObservations[entry]! > 0);
  const values = new Float64Array(uncertain.length * count);
  uncertain.forEach(({ id, entry }, row) => {
    const uniform = seededUniform(fingerprint(`${id} ${signs[sign]}`));
    for (let draw = 0; draw < count; draw++)
      values[row * count + draw] = drawBeta(q[entry]!, qObservations[entry]!, uniform);
  });
  const made: SignDraws = { entries: uncertain.map(({ entry }) => entry), values };
  bySign.set(key, made);
  return made;
}

/**
 * Common random numbers: the same draw of the same table entry whatever else is asked, so ranges move only with the
 * evidence.
 * @param signs those whose entries are drawn; all others stay at their means
 */
export function drawTables(network: Network, signs: readonly number[], count: number): TableDraws {
  const rates = rateDraws(network, count);
  const drawn = [...new Set(signs)].map((sign) => signDraws(network, sign, count));
  const q = Float64Array.from(network.q);
  return {
    count,
    means: meanTables(network),
    tables(draw) {
      for (const { entries, values } of drawn) {
        for (let row = 0; row < entries.length; row++) q[entries[row]!] = values[row * count + draw]!;
      }
      return { rate: rates[draw]!, q };
    },
  };
}
