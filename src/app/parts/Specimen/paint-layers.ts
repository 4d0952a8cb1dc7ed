import { LAYERS, type LayerId, type LayerMap, layerIndex } from '../../workers/lay-layers.ts';
import type { View } from './zoom-view.ts';

type Ink = readonly [red: number, green: number, blue: number, alpha: number];

const DARK: Ink = [30, 22, 18, 235];
const LIGHT: Ink = [255, 250, 236, 215];
const STRAW: Ink = [250, 214, 60, 255];
const RUST: Ink = [178, 52, 20, 255];
const PLUM: Ink = [122, 40, 120, 255];

/** How one layer is told on the photo. */
export interface Painting {
  /** Size of the surface that is painted, px. */
  readonly width: number;
  readonly height: number;
  /** Which part of the photo it shows. */
  readonly view: View;
  /** Space between two strokes, px of the surface: coarse enough to be read on a phone held at arm's length. */
  readonly cell: number;
  readonly shown: ReadonlySet<LayerId>;
  /** Layers that were picked: ringed, and the others pale. */
  readonly picked: readonly LayerId[];
}

/** Share of their strength that layers keep while another one is picked. */
const PALE = 0.3;

/**
 * Paints what was measured where, each layer by its own pattern as well as its colour, every stroke with a light and a
 * dark part so that it shows on any leaf: yellow dotted, dead crossed, holes ringed in dashes, lost edge in dashes with
 * slanting strokes, veins as thin lines, purple in level strokes, white in upright ones. Healthy tissue stays bare.
 * Patterns keep their size when the photo is drawn larger, so that a small spot is not hidden under one stroke.
 *
 * @returns 4 bytes a pixel (R, G, B, A), `width × height`; see-through where there is nothing to show
 */
export function paintLayers(map: LayerMap, painting: Painting): Uint8ClampedArray<ArrayBuffer> {
  const { width, height, view, cell, shown, picked } = painting;
  const columns = framesOf(width, view.left, view.zoom, map.width);
  const rows = framesOf(height, view.top, view.zoom, map.height);
  // Patterns hold on to the leaf while the photo is moved.
  const shiftX = Math.round(view.left * view.zoom * width);
  const shiftY = Math.round(view.top * view.zoom * height);
  const visible = LAYERS.map((id) => shown.has(id));
  const isPicked = LAYERS.map((id) => picked.includes(id));
  const stroke = Math.max(cell / 9, 0.7);
  const ring = Math.max(1, Math.round(stroke * 1.6));
  const painted = new Uint8ClampedArray(width * height * 4);
  // The end of the photo is an edge, the end of the window is not.
  const ends = {
    left: view.left <= 0,
    top: view.top <= 0,
    right: view.left + 1 / view.zoom >= 1 - 1e-9,
    bottom: view.top + 1 / view.zoom >= 1 - 1e-9,
  };
  const layerAt = (x: number, y: number): number => {
    if ((x < 0 && ends.left) || (x >= width && ends.right)) return -1;
    if ((y < 0 && ends.top) || (y >= height && ends.bottom)) return -1;
    const [column, row] = [Math.min(width - 1, Math.max(0, x)), Math.min(height - 1, Math.max(0, y))];
    return map.data[rows[row]! * map.width + columns[column]!]!;
  };
  const isEdge = (x: number, y: number, own: number, reach: number): boolean =>
    layerAt(x - reach, y) !== own ||
    layerAt(x + reach, y) !== own ||
    layerAt(x, y - reach) !== own ||
    layerAt(x, y + reach) !== own;
  for (let y = 0; y < height; y++) {
    const row = rows[y]! * map.width;
    for (let x = 0; x < width; x++) {
      const layer = map.data[row + columns[x]!]!;
      if (layer === 0 || !visible[layer]) continue;
      const id = LAYERS[layer]!;
      const [u, v] = [x + shiftX, y + shiftY];
      let ink: Ink | undefined;
      if (isPicked[layer] && isEdge(x, y, layer, ring)) ink = DARK;
      else if (isPicked[layer] && isEdge(x, y, layer, 2 * ring)) ink = LIGHT;
      else ink = inkOfEdge(id, u, v, stroke, (reach) => isEdge(x, y, layer, reach));
      ink ??= inkInside(id, u, v, cell, stroke);
      if (!ink) continue;
      const at = 4 * (y * width + x);
      painted.set(ink, at);
      if (picked.length > 0 && !isPicked[layer]) painted[at + 3] = ink[3] * PALE;
    }
  }
  return painted;
}

