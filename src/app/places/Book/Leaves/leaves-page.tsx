import './leaves.css';
import { useEffect, useState } from 'preact/hooks';
import { countMarks, isEnough } from '../../../../classifier/own-head/learn-own-head.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { garden } from '../../../state/garden.ts';
import { cases, forgetUntil } from '../../../state/kept.ts';
import type { GatheredExamples } from '../../../state/leaf-examples.ts';
import { leafLearning, learnFrom, readExamples, stopLearning } from '../../../state/learn-leaves.ts';
import { network } from '../../../state/network.ts';
import { ownHead } from '../../../state/own-head.ts';
import { hashOf } from '../../../state/route.ts';
import { OWN_LEAVES_WORDS as WORDS } from '../../../words/own-leaves.ts';
import { LearntPart } from './learnt-part.tsx';
import { MarkCounts } from './mark-counts.tsx';

/** The photos that can teach, read again whenever cases or healthy leaves change. */
function useExamples(): GatheredExamples | undefined {
  const [found, setFound] = useState<GatheredExamples | undefined>(undefined);
  const [allCases, ground, since] = [cases.value, garden.value, forgetUntil.value];
  useEffect(() => {
    let left = false;
    if (allCases && ground)
      void readExamples().then((examples) => {
        if (!left) setFound(examples);
      });
    return () => {
      left = true;
    };
  }, [allCases, ground, since]);
  return found;
}

/** What the network learns from this garden's leaves: what there is, what is missing, learning it, what came of it. */
export function LeavesPage() {
  const found = useExamples();
  return (
    <article class="leaves stack-wide" aria-busy={found === undefined}>
      <div>
        <BackLink to={{ place: 'book', page: 'taught' }} says={WORDS.toTaught} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        <p>{WORDS.lead}</p>
      </div>
      {found && <Has found={found} />}
      {found && <Learn found={found} />}
      <LearntPart photos={found?.examples.length} />
      <section class="stack-close">
        <h2>{WORDS.how}</h2>
        {WORDS.howLines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
    </article>
  );
}

function Has({ found: { examples, healthy, unseen, unlike } }: { readonly found: GatheredExamples }) {
  const plantings = new Set(examples.map(({ planting }) => planting)).size;
  return (
    <section class="stack-close">
      <h2>{WORDS.has}</h2>
      <p>{WORDS.counts(examples.length, plantings, healthy)}</p>
      {unseen > 0 && <p>{WORDS.unseen(unseen)}</p>}
      {unlike > 0 && <p>{WORDS.unlike(unlike)}</p>}
      <MarkCounts counts={countMarks(examples)} />
    </section>
  );
}

/** The one button, and how far it is. */
function Learn({ found }: { readonly found: GatheredExamples }) {
  const now = leafLearning.value;
  const hasEnough = countMarks(found.examples).some(isEnough);
  const isOff = network.value.at !== 'kept';
  return (
    <section class="stack-close">
      {isOff && (
        <p>
          {WORDS.isOff} <a href={hashOf({ place: 'help' })}>{WORDS.toHelp}</a>
        </p>
      )}
      {!hasEnough && found.examples.length > 0 && <p>{WORDS.notEnough}</p>}
      {now.at === 'learning' ? (
        <Progress share={now.share} />
      ) : (
        hasEnough &&
        !isOff && (
          <button type="button" class="button next" onClick={() => void learnFrom(found)}>
            {ownHead.value ? WORDS.learnAgain : WORDS.learn}
          </button>
        )
      )}
      <div role="status">
        {now.at === 'stopped' && <p>{WORDS.stopped}</p>}
        {now.at === 'failed' && <p>{WORDS.failed}</p>}
        {now.at === 'not-kept' && <p>{WORDS.notKept}</p>}
      </div>
    </section>
  );
}

function Progress({ share }: { readonly share: number }) {
  return (
    <div class="leaves-progress">
      <progress aria-label={WORDS.learning} value={share} max={1} />
      <span class="small figures">{WORDS.done(share)}</span>
      <button type="button" class="button" onClick={stopLearning}>
        {WORDS.stop}
      </button>
    </div>
  );
}
