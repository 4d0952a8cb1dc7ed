import './case-entry.css';
import type { CaseRecord } from '../../../garden/records.ts';
import { Stamp } from '../../parts/Stamp/stamp.tsx';
import { hashOf } from '../../state/route.ts';
import { BOOK_WORDS as WORDS } from '../../words/book.ts';
import { cropName } from '../../words/crops.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { sayEnd } from '../../words/outcome.ts';
import { sayLook } from '../../words/verdicts.ts';

/** A case as a line in a list: its small photo, plant, bed, and what was made of it last. */
export function CaseEntry({ kept }: { readonly kept: CaseRecord }) {
  const last = kept.looks.at(-1);
  const photo = last?.photos[0];
  const crop = cropName(kept.crop);
  return (
    <li>
      <a class="entry" href={hashOf({ place: 'book', caseId: kept.id })}>
        {photo ? <Stamp photoId={photo} /> : <span class="stamp" />}
        <span class="entry-words">
          <span class="entry-plant">{kept.plant}</span>
          <span class="soft">
            {[
              crop && !kept.plant.toLocaleLowerCase('en-GB').includes(crop.toLocaleLowerCase('en-GB'))
                ? crop
                : '',
              kept.bed,
            ]
              .filter(Boolean)
              .join(' · ')}
          </span>
          {(kept.closedOn && kept.outcome) || last ? <span>{sayMade(kept)}</span> : null}
          <span class="small soft">
            {last && describeDayAndYear(last.date)} · {WORDS.looks(kept.looks.length)}
          </span>
        </span>
      </a>
    </li>
  );
}

/** How it ended, or what was made of it last. */
export function sayMade({ closedOn, outcome, looks }: CaseRecord): string {
  if (closedOn && outcome) return sayEnd(outcome);
  const last = looks.at(-1);
  return last ? sayLook(last) : '';
}
