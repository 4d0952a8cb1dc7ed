import { useState } from 'preact/hooks';
import type { CaseRecord, LookSummary } from '../../../garden/records.ts';
import {
  cases,
  closeCase,
  deleteCase,
  type KeptLook,
  reopenCase,
  store,
  tryStore,
} from '../../state/kept.ts';
import { laterLook } from '../../state/later-look.ts';
import { startLook } from '../../state/look-session.ts';
import { thumbnailOf, usePicture } from '../../state/pictures.ts';
import { goTo, hashOf } from '../../state/route.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { capitalise, causeName, joinWords } from '../../words/causes.ts';
import { cropName } from '../../words/crops.ts';
import { dayOf, describeDay, describeDayAndYear, describeDistance } from '../../words/dates.ts';
import { verdictWord } from '../../words/verdicts.ts';

const WORDS = BOOK_WORDS.case;

/** One case: how it stands, its looks, and what can be done with it. */
export function CasePage({ caseId }: { readonly caseId: string }) {
  const kept = cases.value?.find(({ id }) => id === caseId);
  if (!cases.value) return <h1 tabIndex={-1}>…</h1>;
  if (!kept || kept.deletedAt) return <NotThere />;
  const today = dayOf(new Date());
  const last = kept.looks.at(-1);
  const names = [cropName(kept.crop), kept.variety].filter(Boolean).join(', ');
  return (
    <article class="case stack-wide">
      <div>
        <p class="small">
          <a class="back" href={hashOf({ place: 'book' })}>
            {BOOK_WORDS.toBook}
          </a>
        </p>
        <h1 tabIndex={-1}>{kept.plant}</h1>
        <p class="soft">
          {[names, WORDS.inBed(kept.bed), WORDS.opened(describeDayAndYear(kept.openedOn))]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </div>
      {kept.closedOn ? (
        <p>{WORDS.closedOn(describeDay(kept.closedOn, today))}</p>
      ) : (
        last?.lookAgain && (
          <p class="case-due">
            {WORDS.lookAgain(describeDay(last.lookAgain, today), describeDistance(last.lookAgain, today))}
          </p>
        )
      )}
      {!kept.closedOn && (
        <p>
          <button type="button" class="button next" onClick={() => void lookAgain(kept, today)}>
            {WORDS.addLook}
          </button>
        </p>
      )}
      <section class="stack-close">
        <h2>{WORDS.looks}</h2>
        <ol class="looks">
          {[...kept.looks].reverse().map((look) => (
            <LookLine key={look.id} caseId={kept.id} look={look} />
          ))}
        </ol>
      </section>
      <CaseActions kept={kept} today={today} />
    </article>
  );
}

function NotThere() {
  return (
    <div class="stack">
      <h1 tabIndex={-1}>{BOOK_WORDS.notFound}</h1>
      <p>
        <a href={hashOf({ place: 'book' })}>{BOOK_WORDS.toBook}</a>
      </p>
    </div>
  );
}

async function lookAgain(kept: CaseRecord, today: string): Promise<void> {
  const looks = (await tryStore(() => store.listLooks(kept.id))) as KeptLook[] | undefined;
  const next = laterLook(crypto.randomUUID(), today, kept, looks?.at(-1)?.answers);
  await startLook(next);
  goTo({ place: 'look', draft: next.id });
}

interface LookLineProps {
  readonly caseId: string;
  readonly look: LookSummary;
}

function LookLine({ caseId, look }: LookLineProps) {
  return (
    <li>
      <a class="look-line" href={hashOf({ place: 'book', caseId, look: look.id })}>
        <span class="look-line-words">
          <span class="entry-plant">{describeDayAndYear(look.date)}</span>
          <span>
            {verdictWord(look.verdict)}
            {look.leading.length > 0 && `: ${joinWords(look.leading.slice(0, 2).map(causeName), 'or')}`}
          </span>
        </span>
        <span class="look-line-photos">
          {look.photos.map((id) => (
            <LinePicture key={id} photoId={id} />
          ))}
        </span>
      </a>
    </li>
  );
}

function LinePicture({ photoId }: { readonly photoId: string }) {
  const address = usePicture(thumbnailOf(photoId), photoId);
  return <span class="entry-picture">{address && <img src={address} alt="" loading="lazy" />}</span>;
}

function CaseActions({ kept, today }: { readonly kept: CaseRecord; readonly today: string }) {
  const [asking, setAsking] = useState(false);
  const remove = async (): Promise<void> => {
    await deleteCase(kept, WORDS.deleted(kept.plant));
    goTo({ place: 'book' });
  };
  return (
    <div class="case-actions rule-above">
      {kept.closedOn ? (
        <button type="button" class="button-plain" onClick={() => void reopenCase(kept.id)}>
          {WORDS.reopen}
        </button>
      ) : (
        <button type="button" class="button-plain" onClick={() => void closeCase(kept.id, today)}>
          {WORDS.close}
        </button>
      )}
      {!asking && (
        <button type="button" class="button-plain" onClick={() => setAsking(true)}>
          {WORDS.delete}
        </button>
      )}
      {asking && (
        <div class="asking" role="alertdialog" aria-label={WORDS.delete}>
          <p>{capitalise(WORDS.deleteAsk(kept.plant))}</p>
          <button type="button" class="button" onClick={() => void remove()}>
            {WORDS.deleteYes}
          </button>
          <button type="button" class="button" onClick={() => setAsking(false)}>
            {WORDS.deleteNo}
          </button>
        </div>
      )}
    </div>
  );
}
