import { useRef } from 'preact/hooks';
import type { Garden } from '../../../garden/gather-garden.ts';
import {
  type BatchRecord,
  type BedRecord,
  EVENTS,
  type EventRecord,
  type PlantingRecord,
  SPREADING_WAYS,
  type Spreading,
} from '../../../garden/ground-records.ts';
import { batchesToSpread, isSuspected } from '../../../garden/trace-batches.ts';
import { SETTINGS, type SettingId } from '../../../signs/settings.ts';
import {
  editBed,
  editEvent,
  editPlanting,
  putSpreading,
  spreadingFrom,
  type Typed,
} from '../../state/edit-ground.ts';
import { deleteGround, keepWithUndo, latest, onRecord } from '../../state/garden.ts';
import { goTo, hashOf } from '../../state/route.ts';
import { capitalise, joinWords } from '../../words/causes.ts';
import { CROP_WORDS, cropName, findCrops } from '../../words/crops.ts';
import { dayOf } from '../../words/dates.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { type FormField, GroundForm, idsIn, type Option, sayYesNo, useEdit, YES_NO } from './ground-form.tsx';

/** The answers that the questions of a look offer, so that records speak the same words. */
const optionsOf = (id: SettingId): Option[] => {
  const setting = SETTINGS[id];
  return 'options' in setting
    ? setting.options.map((one) => ({ id: one.id, says: capitalise(one.says) }))
    : [];
};

const NOTE: FormField = { id: 'note', label: WORDS.note, as: 'note' };
const BED_FIELDS: readonly FormField[] = [
  { id: 'name', label: WORDS.name, as: 'text', must: true },
  { id: 'place', label: WORDS.place, as: 'choice', options: optionsOf('place') },
  { id: 'soil', label: WORDS.soil, as: 'choice', options: optionsOf('soil-kind') },
  { id: 'soilReaction', label: WORDS.reaction, as: 'choice', options: optionsOf('soil-ph') },
  NOTE,
];

interface Closes {
  readonly onClose: () => void;
}

export function BedForm({ bed, onClose }: { readonly bed: BedRecord } & Closes) {
  const save = useEdit(bed);
  const initial: Typed = {
    name: bed.name,
    place: bed.place ?? '',
    soil: bed.soil ?? '',
    soilReaction: bed.soilReaction ?? '',
    note: bed.note,
  };
  return (
    <GroundForm
      title={WORDS.changeBed}
      fields={BED_FIELDS}
      needs={() => [bed]}
      initial={initial}
      onClose={onClose}
      onSave={async (typed, changed) => {
        if (!typed.name?.trim()) return { missing: WORDS.nameFirst };
        return save((base) => editBed(base, { ...asTypedBed(base), ...changed }));
      }}
      onDelete={() => {
        void deleteGround(bed, WORDS.bedDeleted(bed.name)).then((done) => done && goTo({ place: 'ground' }));
      }}
    />
  );
}

const asTypedBed = ({ name, place, soil, soilReaction, note }: BedRecord): Typed => ({
  name,
  place: place ?? '',
  soil: soil ?? '',
  soilReaction: soilReaction ?? '',
  note,
});

/** Where a thing was put on the wrong bed, it is put on the right one. Offered once it is on record: before, the page says it. */
const bedField = (beds: readonly BedRecord[], { revision }: { readonly revision?: number }): FormField[] =>
  revision === undefined
    ? []
    : [
        {
          id: 'bedId',
          label: WORDS.onBed,
          as: 'choice',
          must: true,
          options: beds.map(({ id, name }) => ({ id, says: name })),
        },
      ];

interface OnBeds extends Closes {
  readonly beds: readonly BedRecord[];
}

