import './stamp.css';
import { thumbnailOf, usePicture } from '../../state/pictures.ts';

interface StampProps {
  readonly photoId: string;
  /** Shown as large as the page allows: the picture itself rather than its small copy. */
  readonly isLarge?: boolean;
}

/** A photo as a small square beside what is said of it; it says nothing that the words do not. */
export function Stamp({ photoId, isLarge = false }: StampProps) {
  const small = thumbnailOf(photoId);
  const address = usePicture(...(isLarge ? [photoId, small] : [small, photoId]));
  return <span class="stamp">{address && <img src={address} alt="" loading="lazy" />}</span>;
}
