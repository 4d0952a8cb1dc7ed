import { useEffect, useRef, useState } from 'preact/hooks';
import type { PhotoRole } from '../../../photo/types.ts';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { FilePicker } from '../../parts/FilePicker/file-picker.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { MOST_PHOTOS } from '../../state/change-draft.ts';
import { type DraftPhoto, isUsable } from '../../state/draft.ts';
import { addPhotos } from '../../state/look-photos.ts';
import { hasAnswersOfLook, photosOfLook } from '../../state/parts-of-look.ts';
import { thumbnailOf, usePicture } from '../../state/pictures.ts';
import { photoBridge } from '../../state/workers.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { PHOTO_ROLES, ROLE_WORDS } from '../../words/roles.ts';

const Viewfinder = onUse(() =>
  import('../../parts/Viewfinder/viewfinder.tsx').then((part) => part.Viewfinder),
);
const PhotoSheet = onUse(() => import('./photo-sheet.tsx').then((part) => part.PhotoSheet));

/** Is there a way to the camera's film at all? Whether there is a camera shows when it is asked for. */
const hasCamera = (): boolean => typeof navigator.mediaDevices?.getUserMedia === 'function';

/** The photos of a look: one large, the four roles below, and the ways to add some. */
export function PhotoDesk() {
  const photos = photosOfLook.value;
  const [shownId, setShownId] = useState<string | undefined>(undefined);
  const [surplus, setSurplus] = useState(0);
  const usable = photos.filter(isUsable);
  const shown = usable.find(({ id }) => id === shownId) ?? usable[0];
  const add = async (files: readonly File[], role?: PhotoRole): Promise<void> => {
    if (files.length === 0) return;
    const before = new Set(photosOfLook.value.map(({ id }) => id));
    setSurplus(await addPhotos(files, role));
    setShownId(photosOfLook.value.find(({ id }) => !before.has(id))?.id);
  };
  usePaste((files) => void add(files));
  const slots = (
    <ul class="slots">
      {PHOTO_ROLES.map((role) => (
        <Slot
          key={role}
          role={role}
          photo={usable.find((photo) => photo.role === role)}
          isShown={shown?.role === role}
          onShow={setShownId}
          onAdd={(files) => void add(files, role)}
        />
      ))}
    </ul>
  );
  return (
    <section
      class="photo-desk stack"
      aria-labelledby="photos-title"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void add(pictureFiles(event.dataTransfer));
      }}
    >
      <h2 id="photos-title" class={usable.length > 0 ? 'unseen' : ''}>
        {WORDS.photos} <span class="photos-lead small soft">{WORDS.photosLead}</span>
      </h2>
      {shown ? (
        <PhotoSheet
          key={shown.id}
          photo={shown}
          slots={slots}
          onRoleSaid={() =>
            setShownId((photosOfLook.value.find((one) => one.roleOpen && isUsable(one)) ?? shown).id)
          }
        />
      ) : (
        slots
      )}
      <Unusable photos={photos.filter((photo) => !isUsable(photo))} />
      {usable.length < MOST_PHOTOS && <AddPhotos onAdd={(files) => void add(files)} isNext={!hasStarted()} />}
      {surplus > 0 && <p role="status">{WORDS.tooMany(surplus)}</p>}
    </section>
  );
}

const UnusablePhoto = onUse(() => import('./photo-sheet.tsx').then((part) => part.UnusablePhoto));

/** Files that nothing can be read from: each with what to do, in no photo's place. */
function Unusable({ photos }: { readonly photos: readonly DraftPhoto[] }) {
  if (photos.length === 0) return null;
  return (
    <ul class="stack-close">
      {photos.map((photo) => (
        <li key={photo.id}>
          <UnusablePhoto photo={photo} />
        </li>
      ))}
    </ul>
  );
}

/** While the person frames or chooses, the worker has time to make ready. */
const rouse = (): void => photoBridge.rouse();

const hasStarted = (): boolean => photosOfLook.value.length > 0 || hasAnswersOfLook.value;

const pictureFiles = (data: DataTransfer | null): File[] => [...(data?.files ?? [])];

/** Pictures pasted anywhere on the page go to this look; text pasted into a field is left alone. */
function usePaste(onFiles: (files: readonly File[]) => void): void {
  const latest = useRef(onFiles);
  latest.current = onFiles;
  useEffect(() => {
    const paste = (event: ClipboardEvent): void => {
      const files = pictureFiles(event.clipboardData);
      if (files.length === 0) return;
      event.preventDefault();
      latest.current(files);
    };
    addEventListener('paste', paste);
    return () => removeEventListener('paste', paste);
  }, []);
}

interface SlotProps {
  readonly role: PhotoRole;
  readonly photo: DraftPhoto | undefined;
  readonly isShown: boolean;
  readonly onShow: (id: string) => void;
  readonly onAdd: (files: readonly File[]) => void;
}

function Slot({ role, photo, isShown, onShow, onAdd }: SlotProps) {
  const { name, says } = ROLE_WORDS[role];
  const shows = photo?.roleOpen ? WORDS.roleOpen : name;
  if (photo)
    return (
      <li>
        <button
          type="button"
          class={`slot filled${photo.roleOpen ? ' open' : ''}`}
          aria-label={WORDS.show(shows)}
          aria-pressed={isShown}
          onClick={() => onShow(photo.id)}
        >
          <SlotPicture photo={photo} />
          <span class="slot-name">{shows}</span>
        </button>
      </li>
    );
  return (
    <li>
      <FilePicker class="slot" label={WORDS.addFor(`${name}, ${says}`)} onAdd={onAdd} onOpen={rouse}>
        <Drawn of={role} />
        <span class="slot-name">{name}</span>
      </FilePicker>
    </li>
  );
}

function SlotPicture({ photo }: { readonly photo: DraftPhoto }) {
  // Once it has been read there is a small copy; the whole file would be decoded again for a stamp.
  const address = usePicture(...(photo.reading ? [thumbnailOf(photo.id), photo.id] : [photo.id]));
  return <span class="slot-picture">{address && <img src={address} alt="" />}</span>;
}

interface AddPhotosProps {
  readonly onAdd: (files: readonly File[]) => void;
  readonly isNext: boolean;
}

function AddPhotos({ onAdd, isNext }: AddPhotosProps) {
  const [looking, setLooking] = useState(false);
  const startLooking = (): void => {
    rouse();
    setLooking(true);
  };
  const look = `button camera-button${isNext ? ' next' : ''}`;
  return (
    <div class="add-photos">
      {hasCamera() ? (
        <button type="button" class={look} onClick={startLooking}>
          {WORDS.takePhoto}
        </button>
      ) : (
        <FilePicker class={look} label={WORDS.takePhoto} onAdd={onAdd} onOpen={rouse} camera>
          {WORDS.takePhoto}
        </FilePicker>
      )}
      <FilePicker
        class={`button choose-button${isNext ? ' next-on-desk' : ''}`}
        label={WORDS.choosePhotos}
        onAdd={onAdd}
        onOpen={rouse}
        several
      >
        {WORDS.choosePhotos}
      </FilePicker>
      <span class="drop-hint small soft">{WORDS.dropHere}</span>
      {looking && (
        <Viewfinder
          onClose={() => setLooking(false)}
          onTaken={(files) => {
            setLooking(false);
            onAdd(files);
          }}
        />
      )}
    </div>
  );
}
