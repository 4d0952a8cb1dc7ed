import type { Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { offline, takeUpdate } from './offline.ts';
import { DemoStrip } from './parts/Demo/demo-parts.tsx';
import { Mark } from './parts/Mark/mark.tsx';
import { useHeightAs } from './parts/OnUse/height-as.ts';
import { onUse } from './parts/OnUse/on-use.tsx';
import { goToHeading, nameTab } from './parts/OnUse/page-heading.ts';
import { explained } from './parts/Terms/explained.ts';
import { GroundPlace } from './places/Ground/ground-place.tsx';
import { LookPlace } from './places/Look/look-place.tsx';
import { HelpPlace } from './places/Settings/help-place.tsx';
import { WalkPlace } from './places/Walk/walk-place.tsx';
import { autosave } from './state/change-look.ts';
import { inDemo } from './state/demo.ts';
import { keptApart, refreshKept, storeTrouble, wasCleared } from './state/kept.ts';
import { draft } from './state/look-in-hand.ts';
import { networkNews } from './state/network.ts';
import { keepPicturesAgain } from './state/pictures.ts';
import { hashOf, type Route, route } from './state/route.ts';
import { closeUndo, leaveUndo, undoable } from './state/undo-bar.ts';
import { restarted } from './state/workers.ts';
import { SHELL_WORDS as WORDS } from './words/shell.ts';

const BookPlace = onUse(
  () => import('./places/Book/book-place.tsx').then((part) => part.BookPlace),
  <h1 tabIndex={-1}>{WORDS.book}</h1>,
);

const TermNote = onUse(() => import('./parts/Terms/term-note.tsx').then((part) => part.TermNote));

/** The notebook around every page: its head, the four tabs, and the bars that say what can be undone or went wrong. */
export function Shell() {
  return (
    <div class="notebook">
      <Skips />
      {inDemo && <DemoStrip />}
      <Head />
      <Page />
      <Bars />
      <Tabs />
      {explained.value !== undefined && <TermNote />}
    </div>
  );
}

/** Past the head to the page, and past the page to the four places: for those who go by keyboard. */
function Skips() {
  const places = (): void => document.querySelector<HTMLElement>('.tabs a')?.focus();
  return (
    <div class="skips">
      <button type="button" class="button unseen" onClick={goToHeading}>
        {WORDS.skipToPage}
      </button>
      <button type="button" class="button unseen" onClick={places}>
        {WORDS.skipToPlaces}
      </button>
    </div>
  );
}

function Head() {
  return (
    <header class="head">
      <a class="head-name" href={hashOf({ place: 'walk' })}>
        <Mark of="bedside" />
        {WORDS.name}
      </a>
      <span class="head-signal" role="status">
        {offline.value === 'fetching' && WORDS.fetching}
        {offline.value === 'broken-off' && WORDS.brokenOff}
        {offline.value === 'ready' && WORDS.worksOffline}
        {(offline.value === 'update' || offline.value === 'held') && (
          <>
            {offline.value === 'held' ? WORDS.updateHeld : WORDS.updateWaits}{' '}
            <button type="button" class="button-plain small" onClick={takeUpdate}>
              {WORDS.useUpdate}
            </button>
          </>
        )}
      </span>
    </header>
  );
}

function Page() {
  const first = useRef(true);
  const { place } = route.value;
  const address = hashOf(pageOf(route.value));
  // Runs once for every page that is opened.
  useEffect(() => {
    nameTab();
    if (!first.current) {
      leaveUndo();
      scrollTo(0, 0);
      goToHeading();
    }
    first.current = false;
  }, [address]);
  return (
    <main class="page">
      {place === 'walk' && <WalkPlace />}
      {place === 'look' && <LookPlace />}
      {place === 'ground' && <GroundPlace />}
      {place === 'book' && <BookPlace />}
      {place === 'help' && <HelpPlace />}
    </main>
  );
}

/** Giving a fresh look its own address opens no new page. */
const pageOf = (at: Route): Route => (at.place === 'look' ? { place: 'look' } : at);

const TABS = ['walk', 'look', 'ground', 'book'] as const;

/** The four places, and the one quiet mark of help: in sight however far a page is scrolled. */
function Tabs() {
  return (
    <nav class="tabs" aria-label={WORDS.places}>
      {TABS.map((place) => (
        <a
          key={place}
          class="tab"
          href={hashOf({ place })}
          aria-current={route.value.place === place ? 'page' : undefined}
        >
          {WORDS[place]}
        </a>
      ))}
      <a
        class="help-mark"
        href={hashOf({ place: 'help' })}
        aria-label={WORDS.help}
        title={WORDS.help}
        aria-current={route.value.place === 'help' ? 'page' : undefined}
      >
        <Mark of="help" />
      </a>
    </nav>
  );
}

async function storeAgain(): Promise<void> {
  if (await keepPicturesAgain(draft.value.photos.map(({ id }) => id))) {
    await autosave();
    await refreshKept();
  }
}

interface Action {
  readonly says: string;
  readonly run: () => void;
}

interface BarProps {
  readonly says: string;
  readonly alert?: boolean;
  /** Trouble stands out from what can be undone. */
  readonly trouble?: boolean;
  readonly actions: readonly Action[];
}

function Bar({ says, alert = false, trouble = false, actions }: BarProps) {
  return (
    <div class={trouble ? 'bar trouble' : 'bar'} {...(alert ? { role: 'alert' as const } : {})}>
      <p>{says}</p>
      <div class="bar-actions">
        {actions.map((action) => (
          <button key={action.says} type="button" class="button" onClick={action.run}>
            {action.says}
          </button>
        ))}
      </div>
    </div>
  );
}

interface NoticeProps<Code extends string | true> {
  readonly of: Signal<Code | undefined>;
  readonly says: (code: Code) => string;
  readonly alert?: boolean;
  readonly more?: readonly Action[];
}

/** Stays until what it tells of is over, or until it has been read and is closed. */
function Notice<Code extends string | true>({ of, says, alert = false, more = [] }: NoticeProps<Code>) {
  const code = of.value;
  if (!code) return null;
  const close = (): void => {
    of.value = undefined;
  };
  return (
    <Bar says={says(code)} alert={alert} trouble actions={[...more, { says: WORDS.close, run: close }]} />
  );
}

function Bars() {
  const offer = undoable.value;
  // However many lie there, the page can be scrolled free of them.
  const bars = useHeightAs('--bars');
  return (
    <div class="bars" ref={bars}>
      <div role="status">
        <Notice of={restarted} says={(part) => WORDS.restarted[part]} />
        <Notice of={wasCleared} says={() => WORDS.wasCleared} />
        <Notice of={networkNews} says={(fault) => WORDS.network[fault]} />
        <Notice of={keptApart} says={() => WORDS.keptApart} />
        {offer && (
          <Bar
            says={offer.says}
            actions={[
              {
                says: WORDS.undo,
                run: () => {
                  closeUndo();
                  void offer.undo();
                },
              },
            ]}
          />
        )}
      </div>
      <Notice
        of={storeTrouble}
        says={(trouble) => WORDS.trouble[trouble]}
        alert
        more={[{ says: WORDS.tryAgain, run: () => void storeAgain() }]}
      />
    </div>
  );
}
