import { useEffect, useState } from 'preact/hooks';
import { HatchingSwitch } from '../../parts/Specimen/hatching-switch.tsx';
import { Specimen } from '../../parts/Specimen/specimen.tsx';
import type { TapMode } from '../../state/change-draft.ts';
import type { DraftPhoto } from '../../state/draft.ts';
import { change, draft, overlays, removePhoto, wantOverlay } from '../../state/look-session.ts';
import { preferences } from '../../state/preferences.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { PHOTO_TROUBLE_WORDS, PHOTO_WORKER_WORDS } from '../../words/photo-troubles.ts';
import { PHOTO_ROLES, ROLE_WORDS } from '../../words/roles.ts';
import { PhotoFindings } from './photo-findings.tsx';
import { RoleQuestion } from './role-question.tsx';

const MODES: readonly TapMode[] = ['leaf', 'add', 'remove', 'white'];

/** One photo, large: its outline and hatching, what a tap on it does, what was found, and what is wrong with it. */
export function PhotoSheet({ photo, slots, onRoleSaid }: PhotoSheetProps) {
  const [mode, setMode] = useState<TapMode>('leaf');
  useEffect(() => wantOverlay(photo), [photo]);
  const { reading } = photo;
  const showHatching = preferences.value.showHatching;
  const role = photo.roleOpen ? WORDS.roleOpen : ROLE_WORDS[photo.role].name;
  const caption = [photo.roleOpen ? '' : role, takenWords(photo), draft.value.bed]
    .filter(Boolean)
    .join(' · ');
  return (
    <div class="photo-sheet stack">
      <Specimen
        photoId={photo.id}
        caption={caption}
        {...(reading?.leaf.outline ? { outline: reading.leaf.outline } : {})}
        {...(overlays.value.get(photo.id) ? { overlay: overlays.value.get(photo.id) } : {})}
        marks={photo.taps}
        showFindings={showHatching}
        busy={isBusy(photo)}
        hidden={reading?.trouble.includes('too-large') ?? false}
        onTap={(spot) => {
          change({ kind: 'tap', photoId: photo.id, mode, spot });
          if (mode === 'leaf') setMode('add');
        }}
      >
        <HatchingSwitch says={WORDS.hatching} />
      </Specimen>
      {photo.roleOpen && <RoleQuestion photo={photo} onSaid={onRoleSaid} />}
      {slots}
      <Troubles photo={photo} />
      <TapModes photo={photo} mode={mode} onMode={setMode} />
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
      {reading && <PhotoFindings reading={reading} />}
    </div>
  );
}

interface PhotoSheetProps {
  readonly photo: DraftPhoto;
  /** The row of all photos, right under the large one. */
  readonly slots: preact.JSX.Element;
  readonly onRoleSaid: () => void;
}

const isBusy = ({ reading, stale, failed }: DraftPhoto): boolean => (!reading || stale === true) && !failed;

const takenWords = ({ reading }: DraftPhoto): string =>
  reading?.takenAt ? WORDS.taken(describeDayAndYear(reading.takenAt)) : '';

/** What is wrong with the photo and what to do; said once, as soon as it is known. */
function Troubles({ photo }: { readonly photo: DraftPhoto }) {
  const { reading, failed } = photo;
  return (
    <div role="status" class="stack-close">
      {isBusy(photo) && <p class="soft">{WORDS.reading}</p>}
      {reading?.trouble.map((code) => (
        <p key={code} class="photo-trouble">
          {PHOTO_TROUBLE_WORDS[code]}
        </p>
      ))}
      {failed && (
        <p class="photo-trouble">
          {PHOTO_WORKER_WORDS[failed]}{' '}
          <button
            type="button"
            class="button-plain"
            onClick={() => change({ kind: 'read-again', photoId: photo.id })}
          >
            {WORDS.readAgain}
          </button>
        </p>
      )}
    </div>
  );
}

interface TapModesProps {
  readonly photo: DraftPhoto;
  readonly mode: TapMode;
  readonly onMode: (mode: TapMode) => void;
}

function TapModes({ photo, mode, onMode }: TapModesProps) {
  const tapped = Object.keys(photo.taps).length > 0;
  return (
    <div class="tap-modes">
      <fieldset class="segments even">
        <legend class="unseen">{WORDS.tapMode}</legend>
        {MODES.map((id) => (
          <label key={id} class="segment">
            <input type="radio" name="tap-mode" checked={mode === id} onChange={() => onMode(id)} />
            <span>{WORDS.tapModes[id].name}</span>
          </label>
        ))}
      </fieldset>
      <p class="small soft">
        {WORDS.tapModes[mode].says}{' '}
        {tapped && (
          <button
            type="button"
            class="button-inline"
            onClick={() => change({ kind: 'untap', photoId: photo.id })}
          >
            {WORDS.untap}
          </button>
        )}
      </p>
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