export function EventForm({ event, beds, onClose }: { readonly event: EventRecord } & OnBeds) {
  const save = useEdit(event);
  const asTyped = (one: EventRecord): Typed => ({
    bedId: one.bedId,
    what: one.what,
    date: one.date || dayOf(new Date()),
    amount: one.amount ?? '',
    note: one.note,
  });
  return (
    <GroundForm
      title={WORDS.didTitle}
      needs={({ bedId }) => [event, { kind: 'bed', id: bedId }]}
      fields={[
        {
          id: 'what',
          label: WORDS.what,
          as: 'choice',
          must: true,
          options: EVENTS.map((id) => ({ id, says: WORDS.events[id] })),
        },
        { id: 'date', label: WORDS.day, as: 'day', must: true },
        {
          id: 'amount',
          label: WORDS.amount,
          as: 'choice',
          options: Object.entries(WORDS.amounts).map(([id, says]) => ({ id, says: capitalise(says) })),
        },
        ...bedField(beds, event),
        NOTE,
      ]}
      initial={asTyped(event)}
      onClose={onClose}
      onSave={async (typed, changed) =>
        typed.date
          ? save((base) => editEvent(base, { ...asTyped(base), ...changed }))
          : { missing: WORDS.dayFirst }
      }
      {...(event.revision === undefined
        ? {}
        : { onDelete: () => void deleteGround(event, WORDS.deleted).then(onClose) })}
    />
  );
}

export function PlantingForm({ planting, beds, onClose }: { readonly planting: PlantingRecord } & OnBeds) {
  const save = useEdit(planting);
  const asTyped = (one: PlantingRecord): Typed => ({
    bedId: one.bedId ?? '',
    crop: one.crop,
    variety: one.variety ?? '',
    colour: one.colour ?? '',
    sownOn: one.sownOn ?? '',
    plantedOn: one.plantedOn ?? '',
    hardenedOff: sayYesNo(one.hardenedOff),
    netted: sayYesNo(one.netted),
    clearedOn: one.clearedOn ?? '',
    note: one.note,
  });
  return (
    <GroundForm
      title={WORDS.plantTitle}
      needs={({ bedId }) => [planting, { kind: 'bed', id: bedId }]}
      fields={[
        {
          id: 'crop',
          label: WORDS.crop,
          as: 'choice',
          must: true,
          options: findCrops('').map((id) => ({ id, says: CROP_WORDS[id].name })),
        },
        { id: 'variety', label: WORDS.variety, as: 'text' },
        { id: 'sownOn', label: WORDS.sownOn, as: 'day' },
        { id: 'plantedOn', label: WORDS.plantedOn, as: 'day' },
        { id: 'hardenedOff', label: WORDS.hardenedOff, as: 'choice', options: YES_NO, half: true },
        { id: 'netted', label: WORDS.netted, as: 'choice', options: YES_NO, half: true },
        ...bedField(beds, planting),
        NOTE,
        {
          id: 'colour',
          label: WORDS.colour,
          as: 'choice',
          options: optionsOf('variety-colour'),
          rare: true,
        },
        { id: 'clearedOn', label: WORDS.clearedOn, as: 'day', rare: true },
      ]}
      initial={asTyped(planting)}
      onClose={onClose}
      onSave={async (typed, changed) =>
        typed.crop
          ? save((base) => editPlanting(base, { ...asTyped(base), ...changed }))
          : { missing: WORDS.cropFirst }
      }
      {...(planting.revision === undefined
        ? {}
        : { onDelete: () => void deleteGround(planting, WORDS.deleted).then(onClose) })}
    />
  );
}

const plantingsOn = (garden: Garden, bedId: string | undefined): PlantingRecord[] =>
  garden.plantings.filter((one) => bedId !== '' && one.bedId === bedId);

function plantingField(garden: Garden, bedId: string | undefined): FormField[] {
  const plantings = plantingsOn(garden, bedId);
  if (plantings.length === 0) return [];
  return [
    {
      id: 'plantingId',
      label: WORDS.forPlanting,
      as: 'choice',
      options: plantings.map(({ id, crop, variety }) => ({
        id,
        says: [cropName(crop), variety].filter(Boolean).join(', '),
      })),
    },
  ];
}

interface SpreadFormProps extends Closes {
  readonly garden: Garden;
  /** Chosen beforehand. */
  readonly bedId?: string;
  readonly batch?: BatchRecord;
  /** To be changed. */
  readonly given?: Spreading;
}

