import type { LookPhoto } from '../../../../garden/records.ts';
import type { LeafReading } from '../../../../leaf/types.ts';
import { thumbnailOf, usePicture } from '../../../state/pictures.ts';
import { describeMeasures } from '../../../words/measures.ts';
import { roleName } from '../../../words/roles.ts';
import { Lines } from './lines.tsx';

interface SheetPhotoProps {
  readonly photoId: string;
  readonly caption: string;
  /** What it shows. */
  readonly lines: readonly string[];
  readonly size: 'large' | 'small';
}

/** A photo with what it shows: large as the first of a page, or small in a row. */
export function SheetPhoto({ photoId, caption, lines, size }: SheetPhotoProps) {
  const isSmall = size === 'small';
  const address = usePicture(...(isSmall ? [thumbnailOf(photoId), photoId] : [photoId]));
  return (
    <figure class={isSmall ? 'sheet-photo' : 'sheet-photo large'}>
      {address && <img src={address} alt={caption} />}
      <figcaption>
        <p class="sheet-caption">{caption}</p>
        {lines.length > 0 && <Lines lines={lines} />}
      </figcaption>
    </figure>
  );
}

/** What of a photo of a look is said beneath it. */
export function ofLook(
  photo: LookPhoto<LeafReading>,
): Pick<SheetPhotoProps, 'photoId' | 'caption' | 'lines'> {
  const shows = photo.reading ? describeMeasures(photo.reading.measures) : [];
  return {
    photoId: photo.id,
    caption: roleName(photo.role),
    lines: shows.filter(({ finer, speaks }) => !finer && speaks).map(({ name, says }) => `${name}: ${says}`),
  };
}
