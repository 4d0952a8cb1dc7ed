import { useRef, useState } from 'preact/hooks';
import { growingYearOf } from '../../../days/growing-year.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import type {
  BatchRecord,
  BedRecord,
  EventRecord,
  PlantingRecord,
  Spreading,
} from '../../../garden/ground-records.ts';
import { bedKey } from '../../../garden/group-by-bed.ts';
import { batchesUnder, isSuspected } from '../../../garden/trace-batches.ts';
import { SETTINGS } from '../../../signs/settings.ts';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { FoldedNote } from '../../parts/FoldedNote/folded-note.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { newEvent, newPlanting } from '../../state/edit-ground.ts';
import { garden, keepWithUndo } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import { hashOf } from '../../state/route.ts';
import { casesAt, type Happening, historyOf, inYear, UNNAMED, yearsOf } from '../../state/year-of-bed.ts';
import { zone } from '../../state/zone.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { capitalise } from '../../words/causes.ts';
import { dayOf, describeDayAndYear } from '../../words/dates.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { namePlanting, namePlantingAmong, numberPlanting } from '../../words/name-planting.ts';
import { sayHappening } from '../../words/say-happening.ts';
import { SHEET_WORDS } from '../../words/sheet.ts';
import { CaseEntry } from '../Book/case-entry.tsx';
import { BatchLines } from './batch-lines.tsx';
import { BedForm, EventForm, PlantingForm, SpreadForm } from './bed-forms.tsx';
import { Gone } from './gone.tsx';

type Open =
  | { readonly what: 'bed' }
  | { readonly what: 'event'; readonly event: EventRecord }
  | { readonly what: 'planting'; readonly planting: PlantingRecord }
  | { readonly what: 'spread'; readonly batch?: BatchRecord; readonly given?: Spreading };

/** One bed: what grows there, what is under it, its year, its cases. */
export function BedPage({ bedId }: { readonly bedId: string }) {
  const all = garden.value;
  const [open, setOpen] = useState<Open | undefined>(undefined);
  const shown = useRef<{ readonly of: string; readonly bed: BedRecord | undefined } | undefined>(undefined);
  if (!all) return <h1 tabIndex={-1}>…</h1>;
  const found = all.beds.find(({ id, name }) => id === bedId || bedKey(name) === bedKey(bedId));
  if (found || shown.current?.of !== bedId) shown.current = { of: bedId, bed: found };
  // Deleted in another tab while it is on show, it stays: a form may be open on it.
  const bed = shown.current.bed;
  const isUnnamed = bedId === UNNAMED;
  if (!bed && !isUnnamed)
    return (
      <div class="ground stack">
        <BackLink to={{ place: 'ground' }} says={WORDS.toGround} />
        <h1 tabIndex={-1}>{WORDS.notFound}</h1>
      </div>
    );
  const cases = casesAt(all, bed);
  const close = (): void => setOpen(undefined);
  return (
    <div class="ground stack-wide">
      <div>
        <BackLink to={{ place: 'ground' }} says={WORDS.toGround} />
        <h1 tabIndex={-1}>{bed?.name ?? WORDS.unnamed}</h1>
        {bed && <p class="soft">{describeBed(bed)}</p>}
        {bed?.note && <FoldedNote note={bed.note} />}
      </div>
      <div class="open-pages">
        <div class="page-left stack-wide">
          {bed && !open && <Gone record={bed} name={bed.name} />}
          {bed && <Suspected all={all} bed={bed} />}
          {bed && !open && <Actions bed={bed} onOpen={setOpen} />}
          {bed && open && <Opened all={all} bed={bed} open={open} onClose={close} />}
          {bed && <Growing all={all} bed={bed} onOpen={setOpen} />}
          {bed && <Under all={all} bed={bed} />}
          {cases.length > 0 && (
            <section>
              <h2 class="list-title">{WORDS.cases}</h2>
              <ul class="entries">
                {cases.map((kept) => (
                  <CaseEntry key={kept.id} kept={kept} />
                ))}
              </ul>
            </section>
          )}
        </div>
        <div class="page-right">
          <Year all={all} bed={bed} onOpen={setOpen} />
        </div>
      </div>
    </div>
  );
}

