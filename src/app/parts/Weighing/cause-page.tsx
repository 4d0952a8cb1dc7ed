import { useState } from 'preact/hooks';
import type { CauseId } from '../../../signs/vocabulary.ts';
import { rankingBridge } from '../../state/workers.ts';
import { capitalise, causeName } from '../../words/causes.ts';
import { WEIGHING_WORDS as WORDS } from '../../words/weighing.ts';
import type { CausePage as Page } from '../../workers/protocol.ts';
import { WithTerms } from '../Terms/with-terms.tsx';

/** What the book says of a cause; fetched from the ranking worker, where the knowledge lives, when it is opened. */
export function CausePage({ cause }: { readonly cause: CauseId }) {
  const [page, setPage] = useState<Page | 'none' | undefined>(undefined);
  const open = async (): Promise<void> => {
    if (page && page !== 'none') return;
    const outcome = await rankingBridge.ask({ kind: 'explain', cause }, `explain ${cause}`);
    const reply = outcome.state === 'done' ? outcome.reply : undefined;
    setPage(reply?.ok && reply.kind === 'explain' ? reply.page : 'none');
  };
  return (
    <details onToggle={(event) => event.currentTarget.open && void open()}>
      <summary class="small">{WORDS.more}</summary>
      {page === 'none' && <p class="soft">{WORDS.moreTrouble}</p>}
      {page && page !== 'none' && (
        <div class="stack-close cause-page">
          <p>
            <WithTerms>{page.what}</WithTerms>
          </p>
          {page.mistakenFor.length > 0 && <p class="reasons-side">{WORDS.mistaken}</p>}
          <ul class="stack-close">
            {page.mistakenFor.map(({ cause: other, tellsApart }) => (
              <li key={other}>
                {capitalise(causeName(other))}.{' '}
                <span class="soft">
                  <WithTerms>{tellsApart}</WithTerms>
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </details>
  );
}
