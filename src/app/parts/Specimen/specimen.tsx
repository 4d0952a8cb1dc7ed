import './specimen.css';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Taps } from '../../../leaf/types.ts';
import type { Spot } from '../../../photo/types.ts';
import { usePicture } from '../../state/pictures.ts';
import { LAYER_WORDS, OVERLAY_WORDS } from '../../words/layers.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { LAYERS, type LayerId, type LayerMap } from '../../workers/lay-layers.ts';
import { Mark } from '../Mark/mark.tsx';
import { layersOn } from './layer-list.tsx';
import { paintLayers } from './paint-layers.ts';
import { TapSurface } from './tap-surface.tsx';
import { MOST_ZOOM, placeInView, type View, WHOLE, ZOOM_STEP, zoomAt } from './zoom-view.ts';

interface SpecimenProps {
  readonly photoId: string;
  readonly caption: string;
  readonly outline?: readonly Spot[];
  readonly layers?: LayerMap | undefined;
  /** Layers switched off. */
  readonly hidden?: ReadonlySet<LayerId>;
  readonly picked?: readonly LayerId[];
  readonly marks?: Taps;
  readonly showFindings: boolean;
  readonly busy?: boolean;
  /** A picture that is too large for the decoder would be too large for the page as well. */
  readonly unshown?: boolean;
  readonly taps?: {
    readonly onTap: (spot: Spot) => void;
    readonly onUndo: () => void;
    readonly onLeave: () => void;
    readonly tell: (spot: Spot) => string;
  };
  /** Controls beside the caption. */
  readonly children?: preact.ComponentChildren;
}

const NONE: ReadonlySet<LayerId> = new Set();

/** Width over height from which on a photo leaves room on a phone for what is said of it. */
const WIDE = 1.1;

/** A photo pinned to the page like a specimen: its layers drawn over it, to be enlarged and tapped, a caption beneath. */
export function Specimen(props: SpecimenProps) {
  const { photoId, caption, outline, layers, marks, showFindings, busy = false, taps, children } = props;
  const { hidden = NONE, picked = [] } = props;
  const address = usePicture(props.unshown ? '' : photoId);
  const [broken, setBroken] = useState(false);
  const [ratio, setRatio] = useState(1);
  const [view, setView] = useState(WHOLE);
  const isThere = Boolean(address) && !broken;
  const scale = `scale(${view.zoom}) translate(${-view.left * 100}%, ${-view.top * 100}%)`;
  return (
    <figure class={ratio > WIDE ? 'specimen wide' : 'specimen'} style={{ '--ratio': ratio }} aria-busy={busy}>
      <div class="specimen-photo">
        <span class="specimen-pin">
          <Mark of="pin" />
        </span>
        <div class="specimen-window">
          <div class="specimen-stage" style={{ transform: scale, '--zoom': view.zoom }}>
            {address && !broken ? (
              <img
                src={address}
                alt={caption}
                onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) =>
                  setRatio(naturalWidth / naturalHeight)
                }
                onError={() => setBroken(true)}
              />
            ) : (
              <p class="specimen-none soft">{address === undefined ? '' : WORDS.noPicture}</p>
            )}
            {showFindings && outline && !hidden.has('outline') && (
              <Outline outline={outline} picked={picked.includes('outline')} pale={picked.length > 0} />
            )}
          </div>
          {showFindings && layers && <Layers map={layers} view={view} hidden={hidden} picked={picked} />}
          {marks && <TapMarks taps={marks} view={view} />}
          {taps && isThere && <TapSurface view={view} onView={setView} {...taps} />}
        </div>
      </div>
      <div class="specimen-foot">
        <figcaption>{caption}</figcaption>
        {isThere && taps && <ZoomButtons view={view} onView={setView} />}
      </div>
      {children && <div class="specimen-row">{children}</div>}
    </figure>
  );
}

