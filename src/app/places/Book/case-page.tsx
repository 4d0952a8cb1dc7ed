import { useState } from 'preact/hooks';
import type { CaseRecord, LookSummary, Outcome } from '../../../garden/records.ts';
import { Asking } from '../../parts/Asking/asking.tsx';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { Stamp } from '../../parts/Stamp/stamp.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { cases, closeCase, deleteCase, type KeptLook, reopenCase } from '../../state/kept.ts';
import { goTo, hashOf } from '../../state/route.ts';
import { startLaterLook } from '../../state/start-later-look.ts';
import { useLooks } from '../../state/use-looks.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { capitalise } from '../../words/causes.ts';
import { cropName } from '../../words/crops.ts';
import { dayOf, describeDay, describeDayAndYear, describeDistance } from '../../words/dates.ts';
import { describeOutcomeDetails, sayEnd } from '../../words/outcome.ts';
import { SHEET_WORDS } from '../../words/sheet.ts';
import { whenOf } from '../../words/today.ts';
import { VERDICT_PART_WORDS } from '../../words/verdict-parts.ts';
import { describeVerdict, sayLook, type VerdictInWords } from '../../words/verdicts.ts';

const WORDS = BOOK_WORDS.case;
const UnderCase = onUse(() => import('../Ground/under-case.tsx').then((part) => part.UnderCase));

const KeepAsNormal = onUse(() => import('./keep-as-normal.tsx').then((part) => part.KeepAsNormal));

/* Comparing weighs, and most cases have one look. */
const ThenAndNow = onUse(() => import('./ThenAndNow/then-and-now.tsx').then((part) => part.ThenAndNow));

