import { useState } from 'preact/hooks';
import { sameVariety } from '../../../garden/normal-leaves-of.ts';
import type { CaseRecord } from '../../../garden/records.ts';
import { isSilenced } from '../../../signs/findings-from-readings.ts';
import { garden } from '../../state/garden.ts';
import { keepAsNormalLeaf } from '../../state/keep-normal-leaf.ts';
import type { KeptLook } from '../../state/kept.ts';
import { hashOf } from '../../state/route.ts';
import { useLooks } from '../../state/use-looks.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { NORMAL_WORDS as WORDS } from '../../words/normal-leaves.ts';

/**
 * The leaf of a look that may stand for its variety: one photographed as a sound leaf, or, where the colour of the variety was
 * the likeliest cause, the leaf in question. An old leaf that is ordinary for an old leaf is no measure for others.
 */
function leafToKeep({ photos, ranking }: KeptLook) {
  const isVariety = ranking?.causes[0]?.id === 'variety-colour';
  return photos.find(
    ({ role, reading }) =>
      reading && !isSilenced(reading) && (role === 'normal' || (isVariety && role === reading.role)),
  );
}

/** After a look that found nothing wrong: its leaf may be kept as a healthy leaf of the variety. */
export function KeepAsNormal({ kept }: { readonly kept: CaseRecord }) {
  const look = useLooks(kept.id)?.at(-1);
  const [says, setSays] = useState('');
  const { crop, variety } = kept;
  const photo = look?.ranking?.verdict.id === 'leave' ? leafToKeep(look) : undefined;
  if (!crop || !variety || !look || !photo?.reading || photo.reading.role === 'whole') return null;
  const { reading } = photo;
  const page = hashOf({ place: 'ground', page: 'normal-leaves', crop, variety });
  const isKept = garden.value?.normalLeaves.some(
    (leaf) => leaf.photoId === photo.id && sameVariety(leaf, { crop, variety }),
  );
  const keep = async (): Promise<void> => {
    const stage = look.answers.setting['crop-stage'];
    const leaf = { crop, variety, date: look.date, ...(stage ? { stage } : {}) };
    const saved = await keepAsNormalLeaf(leaf, photo.id, reading, photo.network);
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  return (
    <section class="stack-close">
      <h2>{WORDS.keepTitle}</h2>
      {isKept ? (
        <p>
          <a class="link-line" href={page}>
            {WORDS.keptAlready}
          </a>
        </p>
      ) : (
        <>
          <p class="small soft">{WORDS.keepWhy(variety)}</p>
          <button type="button" class="button" onClick={() => void keep()}>
            {WORDS.keep}
          </button>
        </>
      )}
      <p role="alert">{says}</p>
    </section>
  );
}