/** "Under cover · clay · acid". */
function describeBed({ place, soil, soilReaction }: BedRecord): string {
  const said = (
    [
      ['place', place],
      ['soil-kind', soil],
      ['soil-ph', soilReaction],
    ] as const
  ).flatMap(([id, value]) => {
    const option = SETTINGS[id].options.find((one) => one.id === value);
    return option ? [option.says] : [];
  });
  return capitalise(said.join(' · '));
}

interface Opens {
  readonly onOpen: (open: Open) => void;
}
interface OfBed {
  readonly all: Garden;
  readonly bed: BedRecord;
}

function Actions({ bed, onOpen }: { readonly bed: BedRecord } & Opens) {
  // A trial is made at its first touch, under this id.
  const [fresh] = useState(() => crypto.randomUUID());
  return (
    <p class="ground-actions bed-actions">
      <button
        type="button"
        class="button"
        onClick={() => onOpen({ what: 'planting', planting: newPlanting(bed.id, nowStamp()) })}
      >
        {WORDS.plant}
      </button>
      <button type="button" class="button" onClick={() => onOpen({ what: 'spread' })}>
        {WORDS.spread}
      </button>
      <button
        type="button"
        class="button"
        onClick={() => onOpen({ what: 'event', event: newEvent(bed.id, nowStamp()) })}
      >
        {WORDS.did}
      </button>
      <a class="button" href={hashOf({ place: 'book', trial: fresh, step: 'plan', bed: bed.id })}>
        {BOOK_WORDS.beginTrial}
      </a>
      <button type="button" class="button-plain" onClick={() => onOpen({ what: 'bed' })}>
        {WORDS.changeBed}
      </button>
    </p>
  );
}

function Opened({ all, bed, open, onClose }: OfBed & { readonly open: Open; readonly onClose: () => void }) {
  if (open.what === 'bed') return <BedForm bed={bed} onClose={onClose} />;
  const { beds } = all;
  if (open.what === 'event')
    return <EventForm key={open.event.id} event={open.event} beds={beds} onClose={onClose} />;
  if (open.what === 'planting')
    return <PlantingForm key={open.planting.id} planting={open.planting} beds={beds} onClose={onClose} />;
  const { batch, given } = open;
  return (
    <SpreadForm
      key={given?.id}
      garden={all}
      bedId={bed.id}
      {...(batch ? { batch } : {})}
      {...(given ? { given } : {})}
      onClose={onClose}
    />
  );
}

const batchHash = (batch: BatchRecord): string =>
  hashOf({ place: 'ground', page: 'batches', batch: batch.id });

function Suspected({ all, bed }: OfBed) {
  return batchesUnder(all, { bedId: bed.id })
    .filter(({ batch }) => isSuspected(batch))
    .map(({ batch }) => (
      <p class="suspected" key={batch.id}>
        <a class="link-line" href={batchHash(batch)}>
          {WORDS.suspectedHere(batch.name)}
        </a>
      </p>
    ));
}

