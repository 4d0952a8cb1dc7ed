import { signal } from '@preact/signals';
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Spot } from '../../../photo/types.ts';
import { PhotoTroubles } from '../../parts/PhotoTroubles/photo-troubles.tsx';
import { HatchingSwitch } from '../../parts/Specimen/hatching-switch.tsx';
import { LayerList, layersOn } from '../../parts/Specimen/layer-list.tsx';
import { layerUnder } from '../../parts/Specimen/paint-layers.ts';
import { Specimen } from '../../parts/Specimen/specimen.tsx';
import { change } from '../../state/change-look.ts';
import { type DraftPhoto, isBusy } from '../../state/draft.ts';
import { overlays, removePhoto, wantOverlay } from '../../state/look-photos.ts';
import { bedOfLook } from '../../state/parts-of-look.ts';
import { preferences } from '../../state/preferences.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { LAYER_WORDS, OVERLAY_WORDS, type TapKind } from '../../words/layers.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeMeasures } from '../../words/measures.ts';
import { PHOTO_ROLES, ROLE_WORDS } from '../../words/roles.ts';
import type { LayerId, LayerMap } from '../../workers/lay-layers.ts';
import { BesideNormal } from './beside-normal.tsx';
import { isInside } from './is-inside.ts';
import { PhotoFindings } from './photo-findings.tsx';
import { RoleQuestion } from './role-question.tsx';

const KINDS = Object.keys(OVERLAY_WORDS.taps) as TapKind[];

/** Layers that are switched off, on every photo until the page is closed. */
const hiddenLayers = signal<ReadonlySet<LayerId>>(new Set());

function showLayer(layer: LayerId, shown: boolean): void {
  const next = new Set(hiddenLayers.value);
  if (shown) next.delete(layer);
  else next.add(layer);
  hiddenLayers.value = next;
}

const NO_LAYERS: readonly LayerId[] = [];

/** One photo, large: what is drawn on it, what a tap on it does, what was found, and what is wrong with it. */
export function PhotoSheet({ photo, slots, onRoleSaid }: PhotoSheetProps) {
  const { reading } = photo;
  const map = overlays.value.get(photo.id);
  const [chosen, setChosen] = useState<TapKind | undefined>(undefined);
  const [picked, setPicked] = useState(NO_LAYERS);
  const [here, setHere] = useState('');
  useEffect(() => wantOverlay(photo), [photo]);
  // Where no leaf was found the next tap says which one is meant.
  const kind = chosen ?? (reading?.trouble.includes('no-leaf') ? 'leaf' : 'ask');
  const outline = reading?.leaf.outline;
  const tell = useCallback((spot: Spot) => describeSpot(map, outline, spot), [map, outline]);
  const role = photo.roleOpen ? WORDS.roleOpen : ROLE_WORDS[photo.role].name;
  const caption = [photo.roleOpen ? '' : role, takenWords(photo), bedOfLook.value]
    .filter(Boolean)
    .join(' · ');
  const pick = (layers: readonly LayerId[]): void => {
    setPicked(layers);
    // What is pointed out must be there to be seen.
    for (const layer of layers) showLayer(layer, true);
  };
  const tap = (spot: Spot): void => {
    setHere(kind === 'ask' ? OVERLAY_WORDS.here(tell(spot)) : '');
    if (kind === 'ask') {
      const layer = map && layerUnder(map, spot);
      pick(layer ? [layer] : []);
      return;
    }
    change({ kind: 'tap', photoId: photo.id, mode: kind, spot });
    if (kind === 'leaf') setChosen('add');
  };
  const choose = (next: TapKind): void => {
    setChosen(next);
    setHere('');
  };
  return (
    <div class="photo-sheet stack">
      <Specimen
        photoId={photo.id}
        caption={caption}
        {...(outline ? { outline } : {})}
        layers={map}
        hidden={hiddenLayers.value}
        picked={picked}
        marks={photo.taps}
        showFindings={preferences.value.showHatching}
        busy={isBusy(photo)}
        taps={{
          onTap: tap,
          onUndo: () => change({ kind: 'untap-last', photoId: photo.id }),
          onLeave: () => document.querySelector<HTMLElement>('.tap-modes :checked')?.focus(),
          tell,
        }}
      />
      <PhotoTroubles
        reading={isBusy(photo) ? WORDS.reading : undefined}
        trouble={photo.reading?.trouble}
        failed={photo.failed}
        onAgain={() => change({ kind: 'read-again', photoId: photo.id })}
      />
      <TapModes photo={photo} kind={kind} onKind={choose} here={here} />
      {reading && map && <HatchingSwitch says={OVERLAY_WORDS.hatching} />}
      {photo.roleOpen && <RoleQuestion photo={photo} onSaid={onRoleSaid} />}
      {reading && (
        <PhotoFindings
          reading={reading}
          network={photo.network}
          pointing={map && { there: layersOn(map), picked, onPick: pick }}
        >
          {map && (
            <LayerList
              map={map}
              measures={describeMeasures(reading.measures)}
              hidden={hiddenLayers.value}
              onShow={showLayer}
              picked={picked}
              onPick={pick}
            />
          )}
        </PhotoFindings>
      )}
      {reading && !photo.roleOpen && <BesideNormal reading={reading} />}
      {slots}
      <details>
        <summary class="small">{WORDS.aboutPhoto(role)}</summary>
        <RoleChoice photo={photo} />
        <button
          type="button"
          class="button-plain small"
          onClick={() => removePhoto(photo, WORDS.photoRemoved)}
        >
          {WORDS.removePhoto}
        </button>
      </details>
    </div>
  );
}

