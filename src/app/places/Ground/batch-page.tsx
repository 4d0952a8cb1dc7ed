import { useRef, useState } from 'preact/hooks';
import { CAUTIONS } from '../../../causes/cautions.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import { BATCH_KINDS, type BatchRecord, type Spreading } from '../../../garden/ground-records.ts';
import { heapNow } from '../../../garden/heap-now.ts';
import { overheating, ripens } from '../../../garden/judge-batch.ts';
import {
  awaitsPots,
  isSuspected,
  releaseBatch,
  suspectBatch,
  whoReceived,
} from '../../../garden/trace-batches.ts';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { DayField } from '../../parts/DayField/day-field.tsx';
import { FoldedNote } from '../../parts/FoldedNote/folded-note.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { editBatch, sayShare, type Typed } from '../../state/edit-ground.ts';
import { deleteGround, garden, keepWithUndo, latest } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import { goTo, hashOf } from '../../state/route.ts';
import { startLookAt } from '../../state/start-look-at.ts';
import { dayOf, describeDayAndYear } from '../../words/dates.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { BATCH_WORDS as WORDS } from '../../words/ground-batches.ts';
import { namePlantingAmong } from '../../words/name-planting.ts';
import { WHERE_IT_LIES } from '../../words/where-it-lies.ts';
import { SpreadForm } from './bed-forms.tsx';
import { Gone } from './gone.tsx';
import { type FormField, GroundForm, sayYesNo, useEdit, YES_NO } from './ground-form.tsx';
import { Heat } from './heat-part.tsx';

const BatchTests = onUse(() => import('../Book/PotTest/batch-tests.tsx').then((part) => part.BatchTests));

