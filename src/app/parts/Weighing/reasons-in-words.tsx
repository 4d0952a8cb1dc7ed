import type { RankedCause, Reason } from '../../../ranker/types.ts';
import { capitalise } from '../../words/causes.ts';
import { describeReason, type Reported } from '../../words/reasons.ts';
import { sayStart, WEIGHING_WORDS as WORDS } from '../../words/weighing.ts';
import { describeWeight } from '../../words/weights.ts';
import { WithTerms } from '../Terms/with-terms.tsx';

/** Everything that lies on a beam, as a list: the same content for those who read rather than look. */
export function ReasonsInWords({
  cause,
  reported,
}: {
  readonly cause: RankedCause;
  readonly reported: Reported;
}) {
  return (
    <div class="reasons stack-close">
      <p class="small soft">{sayStart(cause.priorDecibans)}</p>
      <Side title={WORDS.forIt} none={WORDS.nothingFor} reasons={cause.for} reported={reported} />
      <Side title={WORDS.againstIt} none={WORDS.nothingAgainst} reasons={cause.against} reported={reported} />
    </div>
  );
}

interface SideProps {
  readonly title: string;
  readonly none: string;
  readonly reasons: readonly Reason[];
  readonly reported: Reported;
}

function Side({ title, none, reasons, reported }: SideProps) {
  if (reasons.length === 0) return <p class="small soft">{none}</p>;
  const sorted = [...reasons].sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans));
  return (
    <>
      <p class="reasons-side">{title}</p>
      <ul>
        {sorted.map((reason) => {
          const { says, by, because } = describeReason(reason, reported);
          return (
            <li key={reason.sign} class="reason">
              <span>
                <WithTerms>{capitalise(says)}</WithTerms>
                {because && (
                  <span class="soft">
                    : <WithTerms>{because}</WithTerms>
                  </span>
                )}
              </span>
              <span class="small soft">
                {describeWeight(reason.decibans)} · {by}
              </span>
            </li>
          );
        })}
      </ul>
    </>
  );
}
