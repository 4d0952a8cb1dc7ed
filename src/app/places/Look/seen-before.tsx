import { Segments } from '../../parts/Choice/segments.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { change } from '../../state/change-look.ts';
import { earlierLooks, lookBefore } from '../../state/earlier-looks.ts';
import { draft } from '../../state/look-in-hand.ts';
import { youngMarksBefore } from '../../state/seen-before.ts';
import { capitalise } from '../../words/causes.ts';
import { describeDayShortly } from '../../words/dates.ts';
import { SEEN_BEFORE_WORDS as WORDS } from '../../words/seen-before.ts';
import { sayShortly } from '../../words/signs.ts';
import { sayLook, sayRecovery } from '../../words/verdicts.ts';

/** At the top of a later look: that earlier ones count, and what the young leaves showed last time, to be said again. */
export function SeenBefore() {
  const earlier = earlierLooks.value;
  if (earlier.length === 0) return null;
  const marks = youngMarksBefore(earlier);
  const said: Readonly<Record<string, 'seen' | 'absent' | undefined>> = draft.value.answers.signs;
  return (
    <section class="stack-close" aria-labelledby="seen-before">
      <h2 id="seen-before">{WORDS.title}</h2>
      <p class="small soft">{WORDS.counts(earlier.length)}</p>
      <MadeOfIt />
      {marks.map((sign) => (
        <Segments
          key={sign}
          legend={capitalise(sayShortly(sign))}
          name={`before-${sign}`}
          options={[
            { id: 'seen', says: WORDS.still },
            { id: 'absent', says: WORDS.gone },
          ]}
          value={said[sign]}
          onChange={(answer) => change({ kind: 'answer-signs', signs: { [sign]: answer } })}
        />
      ))}
    </section>
  );
}

/** The verdict of last time, and what it promised. */
function MadeOfIt() {
  const look = lookBefore.value;
  if (!look?.ranking) return null;
  const { verdict, causes } = look.ranking;
  const promised = sayRecovery(look.ranking);
  const leading = causes.slice(0, 1).map(({ id }) => id);
  return (
    <>
      <p>
        {WORDS.madeOfIt(capitalise(describeDayShortly(look.date)), sayLook({ verdict: verdict.id, leading }))}
      </p>
      {promised.length > 0 && (
        <>
          <p class="small soft">{WORDS.byNow}</p>
          <ul class="small">
            {promised.map((says) => (
              <li key={says}>
                <WithTerms>{says}</WithTerms>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
