import type { RankedCause, Reason, Together } from '../../../ranker/types.ts';
import type { FamilyId } from '../../../signs/vocabulary.ts';

/** A cause is leading from this chance on; fewer than three lines would weigh nothing against anything. */
const LEADING_CHANCE = 0.06;
const FEWEST = 3;
const MOST = 7;
/** Sets that act together are tied from this chance on. */
const TIED_CHANCE = 0.04;
const MOST_TIES = 2;
/** Reasons lighter than this share one block: alone they would be too narrow to touch. */
const SMALL_DECIBANS = 0.6;
/** A beam always has this much room on either side, so that a first small reason does not fill the page. */
const LEAST_SIDE_DECIBANS = { for: 12, against: 6 };

export interface Block {
  readonly reasons: readonly Reason[];
  readonly decibans: number;
}

export interface WeighedLine {
  readonly cause: RankedCause;
  /** Heaviest nearest the fulcrum. */
  readonly for: readonly Block[];
  readonly against: readonly Block[];
  /** Sum of both sides: which way the beam dips. */
  readonly net: number;
  /** Row of the grid, counted from 1; family headings take a row too. */
  readonly row: number;
}

export interface WeighingLayout {
  readonly families: readonly {
    readonly family: FamilyId;
    readonly row: number;
    readonly lines: readonly WeighedLine[];
  }[];
  readonly rest: readonly RankedCause[];
  readonly ruledOut: readonly RankedCause[];
  /** Longest side of any beam, decibans. */
  readonly mostFor: number;
  readonly mostAgainst: number;
  readonly ties: readonly { readonly together: Together; readonly rows: readonly number[] }[];
}

/** Groups the leading causes by family, family with the likeliest cause first, and ties what acts together. Pure. */
export function layOutWeighing(
  causes: readonly RankedCause[],
  together: readonly Together[],
): WeighingLayout {
  const open = causes.filter(({ ruledOut }) => ruledOut === undefined);
  const count = Math.min(
    MOST,
    Math.max(FEWEST, open.filter(({ probability }) => probability >= LEADING_CHANCE).length),
  );
  const leading = open.slice(0, count);
  const byFamily = new Map<FamilyId, RankedCause[]>();
  for (const cause of leading) byFamily.set(cause.family, [...(byFamily.get(cause.family) ?? []), cause]);
  let row = 0;
  const families = [...byFamily].map(([family, members]) => {
    row += 1;
    const headingRow = row;
    const lines = members.map((cause) => {
      row += 1;
      return weighLine(cause, row);
    });
    return { family, row: headingRow, lines };
  });
  const lines = families.flatMap((family) => family.lines);
  return {
    families,
    rest: open.slice(count),
    ruledOut: causes.filter(({ ruledOut }) => ruledOut !== undefined),
    mostFor: Math.max(LEAST_SIDE_DECIBANS.for, ...lines.map((line) => sum(line.for))),
    mostAgainst: Math.max(LEAST_SIDE_DECIBANS.against, ...lines.map((line) => sum(line.against))),
    ties: tie(together, lines),
  };
}

const sum = (blocks: readonly Block[]): number => blocks.reduce((all, { decibans }) => all + decibans, 0);

function weighLine(cause: RankedCause, row: number): WeighedLine {
  const forIt = toBlocks(cause.for);
  const against = toBlocks(cause.against);
  return { cause, for: forIt, against, net: sum(forIt) - sum(against), row };
}

function toBlocks(reasons: readonly Reason[]): Block[] {
  const sorted = [...reasons].sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans));
  const large = sorted.filter(({ decibans }) => Math.abs(decibans) >= SMALL_DECIBANS);
  const small = sorted.filter(({ decibans }) => Math.abs(decibans) < SMALL_DECIBANS);
  const blocks: Block[] = large.map((reason) => ({ reasons: [reason], decibans: Math.abs(reason.decibans) }));
  const rest = small.reduce((all, { decibans }) => all + Math.abs(decibans), 0);
  return rest > 0 ? [...blocks, { reasons: small, decibans: rest }] : blocks;
}

function tie(together: readonly Together[], lines: readonly WeighedLine[]): WeighingLayout['ties'] {
  const rowOf = new Map<string, number>(lines.map(({ cause, row }) => [cause.id, row]));
  return (
    together
      // What this tool does not know may act together with anything; a bracket would say nothing.
      .filter(({ probability, causes }) => probability >= TIED_CHANCE && !causes.includes('unlisted'))
      .map((set) => ({
        together: set,
        rows: set.causes.flatMap((id) => rowOf.get(id) ?? []).sort((a, b) => a - b),
      }))
      .filter(({ together: { causes }, rows }) => rows.length === causes.length)
      .slice(0, MOST_TIES)
  );
}