/** Which row or column of the map each one of the surface shows. */
function framesOf(size: number, from: number, zoom: number, frames: number): Int32Array {
  return Int32Array.from({ length: size }, (_, at) =>
    Math.min(frames - 1, Math.max(0, Math.floor((from + (at + 0.5) / size / zoom) * frames))),
  );
}

function inkInside(layer: LayerId, x: number, y: number, cell: number, stroke: number): Ink | undefined {
  switch (layer) {
    case 'outline':
    case 'holes':
      return undefined;
    case 'veins':
      return LIGHT;
    case 'yellow': {
      // Every second row of dots is shifted by half a cell: an even scatter instead of columns.
      const shift = Math.floor(y / cell) % 2 === 0 ? 0 : cell / 2;
      const distance = Math.hypot(((x + shift) % cell) - cell / 2, (y % cell) - cell / 2);
      if (distance < stroke * 1.7) return STRAW;
      return distance < stroke * 2.7 ? DARK : undefined;
    }
    case 'dead': {
      // Two directions would cover twice as much, so these lines stand twice as far apart.
      const near = Math.min(fromLine(x + y, cell * 2), fromLine(x - y, cell * 2));
      if (near < stroke * 1.3) return RUST;
      return near < stroke * 2.1 ? LIGHT : undefined;
    }
    case 'edge': {
      const near = fromLine(x - y, cell * 2);
      if (near < stroke) return DARK;
      return near < stroke * 2 ? LIGHT : undefined;
    }
    case 'purple':
    case 'white': {
      const near = layer === 'purple' ? fromLine(y, cell) : fromLine(x, cell);
      if (near < stroke) return layer === 'purple' ? PLUM : DARK;
      return near < stroke * 1.8 ? LIGHT : undefined;
    }
  }
}

/** Distance from the nearest of the lines that stand a cell apart. */
function fromLine(along: number, cell: number): number {
  const rest = ((along % cell) + cell) % cell;
  return Math.min(rest, cell - rest);
}

/**
 * Missing parts are outlined in dashes, dead ones in one stroke: a dead spot can be smaller than the space between two
 * lines of its pattern, and must show all the same.
 */
function inkOfEdge(
  layer: LayerId,
  x: number,
  y: number,
  stroke: number,
  isEdge: (reach: number) => boolean,
): Ink | undefined {
  const isGap = layer === 'holes' || layer === 'edge';
  if (!isGap && layer !== 'dead') return undefined;
  const reach = Math.ceil(stroke * (isGap ? 1.5 : 0.8));
  if (!isEdge(reach)) return undefined;
  if (layer === 'dead') return RUST;
  return Math.floor((x + y) / (reach * 3)) % 2 === 0 ? DARK : LIGHT;
}

/** The layer under a spot of the photo, if anything was found there. */
export function layerUnder(
  map: LayerMap,
  spot: { readonly x: number; readonly y: number },
): LayerId | undefined {
  const x = Math.min(map.width - 1, Math.floor(spot.x * map.width));
  const y = Math.min(map.height - 1, Math.floor(spot.y * map.height));
  const layer = map.data[y * map.width + x];
  return layer === undefined || layer === layerIndex('outline') ? undefined : LAYERS[layer];
}
