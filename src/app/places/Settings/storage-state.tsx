import { useEffect, useState } from 'preact/hooks';
import { askToPersist, cases, readStorageSpace, type StorageSpace } from '../../state/kept.ts';
import { describeBytes } from '../../words/bytes.ts';
import { HELP_WORDS } from '../../words/help.ts';

const WORDS = HELP_WORDS.storage;

/** How much is stored, and whether the browser may clear it. */
export function StorageState() {
  const [space, setSpace] = useState<StorageSpace | undefined>(undefined);
  const read = (): void => void readStorageSpace().then(setSpace);
  useEffect(read, []);
  const count = (cases.value ?? []).filter(({ deletedAt }) => !deletedAt).length;
  return (
    <section class="stack-close">
      <h2>{WORDS.title}</h2>
      <p class="figures">
        {WORDS.cases(count)}. {space && sayRoom(space)}
      </p>
      {space && <p>{sayPersisted(space.persisted)}</p>}
      {space?.persisted === false && (
        <button type="button" class="button" onClick={() => void askToPersist().then(read)}>
          {WORDS.askPersist}
        </button>
      )}
    </section>
  );
}

const sayRoom = ({ usedBytes, roomBytes }: StorageSpace): string =>
  usedBytes === undefined || roomBytes === undefined
    ? WORDS.unknown
    : WORDS.used(describeBytes(usedBytes), describeBytes(roomBytes));

function sayPersisted(persisted: boolean | undefined): string {
  if (persisted === undefined) return WORDS.persistedUnknown;
  return persisted ? WORDS.persisted : WORDS.notPersisted;
}
