import { colourApart, meanColourOf } from '../../../compare/with-normal-leaf.ts';
import type { LeafReading } from '../../../leaf/types.ts';
import { isSilenced } from '../../../signs/findings-from-readings.ts';
import { normalReadingsFor } from '../../state/normal-leaves.ts';
import { photosOfLook } from '../../state/parts-of-look.ts';
import { answersInHand } from '../../state/weigh-look.ts';
import { NORMAL_WORDS as WORDS } from '../../words/normal-leaves.ts';
import { sayApart } from '../../words/say-apart.ts';

/** How far a leaf's colour lies from that of healthy leaves of its variety, with its doubt; nothing where there are none. */
export function BesideNormal({ reading }: { readonly reading: LeafReading }) {
  const photos = photosOfLook.value;
  const normals = [
    ...photos.flatMap((photo) =>
      photo.role === 'normal' && !photo.roleOpen && photo.reading ? [photo.reading] : [],
    ),
    ...normalReadingsFor(answersInHand.value),
  ].filter((one) => !isSilenced(one));
  if (reading.role === 'normal' || normals.length === 0 || isSilenced(reading)) return null;
  const apart = colourApart(reading.measures, meanColourOf(normals.map(({ measures }) => measures)));
  if (!apart) return null;
  return (
    <div class="beside-normal stack-close">
      <h3>{WORDS.besideTitle}</h3>
      <p>{sayApart(apart, normals.length)}</p>
      <p class="small soft">{WORDS.weighed}</p>
    </div>
  );
}
