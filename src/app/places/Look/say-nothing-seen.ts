import { isSilenced } from '../../../signs/findings-from-readings.ts';
import { type DraftPhoto, isBusy, isUsable } from '../../state/draft.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** A photo that marks are looked for in: what it shows is said, and it can be trusted. */
const isLookedAt = ({ role, roleOpen, reading }: DraftPhoto): boolean =>
  !roleOpen && role !== 'normal' && role !== 'whole' && reading !== undefined && !isSilenced(reading);

/**
 * What stands in the place of signs where none is reported: that no photo shows one, or that there is no photo. Nothing
 * while a photo is still read, or where no photo could have shown any: that is said beside the photo.
 */
export function sayNothingSeen(photos: readonly DraftPhoto[]): string | undefined {
  const usable = photos.filter(isUsable);
  if (usable.length === 0) return WORDS.cameraNoPhoto;
  return !usable.some(isBusy) && usable.some(isLookedAt) ? WORDS.cameraSeesNothing : undefined;
}
