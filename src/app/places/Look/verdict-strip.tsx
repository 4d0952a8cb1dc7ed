import { useEffect, useState } from 'preact/hooks';
import { useHeightAs } from '../../parts/OnUse/height-as.ts';
import { showPart } from '../../parts/OnUse/keep-focus.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { verdictInShort } from './verdict-in-short.ts';

/** On a phone the verdict stands one thumb away, above the tabs. */
export function VerdictStrip() {
  const says = verdictInShort.value;
  return says ? <Strip says={says} /> : null;
}

function Strip({ says }: { readonly says: string }) {
  // However high it is, the page can be scrolled free of it.
  const strip = useHeightAs('--strip');
  const atQuestion = useQuestionInView();
  return (
    <div class="verdict-strip" ref={strip}>
      <button
        type="button"
        class="strip-verdict"
        aria-label={`${WORDS.strip}: ${says}`}
        onClick={() => showPart('verdict')}
      >
        <span>{says}</span>
      </button>
      {!atQuestion && (
        <button type="button" class="strip-question" onClick={() => showPart('question')}>
          {WORDS.stripQuestion}
        </button>
      )}
    </div>
  );
}

/** What of the screen counts as in view: not what lies under the strip, the tabs or the reader's thumb. */
const IN_VIEW = '-10% 0px -25% 0px';

/** Is the question before the reader already? */
function useQuestionInView(): boolean {
  const [inView, setInView] = useState(false);
  useEffect(() => {
    const question = document.getElementById('question');
    if (!question) return;
    const observer = new IntersectionObserver((seen) => setInView(seen.at(-1)?.isIntersecting ?? false), {
      rootMargin: IN_VIEW,
    });
    observer.observe(question);
    return () => observer.disconnect();
  }, []);
  return inView;
}
