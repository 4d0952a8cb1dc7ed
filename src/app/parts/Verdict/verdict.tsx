import './verdict.css';
import { VERDICT_PART_WORDS as WORDS } from '../../words/verdict-parts.ts';
import { describeVerdict, type Judged } from '../../words/verdicts.ts';

/** The verdict: a sentence first, then why, then what would change it, then cautions. */
export function VerdictWords({ judged, today }: { readonly judged: Judged; readonly today: string }) {
  const { id, headline, byThen, why, courses, change, cautions } = describeVerdict(judged, today);
  return (
    <section class="verdict stack" aria-labelledby="verdict-title" id="verdict" data-verdict={id}>
      <h2 class="verdict-headline" id="verdict-title">
        {headline}
      </h2>
      <Part title={WORDS.byThen} lines={byThen} />
      <Part title={WORDS.why} lines={why} />
      <Part title={id === 'act' ? WORDS.alsoDo : WORDS.ifItComesToIt} lines={courses} />
      <Part title={WORDS.change} lines={change} />
      <Part title={WORDS.cautions} lines={cautions} quiet />
    </section>
  );
}

function Part({
  title,
  lines,
  quiet = false,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly quiet?: boolean;
}) {
  if (lines.length === 0) return null;
  return (
    <div class="verdict-part">
      <h3>{title}</h3>
      <ul class={quiet ? 'stack-close small' : 'stack-close'}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
