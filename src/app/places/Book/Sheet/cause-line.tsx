import type { RankedCause } from '../../../../ranker/types.ts';
import type { KeptLook, KeptRanking } from '../../../state/kept.ts';
import { capitalise, causeName } from '../../../words/causes.ts';
import { describeReason } from '../../../words/reasons.ts';
import { SHEET_PARTS as WORDS } from '../../../words/sheet-parts.ts';
import { sayChance } from '../../../words/weighing.ts';

interface CauseLineProps {
  readonly cause: RankedCause;
  readonly look: KeptLook;
  readonly ranking: KeptRanking;
  /** So many reasons for it, and so many against it, the heaviest first. */
  readonly reasons: number;
}

/** A cause in a paragraph: how likely, and what speaks for and against it. */
export function CauseLine({ cause, look, ranking, reasons }: CauseLineProps) {
  const reported = { answers: look.answers, findings: ranking.findings };
  const heaviest = (all: RankedCause['for']): string =>
    [...all]
      .sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans))
      .slice(0, reasons)
      .map((reason) => describeReason(reason, reported).says)
      .join('; ');
  const [speaksFor, against] = [heaviest(cause.for), heaviest(cause.against)];
  return (
    <p>
      <strong>{capitalise(causeName(cause.id))}</strong>: {sayChance(cause, ranking.nothingSaid)}.
      {speaksFor && ` ${capitalise(WORDS.for)}: ${speaksFor}.`}
      {against && ` ${capitalise(WORDS.against)}: ${against}.`}
    </p>
  );
}

/** The causes that are still open, likeliest first. */
export const openCauses = ({ causes }: KeptRanking): RankedCause[] =>
  causes.filter(({ ruledOut }) => ruledOut === undefined);
