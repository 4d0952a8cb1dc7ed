import type { PhotoTrouble } from '../../../photo/types.ts';
import { LOOK_WORDS } from '../../words/look.ts';
import { PHOTO_TROUBLE_WORDS, PHOTO_WORKER_WORDS } from '../../words/photo-troubles.ts';

interface PhotoTroublesProps {
  /** Said while the photo is read; nothing where it is not. */
  readonly reading: string | undefined;
  /** Name of the file, where there is no picture to see which is meant. */
  readonly file?: string | undefined;
  readonly trouble: readonly PhotoTrouble[] | undefined;
  readonly failed: keyof typeof PHOTO_WORKER_WORDS | undefined;
  readonly onAgain: () => void;
}

/** What is wrong with a photo and what to do; said once, as soon as it is known. */
export function PhotoTroubles({ reading, file, trouble, failed, onAgain }: PhotoTroublesProps) {
  return (
    <div role="status" class="stack-close">
      {reading && <p class="soft">{reading}</p>}
      {trouble?.map((code) => (
        <p key={code} class="photo-trouble">
          {file && <strong>{file}</strong>} <span>{PHOTO_TROUBLE_WORDS[code]}</span>
        </p>
      ))}
      {failed && (
        <p class="photo-trouble">
          {PHOTO_WORKER_WORDS[failed]}{' '}
          <button type="button" class="button-plain" onClick={onAgain}>
            {LOOK_WORDS.readAgain}
          </button>
        </p>
      )}
    </div>
  );
}
