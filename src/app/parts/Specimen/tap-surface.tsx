import { useEffect, useRef, useState } from 'preact/hooks';
import type { Spot } from '../../../photo/types.ts';
import { OVERLAY_WORDS as WORDS } from '../../words/layers.ts';
import {
  drag,
  follow,
  MOST_ZOOM,
  placeInView,
  spotUnder,
  type View,
  ZOOM_STEP,
  zoomAt,
} from './zoom-view.ts';

/** Steps of the cross, as shares of what is seen: one finger's breadth is some five small ones. */
const STEP = 0.02;
const LARGE_STEP = 0.1;
const WAYS: Partial<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** A finger that moved less than this, px, has tapped. */
const TAP_PX = 8;
/** A cross that is moved fast is read out once it rests. */
const REST_MS = 500;

interface TapSurfaceProps {
  readonly view: View;
  readonly onView: (view: View) => void;
  readonly onTap: (spot: Spot) => void;
  readonly onUndo: () => void;
  /** Escape was pressed: whoever set the photo up knows where to go on. */
  readonly onLeave: () => void;
  /** What lies at a spot, in words. */
  readonly tell: (spot: Spot) => string;
}

/**
 * Takes taps by finger and mouse, and by keyboard with a cross. Two fingers, the wheel with Control, or plus and minus
 * enlarge; an enlarged photo is dragged. One finger on the whole photo scrolls the page as everywhere.
 */
export function TapSurface({ view, onView, onTap, onUndo, onLeave, tell }: TapSurfaceProps) {
  const [cross, setCross] = useState<Spot | undefined>(undefined);
  const [said, setSaid] = useState('');
  const surface = useRef<HTMLButtonElement>(null);
  const dragged = useGestures(surface, view, onView);

  useEffect(() => {
    if (!cross) return setSaid('');
    const timer = setTimeout(() => setSaid(WORDS.crossAt(cross.x, cross.y, tell(cross))), REST_MS);
    return () => clearTimeout(timer);
  }, [cross, tell]);

  const onKeyDown = (event: KeyboardEvent): void => {
    const way = WAYS[event.key];
    const middle = spotUnder(view, { x: 0.5, y: 0.5 });
    if (way) {
      const step = (event.shiftKey ? LARGE_STEP : STEP) / view.zoom;
      const { x, y } = cross ?? middle;
      const spot = spotUnder({ zoom: 1, left: 0, top: 0 }, { x: x + way[0] * step, y: y + way[1] * step });
      setCross(spot);
      onView(follow(view, spot));
    } else if (event.key === 'Enter' || event.key === ' ') {
      onTap(cross ?? middle);
    } else if (event.key === 'Escape') {
      setCross(undefined);
      onLeave();
    } else if (event.key === '+' || event.key === '=') {
      onView(zoomAt(view, ZOOM_STEP, cross && placeInView(view, cross)));
    } else if (event.key === '-') {
      onView(zoomAt(view, 1 / ZOOM_STEP, cross && placeInView(view, cross)));
    } else if (event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey)) {
      onUndo();
    } else return;
    event.preventDefault();
  };

  const place = cross && placeInView(view, cross);
  return (
    <>
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a screen reader must let the arrow keys through */}
      <button
        ref={surface}
        type="button"
        class={view.zoom > 1 ? 'tap-surface enlarged' : 'tap-surface'}
        role="application"
        aria-label={WORDS.surface}
        aria-describedby="tap-surface-help"
        onKeyDown={onKeyDown}
        onFocus={(event) => {
          // Reached by keyboard the cross shows at once; a finger needs none.
          if (event.currentTarget.matches(':focus-visible')) setCross(spotUnder(view, { x: 0.5, y: 0.5 }));
        }}
        onBlur={() => setCross(undefined)}
        onClick={(event) => {
          // A screen reader's press comes without a pointer: it taps where the cross stands.
          if (event.detail === 0) return onTap(cross ?? spotUnder(view, { x: 0.5, y: 0.5 }));
          if (dragged.current) return;
          const box = event.currentTarget.getBoundingClientRect();
          setCross(undefined);
          onTap(
            spotUnder(view, {
              x: (event.clientX - box.left) / box.width,
              y: (event.clientY - box.top) / box.height,
            }),
          );
        }}
      >
        {place && <span class="tap-cross" style={{ left: `${place.x * 100}%`, top: `${place.y * 100}%` }} />}
      </button>
      <p id="tap-surface-help" class="unseen">
        {WORDS.surfaceHelp}
      </p>
      <p class="unseen" role="status">
        {said}
      </p>
    </>
  );
}

