import type { Spot } from '../../../photo/types.ts';

/** Which part of a photo is seen: its left and top as fractions of the photo, and how many times it is enlarged. */
export interface View {
  readonly zoom: number;
  readonly left: number;
  readonly top: number;
}

export const WHOLE: View = { zoom: 1, left: 0, top: 0 };
/** At eight times one point of the working frame is some three points of a phone's screen: more shows nothing new. */
export const MOST_ZOOM = 8;
export const ZOOM_STEP = 1.6;

const hold = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** The view with this enlargement, moved as little as it takes to stay on the photo. */
function within({ zoom, left, top }: View): View {
  const held = hold(zoom, 1, MOST_ZOOM);
  const room = 1 - 1 / held;
  return { zoom: held, left: hold(left, 0, room), top: hold(top, 0, room) };
}

/** Enlarges by a factor; what lies under `at` (fractions of the window) stays where it is. */
export function zoomAt(view: View, factor: number, at: Spot = { x: 0.5, y: 0.5 }): View {
  const zoom = hold(view.zoom * factor, 1, MOST_ZOOM);
  const spot = spotUnder(view, at);
  return within({ zoom, left: spot.x - at.x / zoom, top: spot.y - at.y / zoom });
}

/** Moves the photo by fractions of the window, as a finger drags it. */
export const drag = (view: View, x: number, y: number): View =>
  within({ ...view, left: view.left - x / view.zoom, top: view.top - y / view.zoom });

/** The spot of the photo under a place in the window, both as fractions. */
export const spotUnder = ({ zoom, left, top }: View, at: Spot): Spot => ({
  x: hold(left + at.x / zoom, 0, 1),
  y: hold(top + at.y / zoom, 0, 1),
});

/** Where a spot of the photo lies in the window. */
export const placeInView = ({ zoom, left, top }: View, spot: Spot): Spot => ({
  x: (spot.x - left) * zoom,
  y: (spot.y - top) * zoom,
});

/** The view moved so far that a spot is in it, a tenth from the rim. */
export function follow(view: View, spot: Spot): View {
  const margin = 0.1 / view.zoom;
  const span = 1 / view.zoom;
  return within({
    zoom: view.zoom,
    left: hold(view.left, spot.x + margin - span, spot.x - margin),
    top: hold(view.top, spot.y + margin - span, spot.y - margin),
  });
}
