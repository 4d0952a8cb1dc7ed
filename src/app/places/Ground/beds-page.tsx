import { useState } from 'preact/hooks';
import type { Garden } from '../../../garden/gather-garden.ts';
import type { BedRecord } from '../../../garden/ground-records.ts';
import { bedNamed, newBed } from '../../../garden/name-beds.ts';
import { batchesUnder, isSuspected } from '../../../garden/trace-batches.ts';
import { moveBed } from '../../state/edit-ground.ts';
import { garden, groundRecords, keepRecords, keepWithUndo } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import { hashOf } from '../../state/route.ts';
import { casesAt, UNNAMED } from '../../state/year-of-bed.ts';
import { joinWords } from '../../words/causes.ts';
import { cropName } from '../../words/crops.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { AddByName } from './add-by-name.tsx';

/** The beds in the order of the walk, and the ways to compost and weather. */
export function BedsPage() {
  const all = garden.value;
  const [ordering, setOrdering] = useState(false);
  if (!all) return <h1 tabIndex={-1}>{WORDS.title}</h1>;
  const homeless = casesAt(all, undefined);
  return (
    <div class="ground stack-wide">
      <h1 tabIndex={-1}>{WORDS.title}</h1>
      <nav class="ground-ways" aria-label={WORDS.pages}>
        <a class="button" href={hashOf({ place: 'ground', page: 'batches' })}>
          {WORDS.batches}
        </a>
        <a class="button" href={hashOf({ place: 'ground', page: 'weather' })}>
          {WORDS.weather}
        </a>
        <a class="button" href={hashOf({ place: 'ground', page: 'normal-leaves' })}>
          {WORDS.normal}
        </a>
      </nav>
      {all.beds.length === 0 && <p class="soft">{WORDS.none}</p>}
      <ul class="beds">
        {all.beds.map((bed, at) => (
          <li key={bed.id}>
            <BedLine all={all} bed={bed} />
            {ordering && <Steps beds={all.beds} bed={bed} at={at} />}
          </li>
        ))}
        {homeless.length > 0 && (
          <li>
            <a class="bed" href={hashOf({ place: 'ground', bed: UNNAMED })}>
              <span class="bed-name">{WORDS.unnamed}</span>
              <span class="small soft">{WORDS.all(homeless.length)}</span>
            </a>
          </li>
        )}
      </ul>
      <AddByName label={WORDS.addBed} onAdd={addBed} />
      {all.beds.length > 1 && (
        <button
          type="button"
          class="button-plain"
          aria-pressed={ordering}
          onClick={() => setOrdering(!ordering)}
        >
          {ordering ? WORDS.orderDone : WORDS.changeOrder}
        </button>
      )}
    </div>
  );
}

async function addBed(name: string): Promise<string> {
  const beds = garden.value?.beds ?? [];
  if (bedNamed(name, beds)) return WORDS.alreadyThere(name.trim());
  const fresh = newBed(name, nowStamp());
  // A deleted bed keeps its id: another one of that name is another bed.
  const taken = groundRecords.value?.some(({ id }) => id === fresh.id);
  // Whoever put the beds in order means a new one to come last.
  const last = beds.at(-1)?.order;
  const bed = {
    ...fresh,
    ...(taken ? { id: crypto.randomUUID() } : {}),
    ...(last === undefined ? {} : { order: last + 1 }),
  };
  const saved = await keepWithUndo([bed], WORDS.added(bed.name));
  return saved === 'stored' ? '' : WORDS.trouble[saved];
}

function Steps(props: { readonly beds: readonly BedRecord[]; readonly bed: BedRecord; readonly at: number }) {
  const { beds, bed, at } = props;
  const move = (step: -1 | 1): void => void keepRecords(moveBed(beds, bed.id, step));
  return (
    <p class="bed-steps">
      <button
        type="button"
        class="button"
        disabled={at === 0}
        aria-label={WORDS.earlier(bed.name)}
        onClick={() => move(-1)}
      >
        ↑
      </button>
      <button
        type="button"
        class="button"
        disabled={at === beds.length - 1}
        aria-label={WORDS.later(bed.name)}
        onClick={() => move(1)}
      >
        ↓
      </button>
    </p>
  );
}

function BedLine({ all, bed }: { readonly all: Garden; readonly bed: BedRecord }) {
  const here = casesAt(all, bed);
  const open = here.filter(({ closedOn }) => !closedOn).length;
  const growing = all.plantings.filter(({ bedId, clearedOn }) => bedId === bed.id && !clearedOn);
  const suspected = batchesUnder(all, { bedId: bed.id }).filter(({ batch }) => isSuspected(batch));
  const names = [...new Set(growing.map(({ crop }) => cropName(crop) || WORDS.someCrop))];
  return (
    <a class="bed" href={hashOf({ place: 'ground', bed: bed.id })}>
      <span class="bed-name">{bed.name}</span>
      {names.length > 0 && <span class="soft">{joinWords(names.slice(0, 5))}</span>}
      {suspected.map(({ batch }) => (
        <span class="flagged" key={batch.id}>
          {WORDS.suspectedHere(batch.name)}
        </span>
      ))}
      {here.length > 0 && (
        <span class="small soft">
          {WORDS.open(open)}
          {here.length > open && `, ${WORDS.all(here.length)}`}
        </span>
      )}
    </a>
  );
}
