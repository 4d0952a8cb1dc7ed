import { Segments } from '../../parts/Choice/segments.tsx';
import { earlierLooks } from '../../state/earlier-looks.ts';
import { change, draft } from '../../state/look-session.ts';
import { youngMarksBefore } from '../../state/seen-before.ts';
import { capitalise } from '../../words/causes.ts';
import { SEEN_BEFORE_WORDS as WORDS } from '../../words/seen-before.ts';
import { sayShortly } from '../../words/signs.ts';

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
