import './specimen.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Taps } from '../../../leaf/types.ts';
import type { Spot } from '../../../photo/types.ts';
import { usePicture } from '../../state/pictures.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import type { Raster } from '../../workers/protocol.ts';
import { Mark } from '../Mark/mark.tsx';
import { Legend } from './legend.tsx';

interface SpecimenProps {
  readonly photoId: string;
  readonly caption: string;
  readonly outline?: readonly Spot[];
  readonly overlay?: Raster | undefined;
  readonly marks?: Taps;
  readonly showFindings: boolean;
  readonly busy?: boolean;
  /** A picture that is too large for the decoder would be too large for the page as well. */
  readonly hidden?: boolean;
  readonly onTap?: (spot: Spot) => void;
  /** Controls that stand beside the legend. */
  readonly children?: preact.ComponentChildren;
}

/** A photo pinned to the page like a specimen, with its outline and hatching over it and a caption beneath. */
export function Specimen(props: SpecimenProps) {
  const {
    photoId,
    caption,
    outline,
    overlay,
    marks,
    showFindings,
    busy = false,
    hidden = false,
    onTap,
    children,
  } = props;
  const address = usePicture(hidden ? '' : photoId);
  const [broken, setBroken] = useState(false);
  return (
    <figure class="specimen" aria-busy={busy}>
      <span class="specimen-pin">
        <Mark of="pin" />
      </span>
      <div class="specimen-photo">
        {address && !broken ? (
          <img src={address} alt={caption} onError={() => setBroken(true)} />
        ) : (
          <p class="specimen-none soft">{address === undefined ? '' : WORDS.noPicture}</p>
        )}
        {showFindings && overlay && <Hatching overlay={overlay} />}
        {showFindings && outline && <Outline outline={outline} />}
        {marks && <TapMarks taps={marks} />}
        {onTap && address && !broken && <TapSurface onTap={onTap} />}
      </div>
      <figcaption>{caption}</figcaption>
      <div class="specimen-row">
        {showFindings && (outline || overlay) && <Legend withHatching={overlay !== undefined} />}
        {children}
      </div>
    </figure>
  );
}

function Hatching({ overlay }: { readonly overlay: Raster }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    const { width, height, data } = overlay;
    context?.putImageData(new ImageData(new Uint8ClampedArray(data), width, height), 0, 0);
  }, [overlay]);
  return (
    <div class="specimen-over" aria-hidden="true">
      <canvas ref={canvas} width={overlay.width} height={overlay.height} />
    </div>
  );
}

/** Spots are fractions of the frame; a thousandth is fine enough for a line. */
const points = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }) => `${(x * 1000).toFixed(1)},${(y * 1000).toFixed(1)}`).join(' ');

function Outline({ outline }: { readonly outline: readonly Spot[] }) {
  return (
    <svg class="specimen-over outline" viewBox="0 0 1000 1000" preserveAspectRatio="none" aria-hidden="true">
      <polygon points={points(outline)} class="outline-light" />
      <polygon points={points(outline)} class="outline-dark" />
    </svg>
  );
}

function TapMarks({ taps }: { readonly taps: Taps }) {
  const marks: (Spot & { readonly kind: string })[] = [
    ...(taps.leaf ? [{ ...taps.leaf, kind: 'leaf' }] : []),
    ...(taps.add ?? []).map((spot) => ({ ...spot, kind: 'add' })),
    ...(taps.remove ?? []).map((spot) => ({ ...spot, kind: 'remove' })),
    ...(taps.white ? [{ ...taps.white, kind: 'white' }] : []),
  ];
  return (
    <div class="specimen-over" aria-hidden="true">
      {marks.map(({ x, y, kind }) => (
        <span
          key={`${kind}${x}${y}`}
          class={`tap-mark ${kind}`}
          style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
        />
      ))}
    </div>
  );
}

const STEP = 0.02;
const STEPS: Partial<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};
const within = (value: number): number => Math.min(1, Math.max(0, value));

/** Takes taps by finger or mouse; with the keyboard the arrows move a cross and Enter taps there. */
function TapSurface({ onTap }: { readonly onTap: (spot: Spot) => void }) {
  const [cross, setCross] = useState<Spot | undefined>(undefined);
  return (
    <button
      type="button"
      class="tap-surface"
      aria-label={WORDS.tapHere}
      onKeyDown={(event) => {
        const step = STEPS[event.key];
        if (!step) return;
        event.preventDefault();
        const { x, y } = cross ?? { x: 0.5, y: 0.5 };
        setCross({ x: within(x + step[0]), y: within(y + step[1]) });
      }}
      onBlur={() => setCross(undefined)}
      onClick={(event) => {
        // A click without a pointer comes from the keyboard.
        if (event.detail === 0) return onTap(cross ?? { x: 0.5, y: 0.5 });
        const box = event.currentTarget.getBoundingClientRect();
        setCross(undefined);
        onTap({
          x: within((event.clientX - box.left) / box.width),
          y: within((event.clientY - box.top) / box.height),
        });
      }}
    >
      {cross && <span class="tap-cross" style={{ left: `${cross.x * 100}%`, top: `${cross.y * 100}%` }} />}
    </button>
  );
}