/** One load or heap: how it stands, its heat, where it went, and whether anything is held against it. */
export function BatchPage({ batchId }: { readonly batchId: string }) {
  const all = garden.value;
  const [open, setOpen] = useState<'details' | 'spread' | Spreading | undefined>(undefined);
  const [says, setSays] = useState('');
  const shown = useRef<{ readonly of: string; readonly batch: BatchRecord | undefined } | undefined>(
    undefined,
  );
  if (!all) return <h1 tabIndex={-1}>…</h1>;
  const found = all.batches.find(({ id }) => id === batchId);
  if (found || shown.current?.of !== batchId) shown.current = { of: batchId, batch: found };
  // Deleted in another tab while it is on show, it stays: a form may be open on it.
  const { batch } = shown.current;
  if (!batch)
    return (
      <div class="ground stack">
        <BackLink to={{ place: 'ground', page: 'batches' }} says={WORDS.toBatches} />
        <h1 tabIndex={-1}>{WORDS.notFound}</h1>
      </div>
    );
  const close = (): void => setOpen(undefined);
  const keep = async (changed: BatchRecord, done: string): Promise<void> => {
    const saved = await keepWithUndo([changed], done);
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  return (
    <div class="ground stack-wide">
      <div>
        <BackLink to={{ place: 'ground', page: 'batches' }} says={WORDS.toBatches} />
        <h1 tabIndex={-1}>{batch.name}</h1>
        <p class="soft">
          {[
            batch.what && WORDS.kinds[batch.what],
            batch.source,
            batch.woodShare !== undefined && WORDS.woodSaid(sayShare(batch.woodShare)),
            batch.arrivedOn && WORDS.cameOn(describeDayAndYear(batch.arrivedOn)),
            batch.usedUpOn && WORDS.usedUpOn(describeDayAndYear(batch.usedUpOn)),
          ]
            .filter(Boolean)
            .join(' · ')}
        </p>
        {batch.note && <FoldedNote note={batch.note} />}
      </div>
      <p role="alert">{says}</p>
      {!open && <Gone record={batch} name={batch.name} />}
      {isSuspected(batch) && <Suspicion all={all} batch={batch} onKeep={keep} />}
      <div class="open-pages">
        <div class="page-left stack-wide">
          <State all={all} batch={batch} />
          <Heat all={all} batch={batch} onKeep={keep} />
          {open === 'details' && <DetailsForm batch={batch} onClose={close} />}
          {open === 'spread' &&
            (all.beds.length > 0 ? (
              <SpreadForm garden={all} batch={batch} onClose={close} />
            ) : (
              <p>
                {WORDS.noBeds} <a href={hashOf({ place: 'ground' })}>{GROUND_WORDS.toGround}</a>
              </p>
            ))}
          {typeof open === 'object' && (
            <SpreadForm key={open.id} garden={all} batch={batch} given={open} onClose={close} />
          )}
          <Went all={all} batch={batch} onChange={setOpen} />
          {!open && (
            <p class="ground-actions">
              {!isSuspected(batch) && !batch.usedUpOn && !awaitsPots(all, batch.id) && (
                <button type="button" class="button" onClick={() => setOpen('spread')}>
                  {WORDS.giveTitle}
                </button>
              )}
              <button type="button" class="button" onClick={() => setOpen('details')}>
                {WORDS.change}
              </button>
            </p>
          )}
        </div>
        <div class="page-right stack-wide">
          <BatchTests all={all} batch={batch} />
          {!isSuspected(batch) && (
            <section class="stack-close rule-above">
              <button
                type="button"
                class="button"
                onClick={() =>
                  void keep(
                    suspectBatch(batch, { on: dayOf(new Date()), why: '' }, nowStamp()),
                    WORDS.suspectedNow(batch.name),
                  ).then(() => scrollTo(0, 0))
                }
              >
                {WORDS.suspect}
              </button>
              <p class="small soft">{WORDS.suspectHow}</p>
              {batch.suspicion && (
                <p class="small">
                  {WORDS.releasedOn(describeDayAndYear(batch.suspicion.on))} {batch.suspicion.why}
                </p>
              )}
            </section>
          )}
        </div>
      </div>
    </div>
  );
}

interface OfBatch {
  readonly all: Garden;
  readonly batch: BatchRecord;
}
interface Keeps {
  readonly onKeep: (changed: BatchRecord, done: string) => Promise<void>;
}

function Suspicion({ all, batch, onKeep }: OfBatch & Keeps) {
  const { on = '', why: before = '', potTestSays } = batch.suspicion ?? {};
  const [why, setWhy] = useState(before);
  return (
    <section class="suspected stack-close">
      <h2>{WORDS.suspectedSince(describeDayAndYear(on))}</h2>
      {potTestSays && <p>{potTestSays}</p>}
      <p>{WORDS.ofWeedkiller[batch.what === 'own-compost' ? 'own' : 'bought']}</p>
      <p>{WORDS.notOffered}</p>
      <WhereItLies all={all} batch={batch} />
      <DayField
        label={WORDS.since}
        value={on}
        max={dayOf(new Date())}
        onDay={(day) => {
          if (day === '') return;
          const now = latest(batch);
          void onKeep(suspectBatch(now, { ...now.suspicion!, on: day }, nowStamp()), WORDS.sinceKept);
        }}
      />
      <label class="field">
        <span>{WORDS.why}</span>
        <input
          type="text"
          value={why}
          autocomplete="off"
          onInput={(event) => setWhy(event.currentTarget.value)}
          onChange={() => {
            const now = latest(batch);
            void onKeep(suspectBatch(now, { ...now.suspicion!, why: why.trim() }, nowStamp()), WORDS.whyKept);
          }}
        />
      </label>
      <button
        type="button"
        class="button"
        onClick={() =>
          void onKeep(
            releaseBatch(latest(batch), dayOf(new Date()), why.trim(), nowStamp()),
            WORDS.releasedNow(batch.name),
          )
        }
      >
        {WORDS.release}
      </button>
    </section>
  );
}

/** What a suspected load asks of the beds that have it already: what to mind, and a look at each plant there. */
function WhereItLies({ all, batch }: OfBatch) {
  const { beds, plantings } = whoReceived(all, batch.id);
  if (beds.length === 0) return null;
  const growing = plantings.filter(({ clearedOn }) => !clearedOn);
  return (
    <>
      <ul class="stack-close">
        {[CAUTIONS.residue, CAUTIONS['do-not-compost'], WHERE_IT_LIES, CAUTIONS['local-rules']].map(
          (says) => (
            <li key={says}>{says}</li>
          ),
        )}
      </ul>
      {growing.length > 0 && (
        <>
          <p>{WORDS.lookThere}</p>
          <ul>
            {growing.map((planting) => {
              const bed = all.beds.find(({ id }) => id === planting.bedId);
              return (
                <li key={planting.id}>
                  <button
                    type="button"
                    class="button-plain"
                    onClick={() => void startLookAt(planting, bed, dayOf(new Date()))}
                  >
                    {WORDS.lookAt(namePlantingAmong(planting, growing), bed?.name ?? '')}
                  </button>
                </li>
              );
            })}
          </ul>
        </>
      )}
    </>
  );
}

/** What the grower calls it, said as such: a look at a plant takes it from the records, whatever the thermometer makes of it. */
const sayTold = (batch: BatchRecord): string =>
  ripens(batch) && batch.told !== undefined ? (WORDS.toldSays[batch.told] ?? '') : '';

function State({ all, batch }: OfBatch) {
  const { state, why, reading } = heapNow(all, batch, dayOf(new Date()));
  const tooHot = overheating(reading);
  return (
    <div class="heap-state">
      {why !== 'does-not-ripen' && <p class="heap-word">{WORDS.states[state]}</p>}
      <p>
        <WithTerms>{[sayTold(batch), WORDS.reasons[why]].filter(Boolean).join(' ')}</WithTerms>
      </p>
      {tooHot && <p class="too-hot">{WORDS.tooHot(tooHot, reading!.celsius)}</p>}
    </div>
  );
}

const choices = (words: Readonly<Record<string, string>>) =>
  Object.entries(words).map(([id, says]) => ({ id, says }));
const DETAILS: readonly FormField[] = [
  { id: 'name', label: GROUND_WORDS.name, as: 'text', must: true },
  {
    id: 'what',
    label: WORDS.what,
    as: 'choice',
    options: BATCH_KINDS.map((id) => ({ id, says: WORDS.kinds[id] })),
  },
  { id: 'source', label: WORDS.source, as: 'text' },
  { id: 'sprayedFields', label: WORDS.sprayed, as: 'choice', options: choices(WORDS.sprayedWords) },
  { id: 'arrivedOn', label: WORDS.arrived, as: 'day' },
  { id: 'startedOn', label: WORDS.started, as: 'day' },
  { id: 'hotOnArrival', label: WORDS.hot, as: 'choice', options: YES_NO },
  { id: 'told', label: WORDS.told, as: 'choice', options: choices(WORDS.toldWords) },
  { id: 'woodShare', label: WORDS.wood, as: 'number', within: [0, 100] },
  { id: 'usedUpOn', label: WORDS.usedUp, as: 'day' },
  { id: 'note', label: GROUND_WORDS.note, as: 'note' },
];

const asTyped = (batch: BatchRecord): Typed => ({
  name: batch.name,
  what: batch.what ?? '',
  source: batch.source,
  sprayedFields: batch.sprayedFields ?? '',
  arrivedOn: batch.arrivedOn ?? '',
  startedOn: batch.startedOn ?? '',
  hotOnArrival: sayYesNo(batch.hotOnArrival),
  told: batch.told ?? '',
  woodShare: sayShare(batch.woodShare),
  usedUpOn: batch.usedUpOn ?? '',
  note: batch.note,
});

function DetailsForm({ batch, onClose }: { readonly batch: BatchRecord; readonly onClose: () => void }) {
  const save = useEdit(batch);
  return (
    <GroundForm
      title={WORDS.change}
      fields={DETAILS}
      needs={() => [batch]}
      initial={asTyped(batch)}
      onClose={onClose}
      onSave={async (typed, changed) =>
        typed.name?.trim()
          ? save((base) => editBatch(base, { ...asTyped(base), ...changed }))
          : { missing: GROUND_WORDS.nameFirst }
      }
      onDelete={() => {
        void deleteGround(batch, WORDS.removed(batch.name)).then(
          (done) => done && goTo({ place: 'ground', page: 'batches' }),
        );
      }}
    />
  );
}

const sayGiven = ({ date, depthCm, how }: Spreading): string =>
  [
    describeDayAndYear(date),
    depthCm === undefined ? '' : GROUND_WORDS.deep(depthCm),
    how ? GROUND_WORDS.ways[how].toLowerCase() : '',
  ]
    .filter(Boolean)
    .join(', ');

/** Where something of it was on a bed before it came, one of the two days is wrong. */
function sayWentTooEarly({ arrivedOn, given }: BatchRecord): string {
  const first = given.map(({ date }) => date).sort()[0];
  return arrivedOn === undefined || first === undefined || first >= arrivedOn
    ? ''
    : WORDS.wentTooEarly(describeDayAndYear(arrivedOn), describeDayAndYear(first));
}

/** Every bed and planting that received it. */
function Went({ all, batch, onChange }: OfBatch & { readonly onChange: (given: Spreading) => void }) {
  const { beds, plantings } = whoReceived(all, batch.id);
  const tooEarly = sayWentTooEarly(batch);
  const bedName = (id: string | undefined): string => all.beds.find((bed) => bed.id === id)?.name ?? '';
  return (
    <section class="stack-close">
      <h2>{WORDS.went}</h2>
      {tooEarly && <p>{tooEarly}</p>}
      {beds.length === 0 && <p class="soft">{WORDS.wentNowhere}</p>}
      {beds.length > 0 && (
        <>
          <h3 class="list-title">{WORDS.wentBeds}</h3>
          <ul>
            {beds.map(({ id, name }) => (
              <li class="ground-line" key={id}>
                <a class="link-line" href={hashOf({ place: 'ground', bed: id })}>
                  {name}
                </a>
                <ul class="went-times">
                  {batch.given
                    .filter(({ bedId }) => bedId === id)
                    .map((given) => (
                      <li key={given.id} class="small soft">
                        <span>{sayGiven(given)}</span>
                        <button
                          type="button"
                          class="button-plain small"
                          aria-label={GROUND_WORDS.changeThis(`${name}, ${sayGiven(given)}`)}
                          onClick={() => onChange(given)}
                        >
                          {GROUND_WORDS.change}
                        </button>
                      </li>
                    ))}
                </ul>
              </li>
            ))}
          </ul>
          <h3 class="list-title">{WORDS.wentPlantings}</h3>
          {plantings.length === 0 && <p class="soft">{WORDS.noPlantings}</p>}
          <ul>
            {plantings.map((planting) => (
              <li class="ground-line" key={planting.id}>
                <span>
                  {namePlantingAmong(planting, plantings)}{' '}
                  <span class="soft small">{bedName(planting.bedId)}</span>
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
