import { useEffect, useRef, useState } from 'preact/hooks';
import type { NormalLeafRecord } from '../../../../garden/ground-records.ts';
import type { LeafReading, Taps } from '../../../../leaf/types.ts';
import type { Spot } from '../../../../photo/types.ts';
import { SETTINGS } from '../../../../signs/settings.ts';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { PhotoTroubles } from '../../../parts/PhotoTroubles/photo-troubles.tsx';
import { Specimen } from '../../../parts/Specimen/specimen.tsx';
import { addTap } from '../../../state/change-draft.ts';
import { changeGround, deleteGround } from '../../../state/garden.ts';
import { readNormalLeaf } from '../../../state/keep-normal-leaf.ts';
import { capitalise } from '../../../words/causes.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { OVERLAY_WORDS } from '../../../words/layers.ts';
import { describeMeasures } from '../../../words/measures.ts';
import { NORMAL_WORDS as WORDS } from '../../../words/normal-leaves.ts';
import type { PHOTO_WORKER_WORDS } from '../../../words/photo-troubles.ts';
import { isInside } from '../../Look/is-inside.ts';
import { LeafSwatch } from './leaf-swatch.tsx';

const KINDS = ['leaf', 'add', 'remove', 'white'] as const;
type Kind = (typeof KINDS)[number];

const COLOURS = Object.keys(WORDS.colours) as (keyof typeof WORDS.colours)[];

/** One healthy leaf: its photo with the outline, to be put right by tapping, its colour, day and stage. */
export function NormalLeafSheet({
  leaf,
  caption,
}: {
  readonly leaf: NormalLeafRecord;
  readonly caption: string;
}) {
  const reading = leaf.reading as LeafReading | undefined;
  const { taps, kind, busy, failed, ...does } = useReading(leaf);
  const outline = reading?.leaf.outline;
  const day = describeDayAndYear(leaf.date);
  const tell = (spot: Spot): string =>
    outline && isInside(outline, spot) ? OVERLAY_WORDS.sound : OVERLAY_WORDS.offLeaf;
  return (
    <section class="normal-leaf stack" aria-label={WORDS.leafOf(day)}>
      <Specimen
        photoId={leaf.photoId}
        caption={[day, caption].join(' · ')}
        {...(outline ? { outline } : {})}
        marks={taps}
        showFindings
        busy={busy}
        unshown={reading?.trouble.includes('too-large') ?? false}
        taps={{
          onTap: does.tap,
          onUndo: does.untap,
          onLeave: () => document.querySelector<HTMLElement>('.normal-leaf .tap-modes :checked')?.focus(),
          tell,
        }}
      />
      <PhotoTroubles
        reading={busy ? WORDS.measuring : undefined}
        trouble={reading?.trouble}
        failed={failed}
        onAgain={does.again}
      />
      {reading && <Colour reading={reading} />}
      <details>
        <summary class="small">{WORDS.outline}</summary>
        <div class="tap-modes">
          <fieldset class="segments even">
            <legend class="unseen">{OVERLAY_WORDS.tapMode}</legend>
            {KINDS.map((id) => (
              <label key={id} class="segment">
                <input
                  type="radio"
                  name={`tap-${leaf.id}`}
                  checked={kind === id}
                  onChange={() => does.choose(id)}
                />
                <span>{OVERLAY_WORDS.taps[id].name}</span>
              </label>
            ))}
          </fieldset>
          <p class="small soft">{OVERLAY_WORDS.taps[kind].says}</p>
          {Object.keys(taps).length > 0 && (
            <button type="button" class="button-plain small" onClick={does.untap}>
              {OVERLAY_WORDS.untapLast}
            </button>
          )}
        </div>
      </details>
      <Told leaf={leaf} />
      <button
        type="button"
        class="button-plain small"
        aria-label={WORDS.removeThis(day)}
        onClick={() => void deleteGround(leaf, WORDS.deleted)}
      >
        {WORDS.remove}
      </button>
    </section>
  );
}

/** What was tapped on the photo while this page is open, and the reading that follows each tap. */
function useReading(leaf: NormalLeafRecord) {
  const [said, setSaid] = useState<readonly Taps[]>([{}]);
  const [kind, choose] = useState<Kind>('leaf');
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<keyof typeof PHOTO_WORKER_WORDS | undefined>(undefined);
  const last = useRef(0);
  const taps = said.at(-1) ?? {};
  const read = async (next: Taps): Promise<void> => {
    const turn = ++last.current;
    setBusy(true);
    setFailed(undefined);
    const wrong = await readNormalLeaf(leaf, next);
    if (turn !== last.current) return;
    setBusy(false);
    setFailed(wrong);
  };
  // A leaf that was just added, or whose reading was cut short.
  useEffect(() => {
    if (!leaf.reading) void read({});
  }, [leaf.id]);
  const show = (next: readonly Taps[]): void => {
    setSaid(next);
    void read(next.at(-1) ?? {});
  };
  return {
    taps,
    kind,
    busy,
    failed,
    choose,
    tap: (spot: Spot): void => {
      show([...said, addTap(taps, kind, spot)]);
      if (kind === 'leaf') choose('add');
    },
    untap: (): void => {
      if (said.length > 1) show(said.slice(0, -1));
    },
    again: (): void => void read(taps),
  };
}

function Colour({ reading }: { readonly reading: LeafReading }) {
  const colours = describeMeasures(reading.measures).filter(({ id }) =>
    (COLOURS as readonly string[]).includes(id),
  );
  if (colours.length === 0 || !reading.leaf.found) return <p class="soft">{WORDS.noColour}</p>;
  return (
    <div class="stack-close">
      <h3 class="leaf-colour">
        <LeafSwatch measures={reading.measures} /> {WORDS.colour}
      </h3>
      <dl class="measures figures">
        {colours.map(({ id, says }) => (
          <div key={id}>
            <dt>{WORDS.colours[id as keyof typeof WORDS.colours]}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** The day and the stage of growth, as they may be put right. */
function Told({ leaf }: { readonly leaf: NormalLeafRecord }) {
  const tell = (change: (found: NormalLeafRecord) => NormalLeafRecord): void =>
    void changeGround(leaf, change);
  return (
    <div class="ground-fields">
      <DayField
        label={WORDS.day}
        value={leaf.date}
        max={dayOf(new Date())}
        onDay={(day) => day && tell((found) => ({ ...found, date: day }))}
      />
      <label class="field">
        <span>{WORDS.stage}</span>
        <select
          value={leaf.stage ?? ''}
          onChange={({ currentTarget: { value } }) =>
            tell(({ stage: _stage, ...found }) => (value ? { ...found, stage: value } : found))
          }
        >
          <option value="">{WORDS.notSaid}</option>
          {SETTINGS['crop-stage'].options.map(({ id, says }) => (
            <option key={id} value={id}>
              {capitalise(says)}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