/** Something from a batch goes on a bed. Batches under suspicion are not offered. */
export function SpreadForm({ garden, bedId, batch, given, onClose }: SpreadFormProps) {
  const free = batchesToSpread(garden);
  const offered = batch && given ? [batch] : free;
  const heldBack = garden.batches.filter(isSuspected).map(({ name }) => name);
  const initial: Typed = {
    batchId: batch?.id ?? (offered.length === 1 ? offered[0]!.id : ''),
    bedId: given?.bedId ?? bedId ?? '',
    date: given?.date ?? dayOf(new Date()),
    depthCm: given?.depthCm === undefined ? '' : String(given.depthCm),
    how: given?.how ?? '',
    plantingId: given?.plantingId ?? '',
  };
  const title = batch && !given ? WORDS.spreadOf(batch.name) : WORDS.spreadTitle;
  // Once it is open it stays, whatever another tab does: what was typed must not go.
  const isOffered = useRef(offered.length > 0);
  if (!isOffered.current && offered.length > 0) isOffered.current = true;
  if (!isOffered.current)
    return (
      <div class="ground-form stack">
        <h2>{title}</h2>
        <p>
          {WORDS.noBatch} {heldBack.length > 0 && WORDS.notOffered(joinWords(heldBack))}
        </p>
        <p class="ground-actions">
          <a class="button" href={hashOf({ place: 'ground', page: 'batches' })}>
            {WORDS.addBatch}
          </a>
          <button type="button" class="button" onClick={onClose}>
            {WORDS.cancel}
          </button>
        </p>
      </div>
    );
  // Of which plantings one is offered hangs on the bed that is chosen.
  const fieldsFor = (typed: Typed): FormField[] => [
    ...(batch
      ? []
      : [
          {
            id: 'batchId',
            label: WORDS.fromBatch,
            as: 'choice' as const,
            must: true,
            options: offered.map(({ id, name }) => ({ id, says: name })),
          },
        ]),
    ...(bedId && !given
      ? []
      : [
          {
            id: 'bedId',
            label: given ? WORDS.onBed : WORDS.onBeds,
            as: given ? ('choice' as const) : ('several' as const),
            must: true,
            options: garden.beds.map(({ id, name }) => ({ id, says: name })),
          },
        ]),
    { id: 'date', label: WORDS.day, as: 'day', must: true },
    { id: 'depthCm', label: WORDS.depth, as: 'number', unit: 'cm', within: [0, 200] },
    {
      id: 'how',
      label: WORDS.how,
      as: 'choice',
      options: SPREADING_WAYS.map((id) => ({ id, says: WORDS.ways[id] })),
    },
    ...plantingField(garden, typed.bedId),
  ];
  return (
    <>
      {heldBack.length > 0 && !batch && <p class="small">{WORDS.notOffered(joinWords(heldBack))}</p>}
      <GroundForm
        title={title}
        needs={(typed) => [
          { kind: 'batch', id: typed.batchId },
          ...idsIn(typed.bedId).map((id) => ({ kind: 'bed' as const, id })),
        ]}
        fields={fieldsFor}
        initial={initial}
        onClose={onClose}
        onSave={async (typed) => {
          const from = onRecord('batch', typed.batchId);
          const isHere = plantingsOn(garden, typed.bedId).some(({ id }) => id === typed.plantingId);
          const puts = idsIn(typed.bedId).map((onto) =>
            spreadingFrom(
              { ...typed, bedId: onto, plantingId: isHere ? (typed.plantingId ?? '') : '' },
              given?.id ?? crypto.randomUUID(),
            ),
          );
          if (!from || puts.length === 0 || !puts.every((put) => put !== undefined))
            return { missing: WORDS.bedFirst };
          // Of the batch only these list elements change, so what is stored by now is the base.
          return keepWithUndo([puts.reduce(putSpreading, from)], WORDS.kept);
        }}
        {...(batch && given
          ? {
              onDelete: () => {
                const now = latest(batch);
                const rest = now.given.filter(({ id }) => id !== given.id);
                void keepWithUndo([{ ...now, given: rest }], WORDS.deleted).then(onClose);
              },
            }
          : {})}
      />
    </>
  );
}