interface Grip {
  readonly x: number;
  readonly y: number;
  /** Distance of two fingers; 0 with one. */
  readonly span: number;
}

/** Middle and distance of the fingers, px. */
function gripOf(touches: TouchList): Grip {
  const [one, two] = [touches[0]!, touches[1] ?? touches[0]!];
  return {
    x: (one.clientX + two.clientX) / 2,
    y: (one.clientY + two.clientY) / 2,
    span: Math.hypot(one.clientX - two.clientX, one.clientY - two.clientY),
  };
}

/** Pinch, drag and wheel. Gives whether the last press was a drag, which is then no tap. */
function useGestures(
  surface: { readonly current: HTMLElement | null },
  view: View,
  onView: (view: View) => void,
): { readonly current: boolean } {
  const latest = useRef({ view, onView });
  latest.current = { view, onView };
  const dragged = useRef(false);
  useEffect(() => {
    const element = surface.current;
    if (!element) return;
    let grip: Grip | undefined;
    let travelled = 0;
    const show = (next: View): void => {
      latest.current.onView(next);
      latest.current.view = next;
    };
    const move = (to: Grip): void => {
      if (!grip) return;
      const box = element.getBoundingClientRect();
      const before = latest.current.view;
      let next = drag(before, (to.x - grip.x) / box.width, (to.y - grip.y) / box.height);
      if (grip.span > 0 && to.span > 0)
        next = zoomAt(next, to.span / grip.span, {
          x: (to.x - box.left) / box.width,
          y: (to.y - box.top) / box.height,
        });
      // At the rim of the photo the page goes on, so that nobody is caught on it.
      const rest = to.y - grip.y - (before.top - next.top) * before.zoom * box.height;
      if (to.span === 0 && Math.abs(rest) > 0.5) scrollBy(0, -rest);
      travelled += Math.hypot(to.x - grip.x, to.y - grip.y) + Math.abs(to.span - grip.span);
      if (travelled > TAP_PX) dragged.current = true;
      grip = to;
      show(next);
    };
    const touchStart = (event: TouchEvent): void => {
      if (!grip) {
        travelled = 0;
        dragged.current = false;
      }
      grip = gripOf(event.touches);
      if (event.touches.length > 1) event.preventDefault();
    };
    const touchMove = (event: TouchEvent): void => {
      if (event.touches.length < 2 && latest.current.view.zoom === 1) return;
      if (event.cancelable) event.preventDefault();
      move(gripOf(event.touches));
    };
    const touchEnd = (event: TouchEvent): void => {
      grip = event.touches.length > 0 ? gripOf(event.touches) : undefined;
    };
    const pointerDown = (event: PointerEvent): void => {
      if (event.pointerType !== 'mouse') return;
      travelled = 0;
      dragged.current = false;
      if (latest.current.view.zoom > 1) grip = { x: event.clientX, y: event.clientY, span: 0 };
    };
    const pointerMove = (event: PointerEvent): void => {
      if (event.pointerType !== 'mouse' || !grip) return;
      if ((event.buttons & 1) === 0) grip = undefined;
      else move({ x: event.clientX, y: event.clientY, span: 0 });
    };
    const wheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = { x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height };
      show(zoomAt(latest.current.view, MOST_ZOOM ** (-event.deltaY / 600), at));
    };
    const listening = new AbortController();
    const { signal } = listening;
    element.addEventListener('touchstart', touchStart, { passive: false, signal });
    element.addEventListener('touchmove', touchMove, { passive: false, signal });
    element.addEventListener('touchend', touchEnd, { signal });
    element.addEventListener('touchcancel', touchEnd, { signal });
    element.addEventListener('pointerdown', pointerDown, { signal });
    element.addEventListener('pointermove', pointerMove, { signal });
    element.addEventListener('wheel', wheel, { passive: false, signal });
    return () => listening.abort();
  }, [surface]);
  return dragged;
}
