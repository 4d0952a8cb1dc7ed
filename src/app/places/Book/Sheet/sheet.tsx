import './sheet.css';
import { useRef, useState } from 'preact/hooks';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { handOn, sheetAsFile } from '../../../state/hand-on.ts';
import type { Route } from '../../../state/route.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { sheetFileName, SHEET_WORDS as WORDS } from '../../../words/sheet.ts';

interface SheetProps {
  readonly title: string;
  readonly back: Route;
  readonly backSays: string;
  /** What to know before it is printed; not on the sheet. */
  readonly hint?: string;
  readonly children: preact.ComponentChildren;
}

/** A page or two to print or hand on: what is on it is all that goes along. */
export function Sheet({ title, back, backSays, hint, children }: SheetProps) {
  const sheet = useRef<HTMLElement>(null);
  const [says, setSays] = useState('');
  const [busy, setBusy] = useState(false);
  const give = async (): Promise<void> => {
    if (!sheet.current || busy) return;
    setBusy(true);
    setSays(WORDS.making);
    try {
      const file = await sheetAsFile(sheet.current, title, sheetFileName(title));
      const done = await handOn(file, title);
      setSays(done === 'saved' ? WORDS.saved(file.name) : '');
    } catch {
      setSays(WORDS.failed);
    }
    setBusy(false);
  };
  return (
    <>
      <div class="sheet-actions stack-close">
        <BackLink to={back} says={backSays} />
        <p class="ground-actions">
          <button type="button" class="button next" onClick={() => print()}>
            {WORDS.print}
          </button>
          <button type="button" class="button" aria-disabled={busy} onClick={() => void give()}>
            {WORDS.share}
          </button>
        </p>
        <p role="status">{says}</p>
        <p class="small soft">
          {WORDS.fileHow} {hint}
        </p>
      </div>
      <article class="sheet" ref={sheet}>
        <h1 tabIndex={-1}>{title}</h1>
        {children}
        <p class="sheet-foot small soft">{WORDS.foot(describeDayAndYear(dayOf(new Date())))}</p>
      </article>
    </>
  );
}

interface SheetPartProps {
  readonly title: string;
  /** May go on over the end of a page. */
  readonly long?: boolean;
  readonly children: preact.ComponentChildren;
}

/** A part of a sheet, kept on one page where it fits and is not `long`. */
export function SheetPart({ title, long = false, children }: SheetPartProps) {
  return (
    <section class={long ? 'sheet-part long' : 'sheet-part'}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}