/** One case: how it stands, its looks, and what can be done with it. */
export function CasePage({ caseId }: { readonly caseId: string }) {
  const kept = cases.value?.find(({ id }) => id === caseId);
  // Lists do not hold the notes, nor what to do.
  const looks = useLooks(caseId);
  if (!cases.value) return <h1 tabIndex={-1}>…</h1>;
  if (!kept || kept.deletedAt) return <NotThere />;
  const today = dayOf(new Date());
  const names = [cropName(kept.crop), kept.variety].filter(Boolean).join(', ');
  const says = names === kept.plant ? '' : names;
  return (
    <article class="case stack-wide">
      <div>
        <BackLink to={{ place: 'book' }} says={BOOK_WORDS.toBook} />
        <h1 tabIndex={-1}>{kept.plant}</h1>
        <p class="soft">
          {[says, WORDS.inBed(kept.bed), WORDS.opened(describeDayAndYear(kept.openedOn))]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </div>
      <div class="open-pages">
        <div class="page-left stack-wide">
          <State kept={kept} looks={looks} today={today} />
          {looks && kept.looks.length > 1 && <ThenAndNow looks={looks} />}
        </div>
        <div class="page-right stack-wide">
          <Looks kept={kept} looks={looks} />
          <UnderCase kept={kept} />
          {kept.looks.at(-1)?.verdict === 'leave' && <KeepAsNormal kept={kept} />}
        </div>
      </div>
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

interface CaseProps {
  readonly kept: CaseRecord;
  /** `undefined` until they are read. */
  readonly looks: readonly KeptLook[] | undefined;
}

/** How the case stands: what is due, or how it ended; and the one thing to do next. */
function State({ kept, looks, today }: CaseProps & { readonly today: string }) {
  const lookAgainOn = kept.looks.at(-1)?.lookAgain;
  const ended = hashOf({ place: 'book', caseId: kept.id, page: 'ended' });
  if (kept.closedOn)
    return (
      <section class="stack-close">
        {kept.outcome && <End outcome={kept.outcome} />}
        <p class="soft">{WORDS.closedOn(describeDay(kept.closedOn, today))}</p>
        <p>
          <a class="button" href={ended}>
            {kept.outcome ? WORDS.changeEnd : WORDS.howEnded}
          </a>
        </p>
      </section>
    );
  const verdict = verdictOf(kept, looks);
  return (
    <>
      {lookAgainOn && <p class="case-due">{sayDue(lookAgainOn, today)}</p>}
      {verdict && (verdict.id === 'act' || verdict.id === 'check') && (
        <p>
          <WithTerms>{verdict.headline}</WithTerms>
        </p>
      )}
      <p class="case-next">
        <button type="button" class="button next" onClick={() => void startLaterLook(kept, today)}>
          {WORDS.addLook}
        </button>
        <a class="button" href={ended}>
          {WORDS.howEnded}
        </a>
      </p>
      {verdict && <Mind cautions={verdict.cautions} />}
    </>
  );
}

/** In the words of the walk, once it is due. */
function sayDue(day: string, today: string): string {
  if (day > today) return WORDS.lookAgain(describeDay(day, today), describeDistance(day, today));
  return day === today ? WORDS.lookToday : WORDS.lookOverdue(whenOf(day, today));
}

/** The newest look's: nobody should have to open that again to read what to do or to check, and what to mind. */
function verdictOf(kept: CaseRecord, looks: CaseProps['looks']): VerdictInWords | undefined {
  const last = looks?.find(({ id }) => id === kept.looks.at(-1)?.id);
  return last?.ranking && describeVerdict(last.ranking, last.ranking.weighedOn ?? last.date);
}

/** They hold whatever the verdict is: what must not be eaten or composted must not be while one only looks again, either. */
function Mind({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section class="case-mind small" aria-labelledby="case-mind">
      <h2 id="case-mind">{VERDICT_PART_WORDS.cautions}</h2>
      <ul class="stack-close">
        {cautions.map((caution) => (
          <li key={caution}>
            <WithTerms>{caution}</WithTerms>
          </li>
        ))}
      </ul>
    </section>
  );
}

function End({ outcome }: { readonly outcome: Outcome }) {
  const details = describeOutcomeDetails(outcome);
  return (
    <div class="case-end">
      <h2 class="unseen">{WORDS.ended}</h2>
      <p class="case-end-what">
        <WithTerms>{sayEnd(outcome)}</WithTerms>
      </p>
      {details && (
        <p>
          <WithTerms>{details}</WithTerms>
        </p>
      )}
      {outcome.done && <p class="look-note">{outcome.done}</p>}
    </div>
  );
}

function Looks({ kept, looks }: CaseProps) {
  const notes = new Map(looks?.map(({ id, note }) => [id, note]));
  return (
    <section class="stack-close">
      <h2>{WORDS.looks}</h2>
      <ol class="looks">
        {[...kept.looks].reverse().map((look, place) => (
          <LookLine
            key={look.id}
            caseId={kept.id}
            look={look}
            note={notes.get(look.id) ?? ''}
            isNewest={place === 0}
          />
        ))}
      </ol>
      <TermsOf says={kept.looks.map((look) => sayLook(look))} />
    </section>
  );
}

interface LookLineProps {
  readonly caseId: string;
  readonly look: LookSummary;
  readonly note: string;
  readonly isNewest: boolean;
}

function LookLine({ caseId, look, note, isNewest }: LookLineProps) {
  return (
    <li>
      <a
        class={`look-line${isNewest ? ' newest' : ''}`}
        href={hashOf({ place: 'book', caseId, look: look.id })}
      >
        <span class="look-line-words">
          <span class="entry-plant">{describeDayAndYear(look.date)}</span>
          <span>{sayLook(look)}</span>
          {note && <span class="look-note soft">{note}</span>}
        </span>
        {look.photos.length > 0 && (
          <span class="look-line-photos">
            {look.photos.map((id, place) => (
              <Stamp key={id} photoId={id} isLarge={isNewest && place === 0} />
            ))}
          </span>
        )}
      </a>
    </li>
  );
}

function CaseActions({ kept, today }: { readonly kept: CaseRecord; readonly today: string }) {
  const [asking, setAsking] = useState(false);
  const remove = async (): Promise<void> => {
    await deleteCase(kept, WORDS.deleted(kept.plant));
    goTo({ place: 'book' });
  };
  return (
    <div class="case-actions rule-above">
      <a class="button-plain" href={hashOf({ place: 'book', sheet: 'case', of: kept.id })}>
        {SHEET_WORDS.make}
      </a>
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
        <Asking
          label={WORDS.delete}
          asks={capitalise(WORDS.deleteAsk(kept.plant))}
          yes={WORDS.deleteYes}
          no={WORDS.deleteNo}
          onYes={() => void remove()}
          onNo={() => setAsking(false)}
        />
      )}
    </div>
  );
}