/** A file that nothing can be read from: what is wrong, what to do, and the way to take it off. */
export function UnusablePhoto({ photo }: { readonly photo: DraftPhoto }) {
  const { file, reading } = photo;
  return (
    <>
      <PhotoTroubles
        reading={undefined}
        file={file}
        trouble={reading?.trouble}
        failed={undefined}
        onAgain={() => change({ kind: 'read-again', photoId: photo.id })}
      />
      <button type="button" class="button-plain small" onClick={() => removePhoto(photo, WORDS.photoRemoved)}>
        {file ? WORDS.removeFile(file) : WORDS.removePhoto}
      </button>
    </>
  );
}

interface PhotoSheetProps {
  readonly photo: DraftPhoto;
  /** The row of all photos. */
  readonly slots: preact.JSX.Element;
  readonly onRoleSaid: () => void;
}

/** What was measured at a spot, in words. */
function describeSpot(map: LayerMap | undefined, outline: readonly Spot[] | undefined, spot: Spot): string {
  if (!map || !outline) return OVERLAY_WORDS.unknown;
  const layer = layerUnder(map, spot);
  if (layer) return LAYER_WORDS[layer].name.toLocaleLowerCase('en-GB');
  return isInside(outline, spot) ? OVERLAY_WORDS.sound : OVERLAY_WORDS.offLeaf;
}

const takenWords = ({ reading }: DraftPhoto): string =>
  reading?.takenAt ? WORDS.taken(describeDayAndYear(reading.takenAt)) : '';

interface TapModesProps {
  readonly photo: DraftPhoto;
  readonly kind: TapKind;
  readonly onKind: (kind: TapKind) => void;
  /** What the last tap told. */
  readonly here: string;
}

function TapModes({ photo, kind, onKind, here }: TapModesProps) {
  const tapped = Object.keys(photo.taps).length > 0;
  return (
    <div class="tap-modes">
      <fieldset class="segments five">
        <legend class="unseen">{OVERLAY_WORDS.tapMode}</legend>
        {KINDS.map((id) => (
          <label key={id} class="segment">
            <input type="radio" name="tap-mode" checked={kind === id} onChange={() => onKind(id)} />
            <span>{OVERLAY_WORDS.taps[id].name}</span>
          </label>
        ))}
      </fieldset>
      <p class="small" role="status">
        {here || <span class="soft">{OVERLAY_WORDS.taps[kind].says}</span>}
      </p>
      {((photo.tapsBefore?.length ?? 0) > 0 || tapped) && (
        <p class="tap-undo">
          {(photo.tapsBefore?.length ?? 0) > 0 && (
            <button
              type="button"
              class="button-plain small"
              onClick={() => change({ kind: 'untap-last', photoId: photo.id })}
            >
              {OVERLAY_WORDS.untapLast}
            </button>
          )}
          {tapped && (
            <button
              type="button"
              class="button-plain small"
              onClick={() => change({ kind: 'untap', photoId: photo.id })}
            >
              {OVERLAY_WORDS.untapAll}
            </button>
          )}
        </p>
      )}
    </div>
  );
}

function RoleChoice({ photo }: { readonly photo: DraftPhoto }) {
  return (
    <fieldset class="role-choice">
      <legend class="small soft">{WORDS.thisIs}</legend>
      <div class="segments even">
        {PHOTO_ROLES.map((role) => (
          <label key={role} class="segment">
            <input
              type="radio"
              name="role"
              checked={!photo.roleOpen && photo.role === role}
              onChange={() => change({ kind: 'set-role', photoId: photo.id, role })}
            />
            <span>{ROLE_WORDS[role].name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
