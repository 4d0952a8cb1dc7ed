import './verdict.css';
import type { ComponentChildren } from 'preact';
import { hashOf } from '../../state/route.ts';
import { VERDICT_PART_WORDS as WORDS } from '../../words/verdict-parts.ts';
import { type Change, describeVerdict, type Judged } from '../../words/verdicts.ts';
import { TermsOf } from '../Terms/terms-of.tsx';
import { WithTerms } from '../Terms/with-terms.tsx';

interface VerdictProps {
  readonly judged: Judged;
  /** `YYYY-MM-DD` */
  readonly today: string;
  /** Puts one of the questions that would change the verdict; without it they are only named. */
  readonly onAsk?: (id: string) => void;
}

/** The verdict: a sentence first, then why, then what would change it, then cautions. */
export function VerdictWords({ judged, today, onAsk }: VerdictProps) {
  const { id, headline, byThen, checkToMake, why, elsewhere, meanwhile, courses, change, cautions } =
    describeVerdict(judged, today);
  return (
    <section class="verdict stack" aria-labelledby="verdict-title" id="verdict" data-verdict={id}>
      <h2 class="verdict-headline" id="verdict-title">
        <WithTerms>{headline}</WithTerms>
      </h2>
      {checkToMake && onAsk && (
        <button type="button" class="button" onClick={() => onAsk(checkToMake)}>
          {WORDS.enterCheck}
        </button>
      )}
      {checkToMake === 'pot-test' && (
        <a class="button" href={hashOf({ place: 'book', pots: 'plan' })}>
          {WORDS.sowPots}
        </a>
      )}
      <Part title={id === 'check' || id === 'act' ? WORDS.afterThat : WORDS.byThen} lines={byThen} />
      <Part title={WORDS.why} lines={why} />
      <Part title={WORDS.elsewhere} lines={elsewhere} />
      <Part title={WORDS.meanwhile} lines={meanwhile} />
      <Part title={id === 'act' ? WORDS.alsoDo : WORDS.ifItComesToIt} lines={courses} />
      <Part
        title={WORDS.change}
        lines={change.map((one) => <ChangeLine key={one.id} change={one} {...(onAsk ? { onAsk } : {})} />)}
      />
      {onAsk && <TermsOf says={change.map(({ what }) => what)} />}
      <Part title={WORDS.cautions} lines={cautions} quiet />
    </section>
  );
}

interface ChangeProps {
  readonly change: Change;
  readonly onAsk?: (id: string) => void;
}

function ChangeLine({ change: { id, what, detail }, onAsk }: ChangeProps) {
  return (
    <>
      {onAsk ? (
        <button type="button" class="button-words" onClick={() => onAsk(id)}>
          {what}
        </button>
      ) : (
        <WithTerms>{what}</WithTerms>
      )}
      <span class="verdict-detail small soft">
        <WithTerms>{detail}</WithTerms>
      </span>
    </>
  );
}

interface PartProps {
  readonly title: string;
  readonly lines: readonly ComponentChildren[];
  readonly quiet?: boolean;
}

function Part({ title, lines, quiet = false }: PartProps) {
  if (lines.length === 0) return null;
  return (
    <div class="verdict-part">
      <h3>{title}</h3>
      <ul class={quiet ? 'stack-close small' : 'stack-close'}>
        {lines.map((line, index) => (
          <li key={typeof line === 'string' ? line : index}>
            {typeof line === 'string' ? <WithTerms>{line}</WithTerms> : line}
          </li>
        ))}
      </ul>
    </div>
  );
}