function Growing({ all, bed, onOpen }: OfBed & Opens) {
  const here = all.plantings.filter(({ bedId, clearedOn }) => bedId === bed.id && !clearedOn);
  if (here.length === 0) return null;
  const nameOf = (planting: PlantingRecord): string => namePlantingAmong(planting, here);
  return (
    <section>
      <h2 class="list-title">{WORDS.growing}</h2>
      <ul>
        {here.map((planting) => (
          <li class="ground-line" key={planting.id}>
            <span>
              {[namePlanting(planting), numberPlanting(planting, here)].filter(Boolean).join(', ')}{' '}
              <span class="soft small">
                {[
                  planting.plantedOn &&
                    `${WORDS.plantedOn.toLowerCase()} ${describeDayAndYear(planting.plantedOn)}`,
                  !planting.plantedOn &&
                    planting.sownOn &&
                    `${WORDS.sownOn.toLowerCase()} ${describeDayAndYear(planting.sownOn)}`,
                ]
                  .filter(Boolean)
                  .join(', ')}
              </span>
            </span>
            <button
              type="button"
              class="button-plain small"
              aria-label={`${WORDS.clearNow}: ${nameOf(planting)}`}
              onClick={() =>
                void keepWithUndo(
                  [{ ...planting, clearedOn: dayOf(new Date()) }],
                  `${WORDS.cleared(nameOf(planting))}.`,
                )
              }
            >
              {WORDS.clearNow}
            </button>
            <ChangeButton of={nameOf(planting)} onOpen={() => onOpen({ what: 'planting', planting })} />
            {planting.crop && planting.variety && (
              <a
                class="link-line small"
                aria-label={WORDS.normalOf(nameOf(planting))}
                href={hashOf({
                  place: 'ground',
                  page: 'normal-leaves',
                  crop: planting.crop,
                  variety: planting.variety,
                })}
              >
                {WORDS.normal}
              </a>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function ChangeButton({ of, onOpen }: { readonly of: string; readonly onOpen: () => void }) {
  return (
    <button
      type="button"
      class="button-plain small"
      aria-label={WORDS.changeThis(of)}
      onClick={() => {
        onOpen();
        scrollTo(0, 0);
      }}
    >
      {WORDS.change}
    </button>
  );
}

function Under({ all, bed }: OfBed) {
  const under = batchesUnder(all, { bedId: bed.id });
  if (under.length === 0) return null;
  return (
    <section>
      <h2 class="list-title">{WORDS.noted}</h2>
      <BatchLines batches={under.map(({ batch }) => batch)} />
    </section>
  );
}

function Year({ all, bed, onOpen }: { readonly all: Garden; readonly bed: BedRecord | undefined } & Opens) {
  const history = historyOf(all, bed);
  const today = dayOf(new Date());
  const years = yearsOf(history, today, zone.value);
  const [year, setYear] = useState(growingYearOf(history[0]?.date ?? today, zone.value));
  const shown = inYear(history, year, zone.value);
  return (
    <section>
      <h2 class="list-title">{WORDS.whatHappened(year)}</h2>
      {years.length > 1 && (
        <label class="field year-choice">
          <span>{WORDS.year}</span>
          <select value={year} onChange={(event) => setYear(event.currentTarget.value)}>
            {years.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
      )}
      {shown.length === 0 && <p class="soft">{WORDS.nothing}</p>}
      {bed && shown.length > 0 && (
        <a class="link-line" href={hashOf({ place: 'book', sheet: 'bed', of: bed.id, year })}>
          {SHEET_WORDS.make}
        </a>
      )}
      <ol class="happenings">
        {shown.map((one) => (
          <HappeningLine key={one.id} one={one} onOpen={onOpen} />
        ))}
      </ol>
      <TermsOf says={shown.map(sayHappening)} />
    </section>
  );
}

function HappeningLine({ one, onOpen }: { readonly one: Happening } & Opens) {
  const says = sayHappening(one);
  if (one.what === 'look' || one.what === 'ended')
    return (
      <li>
        <a
          class="happening"
          href={hashOf({
            place: 'book',
            caseId: one.kept.id,
            ...(one.what === 'look' ? { look: one.look.id } : {}),
          })}
        >
          <span class="small soft">{describeDayAndYear(one.date)}</span>
          <span>{says}</span>
        </a>
      </li>
    );
  if (one.what === 'pots-sown' || one.what === 'pots-told')
    return (
      <li>
        <a class="happening" href={hashOf({ place: 'book', pots: 'test', pot: one.test.id })}>
          <span class="small soft">{describeDayAndYear(one.date)}</span>
          <span>{says}</span>
        </a>
      </li>
    );
  if ('trial' in one)
    return (
      <li>
        <a class="happening" href={hashOf({ place: 'book', trial: one.trial.id })}>
          <span class="small soft">{describeDayAndYear(one.date)}</span>
          <span>{says}</span>
        </a>
      </li>
    );
  const open = (): void => {
    if (one.what === 'event') onOpen({ what: 'event', event: one.event });
    else if (one.what === 'spread') onOpen({ what: 'spread', batch: one.batch, given: one.given });
    else if ('planting' in one) onOpen({ what: 'planting', planting: one.planting });
  };
  return (
    <li class="happening">
      <span class="small soft">{describeDayAndYear(one.date)}</span>
      <span>
        {says}{' '}
        {one.what === 'spread' && isSuspected(one.batch) && <span class="flagged">{WORDS.suspected}</span>}
      </span>
      <ChangeButton of={says} onOpen={open} />
    </li>
  );
}
