import bayesjs from 'bayesjs';
import { enumerateSets } from '../../ranker/enumerate-sets.ts';
import { type Evidence, NO_EVIDENCE } from '../../ranker/evidence.ts';
import { AS_THE_TABLES_SAY, meanTables, type Network } from '../../ranker/network.ts';
import { marginals, normalise, weighSets } from '../../ranker/weigh-sets.ts';
import { type BenchRow, medianMs } from './median-ms.ts';

/** Small enough for full tables: every report has one row for each choice of the causes that can show its sign. */
const CAUSES = 6;
const REPORTS = 12;

type Library = Parameters<typeof bayesjs.infer>[0];

/** The first causes of a network, with all its signs. */
function firstCauses(network: Network, count: number): Network {
  const width = network.signs.length;
  return {
    ...network,
    causes: network.causes.slice(0, count),
    rate: network.rate.slice(0, count),
    q: network.q.slice(0, count * width),
    qObservations: network.qObservations.slice(0, count * width),
    factors: [],
    evidenceWeight: AS_THE_TABLES_SAY,
  };
}

const choicesOf = (ids: readonly string[]): string[][] =>
  Array.from({ length: 2 ** ids.length }, (_, mask) => ids.filter((_, bit) => mask & (1 << bit)));
const asParents = (ids: readonly string[], acting: readonly string[]): Record<string, string> =>
  Object.fromEntries(ids.map((id) => [id, acting.includes(id) ? 'yes' : 'no']));

/**
 * The same network in full tables, for a library that knows nothing of noisy-OR: causes without parents, a node for each
 * report below the causes that can show its sign, and one node below all causes that says how many may act together and what
 * each further one costs.
 */
export function expandToTables(
  network: Network,
  evidence: Evidence,
): { library: Library; given: Record<string, string> } {
  const width = network.signs.length;
  const node = (id: string, parents: readonly string[], chanceOf: (acting: string[]) => number) => ({
    id,
    states: ['yes', 'no'],
    parents: [...parents],
    cpt: choicesOf(parents).map((acting) => {
      const yes = chanceOf(acting);
      // biome-ignore lint/suspicious/noThenProperty: the library's own name for the chances in a row of a table
      return { when: asParents(parents, acting), then: { yes, no: 1 - yes } };
    }),
  });
  const causes = network.causes.map((id, cause) => {
    const yes = network.rate[cause]!.mean;
    return { id, states: ['yes', 'no'], parents: [], cpt: { yes, no: 1 - yes } };
  });
  const counted = node('counted', network.causes, ({ length }) =>
    length >= 1 && length <= 3 ? network.furtherCause ** (length - 1) : 0,
  );
  const reports = evidence.signs.map(({ label, sign, ifPresent, ifAbsent }) => {
    const q = (id: string): number => network.q[network.causes.indexOf(id) * width + sign]!;
    return node(
      `report ${label}`,
      network.causes.filter((id) => q(id) > 0),
      (acting) => {
        const absent = acting.reduce((product, id) => product * (1 - q(id)), 1 - network.leak[sign]!);
        return ifPresent * (1 - absent) + ifAbsent * absent;
      },
    );
  });
  const all = [...causes, counted, ...reports];
  return {
    library: Object.fromEntries(all.map((one) => [one.id, one])) as Library,
    given: Object.fromEntries([counted, ...reports].map(({ id }) => [id, 'yes'])),
  };
}

/** P(cause acts) of every cause, by the library's default engine, a junction tree. */
function byLibrary(causes: readonly string[], library: Library, given: Record<string, string>): number[] {
  // A new object each time: the library keeps results by the object that holds the evidence.
  const now = { ...given };
  return causes.map((id) => bayesjs.infer(library, { [id]: 'yes' }, now));
}

function byRanker(network: Network, evidence: Evidence): Float64Array {
  const causes = network.causes.map((_, cause) => cause);
  const sets = enumerateSets(causes.length, causes);
  return marginals(causes.length, sets, normalise(weighSets(network, meanTables(network), sets, evidence)));
}

/**
 * One full ranking of a sub-network, here and by a general library for exact inference (bayesjs 0.6.5), on the very same
 * tables and reports.
 * @throws Error if the answers differ by more than 1e-9
 */
export function benchLibrary(full: Network, evidence: Evidence): BenchRow[] {
  const network = firstCauses(full, CAUSES);
  const known: Evidence = { ...NO_EVIDENCE, signs: evidence.signs.slice(0, REPORTS) };
  const { library, given } = expandToTables(network, known);
  const ours = byRanker(network, known);
  byLibrary(network.causes, library, given).forEach((p, cause) => {
    if (!(Math.abs(p - ours[cause]!) < 1e-9))
      throw new Error(`bench: ${network.causes[cause]} is ${ours[cause]} here and ${p} by the library`);
  });
  const note = `${CAUSES} causes, ${REPORTS} findings`;
  const here = medianMs(() => byRanker(network, known), 201);
  const there = medianMs(() => byLibrary(network.causes, library, given));
  return [
    { name: 'sub-network: here', ms: here, note },
    {
      name: 'sub-network: bayesjs, junction tree',
      ms: there,
      note: `${note}, same answers; ${Math.round(there / here)} × here`,
    },
  ];
}
