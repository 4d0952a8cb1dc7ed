import { dueCases } from '../../../garden/due-cases.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import { listToday, type TodayItem } from '../../../garden/list-today.ts';
import { writeCalendar } from '../../../garden/write-calendar.ts';
import { coldLimitsOf } from '../../../season/crop-temperatures.ts';
import { Stamp } from '../../parts/Stamp/stamp.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { handOver } from '../../state/hand-over.ts';
import { nowStamp } from '../../state/kept.ts';
import { hashOf } from '../../state/route.ts';
import { startLaterLook } from '../../state/start-later-look.ts';
import { describeDay, describeDistance } from '../../words/dates.ts';
import { describeToday, entryOfToday, TODAY_WORDS as WORDS } from '../../words/today.ts';

/** So far ahead a calendar file reaches, days. */
const CALENDAR_DAYS = 14;

interface TodayPathProps {
  readonly garden: Garden;
  readonly today: string;
}

/** What is due today in the order of the beds: looks, heaps to read, frost and cold that are forecast. */
export function TodayPath({ garden, today }: TodayPathProps) {
  const items = listToday(garden, today, coldLimitsOf);
  const ahead = listToday(garden, today, coldLimitsOf, CALENDAR_DAYS);
  const next = dueCases(garden.cases, today).find(({ when }) => when === 'coming');
  const bedOf = ({ bedId }: TodayItem): string => garden.beds.find(({ id }) => id === bedId)?.name ?? '';
  const stops = items.map((item) => ({ item, says: describeToday(item, bedOf(item), today) }));
  const download = (): void => {
    const entries = ahead.map((item) => entryOfToday(item, bedOf(item), today));
    const written = writeCalendar(entries, WORDS.calendarName, nowStamp());
    handOver(new Blob([written], { type: 'text/calendar' }), WORDS.calendarFile);
  };
  return (
    <section class="stack-close">
      <h2>{WORDS.title}</h2>
      {items.length === 0 && (
        <p>
          {next
            ? WORDS.next(describeDay(next.lookAgain, today), describeDistance(next.lookAgain, today))
            : WORDS.nothing}
        </p>
      )}
      <ol class="path">
        {stops.map((stop) => (
          <Stop key={stop.item.id} {...stop} today={today} />
        ))}
      </ol>
      <TermsOf says={stops.flatMap(({ says: { what, more } }) => [what, more])} />
      {ahead.length > 0 && (
        <p>
          <button type="button" class="button-plain" onClick={download}>
            {WORDS.calendar}
          </button>
        </p>
      )}
    </section>
  );
}

interface StopProps {
  readonly item: TodayItem;
  readonly says: ReturnType<typeof describeToday>;
  readonly today: string;
}

function Stop({ item, says: { when, what, more }, today }: StopProps) {
  const photoId = item.what === 'look' ? item.kept.looks.at(-1)?.photos[0] : undefined;
  return (
    <li class={`stop ${item.due < today ? 'overdue' : 'today'}`}>
      <a href={whereOf(item)}>
        <span class="stop-words">
          <span class="stop-when small">{when}</span>
          <span class="stop-plant">{what}</span>
          <span class="soft">{more}</span>
        </span>
        {photoId && <Stamp photoId={photoId} />}
      </a>
      {item.what === 'look' && (
        <button
          type="button"
          class="button"
          aria-label={WORDS.lookNowAt(item.kept.plant)}
          onClick={() => void startLaterLook(item.kept, today)}
        >
          {WORDS.lookNow}
        </button>
      )}
    </li>
  );
}

/** Where it is done: the case, the batch with its readings, the bed. */
function whereOf(item: TodayItem): string {
  if (item.what === 'look') return hashOf({ place: 'book', caseId: item.kept.id });
  if (item.what === 'read-heap') return `#/ground/batches/${encodeURIComponent(item.batch.id)}`;
  if (item.what === 'pot-test')
    return hashOf({ place: 'book', pots: item.test.toSow ? 'card' : 'look', pot: item.test.id });
  if (item.what === 'trial') return hashOf({ place: 'book', trial: item.trial.id, step: 'measure' });
  return hashOf({ place: 'ground', ...(item.bedId ? { bed: item.bedId } : {}) });
}