function ZoomButtons({ view, onView }: { readonly view: View; readonly onView: (view: View) => void }) {
  return (
    <div class="zoom">
      {view.zoom > 1 && (
        <button
          type="button"
          class="zoom-button"
          aria-label={OVERLAY_WORDS.zoomWhole}
          onClick={() => onView(WHOLE)}
        >
          {OVERLAY_WORDS.zoomWholeShort}
        </button>
      )}
      <button
        type="button"
        class="zoom-button sign"
        aria-label={OVERLAY_WORDS.zoomOut}
        aria-disabled={view.zoom === 1}
        onClick={() => onView(zoomAt(view, 1 / ZOOM_STEP))}
      >
        −
      </button>
      <button
        type="button"
        class="zoom-button sign"
        aria-label={OVERLAY_WORDS.zoomIn}
        aria-disabled={view.zoom === MOST_ZOOM}
        onClick={() => onView(zoomAt(view, ZOOM_STEP))}
      >
        +
      </button>
      <span class="unseen" role="status">
        {view.zoom > 1 && OVERLAY_WORDS.zoomed(view.zoom)}
      </span>
    </div>
  );
}

/** Space between two strokes, px of the screen. */
const CELL_PX = 7;
/** More points than these a phone's screen shows nobody; fewer take less time. */
const MOST_DENSITY = 2;

interface LayersProps {
  readonly map: LayerMap;
  readonly view: View;
  readonly hidden: ReadonlySet<LayerId>;
  readonly picked: readonly LayerId[];
}

/** What was measured where, painted as large as it is seen. Said in words by the list of layers. */
function Layers({ map, view, hidden, picked }: LayersProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = canvas.current?.parentElement;
    if (!element) return;
    const measure = (): void => setSize({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      const element = canvas.current;
      const density = Math.min(MOST_DENSITY, devicePixelRatio);
      const [width, height] = [Math.round(size.width * density), Math.round(size.height * density)];
      if (!element || width === 0 || height === 0) return;
      const shown = new Set(LAYERS.filter((id) => !hidden.has(id)));
      const cell = Math.round(CELL_PX * density);
      const painted = paintLayers(map, { width, height, view, cell, shown, picked });
      element.width = width;
      element.height = height;
      element.getContext('2d')?.putImageData(new ImageData(painted, width, height), 0, 0);
    });
    return () => cancelAnimationFrame(frame);
  }, [map, view, hidden, picked, size]);
  const drawn = layersOn(map).filter((id) => id !== 'outline' && !hidden.has(id));
  // Without a layer to see there is nothing to name.
  const named =
    drawn.length > 0 ? ({ role: 'img', 'aria-label': sayDrawn(drawn) } as const) : { 'aria-hidden': true };
  return (
    <div class="specimen-over" {...named}>
      <canvas ref={canvas} />
    </div>
  );
}

const sayDrawn = (ids: readonly LayerId[]): string =>
  OVERLAY_WORDS.drawnOver(ids.map((id) => `${LAYER_WORDS[id].name}, ${LAYER_WORDS[id].drawn}`));

/** Spots are fractions of the frame; a thousandth is fine enough for a line. */
const points = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }) => `${(x * 1000).toFixed(1)},${(y * 1000).toFixed(1)}`).join(' ');

interface OutlineProps {
  readonly outline: readonly Spot[];
  readonly picked: boolean;
  readonly pale: boolean;
}

function Outline({ outline, picked, pale }: OutlineProps) {
  const look = picked ? ' picked' : pale ? ' pale' : '';
  return (
    <svg
      class={`specimen-over outline${look}`}
      viewBox="0 0 1000 1000"
      preserveAspectRatio="none"
      role="img"
      aria-label={sayDrawn(['outline'])}
    >
      <polygon points={points(outline)} class="outline-light" />
      <polygon points={points(outline)} class="outline-dark" />
    </svg>
  );
}

function TapMarks({ taps, view }: { readonly taps: Taps; readonly view: View }) {
  const marks: (Spot & { readonly kind: string })[] = [
    ...(taps.leaf ? [{ ...taps.leaf, kind: 'leaf' }] : []),
    ...(taps.add ?? []).map((spot) => ({ ...spot, kind: 'add' })),
    ...(taps.remove ?? []).map((spot) => ({ ...spot, kind: 'remove' })),
    ...(taps.white ? [{ ...taps.white, kind: 'white' }] : []),
  ];
  return (
    <div class="specimen-over" aria-hidden="true">
      {marks.map(({ x, y, kind }) => {
        const place = placeInView(view, { x, y });
        return (
          <span
            key={`${kind}${x}${y}`}
            class={`tap-mark ${kind}`}
            style={{ left: `${place.x * 100}%`, top: `${place.y * 100}%` }}
          />
        );
      })}
    </div>
  );
}
