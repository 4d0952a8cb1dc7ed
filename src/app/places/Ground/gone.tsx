import type { BatchRecord, BedRecord } from '../../../garden/ground-records.ts';
import { bringBackGround, latest } from '../../state/garden.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';

/** Says that what is on show was deleted meanwhile, and offers it back; nothing while it is there. */
export function Gone({ record, name }: { readonly record: BedRecord | BatchRecord; readonly name: string }) {
  if (!latest<BedRecord | BatchRecord>(record).deletedAt) return null;
  return (
    <p role="alert">
      {WORDS.isGone(name)}{' '}
      <button type="button" class="button-plain" onClick={() => void bringBackGround(record)}>
        {WORDS.bringBack}
      </button>
    </p>
  );
}
