import { useEffect, useId, useState } from 'preact/hooks';
import { frameOfLeaf } from '../../../../compare/over-time/align-leaves.ts';
import type { KnownLeaf } from '../../../state/leaves-to-compare.ts';
import { usePicture } from '../../../state/pictures.ts';
import { CHANGE_PAGE_WORDS as WORDS } from '../../../words/changes.ts';
import { describeDay } from '../../../words/dates.ts';

interface LeafPairProps {
  readonly first: KnownLeaf;
  readonly later: KnownLeaf;
}

/** Two leaves upon each other, upright and of one length, with a slider that uncovers one or the other. */
export function LeafPair({ first, later }: LeafPairProps) {
  const [shown, setShown] = useState(50);
  const [turned, setTurned] = useState(false);
  const days = [first.date, later.date].map((date) => describeDay(date, later.date));
  return (
    <div class="stack-close">
      <div class="leaf-pair">
        <UprightLeaf leaf={first} says={`${WORDS.first}, ${days[0]}`} />
        <div class="leaf-pair-over" style={{ clipPath: `inset(0 0 0 ${100 - shown}%)` }}>
          <UprightLeaf leaf={later} says={`${WORDS.later}, ${days[1]}`} turned={turned} />
        </div>
        <span class="leaf-pair-edge" style={{ insetInlineStart: `${100 - shown}%` }} />
      </div>
      <p class="leaf-pair-days small">
        <span>
          {WORDS.first}: {days[0]}
        </span>
        <span>
          {WORDS.later}: {days[1]}
        </span>
      </p>
      <label class="leaf-pair-slider">
        <span class="field-label">{WORDS.slider}</span>
        <input
          type="range"
          min={0}
          max={100}
          value={100 - shown}
          aria-valuetext={WORDS.sliderAt(shown)}
          onInput={({ currentTarget }) => setShown(100 - Number(currentTarget.value))}
        />
      </label>
      {!(first.reading.white && later.reading.white) && <p class="small soft">{WORDS.noLight}</p>}
      <button type="button" class="button-plain" aria-pressed={turned} onClick={() => setTurned(!turned)}>
        {WORDS.turnRound}
      </button>
    </div>
  );
}

/**
 * One leaf in its square. The light's colour is taken out by scaling linear red, green and blue (von Kries 1902) with the
 * gains that the measuring used.
 */
function UprightLeaf({
  leaf,
  says,
  turned = false,
}: {
  readonly leaf: KnownLeaf;
  readonly says: string;
  readonly turned?: boolean;
}) {
  const address = usePicture(leaf.photoId);
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | undefined>();
  const filter = `light-${useId().replaceAll(':', '')}`;
  useEffect(() => setSize(undefined), [leaf.photoId]);
  const { outline } = leaf.reading.leaf;
  if (address === null || !outline) return <p class="leaf-upright small">{WORDS.noPicture}</p>;
  const [red, green, blue] = leaf.reading.white?.gains ?? [1, 1, 1];
  const place = size && placeOf(outline, size, turned);
  return (
    <div class="leaf-upright" style={{ filter: `url(#${filter})` }}>
      <svg class="leaf-light" aria-hidden="true">
        <filter id={filter} color-interpolation-filters="linearRGB">
          <feColorMatrix
            type="matrix"
            values={`${red} 0 0 0 0  0 ${green} 0 0 0  0 0 ${blue} 0 0  0 0 0 1 0`}
          />
        </filter>
      </svg>
      {address && (
        <img
          src={address}
          alt={says}
          style={place ?? { visibility: 'hidden' }}
          onLoad={({ currentTarget: { naturalWidth: width, naturalHeight: height } }) =>
            setSize({ width, height })
          }
        />
      )}
    </div>
  );
}

/** Size and place of a photo so that its leaf fills a square as wide as one container. */
function placeOf(
  outline: Parameters<typeof frameOfLeaf>[0],
  { width, height }: { readonly width: number; readonly height: number },
  turned: boolean,
) {
  const { centre, side, turn } = frameOfLeaf(outline, width, height);
  const share = (pixels: number): string => `${(pixels / side) * 100}cqw`;
  return {
    width: share(width),
    height: share(height),
    transform: `translate(50cqw, 50cqw) rotate(${turn + (turned ? Math.PI : 0)}rad) translate(-${share(centre.x)}, -${share(centre.y)})`,
  };
}
