import { TISSUES, type Tissue, type TissueMap } from '../../leaf/types.ts';

/** What can be shown over a photo, in the order in which it is listed. The outline is a line, not a surface. */
export const LAYERS = ['outline', 'veins', 'yellow', 'dead', 'purple', 'white', 'holes', 'edge'] as const;
export type LayerId = (typeof LAYERS)[number];

/** Where most of a layer lies, in thirds of the leaf's box on the photo; `over` when no part holds most of it. */
export type Whereabouts =
  | 'over'
  | 'middle'
  | 'top'
  | 'bottom'
  | 'left'
  | 'right'
  | 'top-left'
  | 'top-right'
  | 'bottom-left'
  | 'bottom-right';

/** One byte a pixel of the working frame: the place of its layer in `LAYERS`, 0 where there is nothing to show. */
export interface LayerMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
  /** Layers that have any pixel, with where most of them lies. */
  readonly found: { readonly [Id in LayerId]?: Whereabouts };
}

const LAYER_OF: { readonly [Kind in Tissue]?: LayerId } = {
  vein: 'veins',
  chlorotic: 'yellow',
  necrotic: 'dead',
  purple: 'purple',
  white: 'white',
  missing: 'edge',
};

export const layerIndex = (id: LayerId): number => LAYERS.indexOf(id);

/** What was measured where, as layers: the tissues of the map, with what is missing parted into holes and lost edge. */
export function layLayers(tissues: TissueMap): LayerMap {
  const { width, height } = tissues;
  const layers = TISSUES.map((kind) => (LAYER_OF[kind] ? layerIndex(LAYER_OF[kind]) : 0));
  const data = Uint8Array.from(tissues.data, (kind) => layers[kind] ?? 0);
  partHoles(tissues, data);
  return { width, height, data, found: findWhereabouts(tissues, data) };
}

/**
 * What is missing and cannot be reached from the rim of the photo without crossing the leaf is a hole, the rest lost edge.
 * What lies outside is passed as well: between a hole and its rim there may be points that count for neither.
 */
function partHoles({ width, height, data: kinds }: TissueMap, data: Uint8Array): void {
  const missing = TISSUES.indexOf('missing');
  if (!kinds.includes(missing)) return;
  const outside = TISSUES.indexOf('outside');
  const reached = new Uint8Array(kinds.length);
  const queue = new Int32Array(kinds.length);
  let end = 0;
  const enter = (at: number): void => {
    if (reached[at] === 1 || (kinds[at] !== outside && kinds[at] !== missing)) return;
    reached[at] = 1;
    queue[end++] = at;
  };
  for (let x = 0; x < width; x++) {
    enter(x);
    enter((height - 1) * width + x);
  }
  for (let y = 0; y < height; y++) {
    enter(y * width);
    enter(y * width + width - 1);
  }
  for (let next = 0; next < end; next++) {
    const at = queue[next]!;
    const x = at % width;
    if (x > 0) enter(at - 1);
    if (x < width - 1) enter(at + 1);
    if (at >= width) enter(at - width);
    if (at < kinds.length - width) enter(at + width);
  }
  const hole = layerIndex('holes');
  for (let at = 0; at < kinds.length; at++) if (kinds[at] === missing && reached[at] === 0) data[at] = hole;
}

/** A third, a row or a column that holds this share of a layer is where it lies (our own judgement, no source). */
const MOST = 0.6;

const GRID: readonly Whereabouts[] = [
  'top-left',
  'top',
  'top-right',
  'left',
  'middle',
  'right',
  'bottom-left',
  'bottom',
  'bottom-right',
];

function findWhereabouts({ width, data: kinds }: TissueMap, data: Uint8Array): LayerMap['found'] {
  let [left, right, top, bottom] = [width, -1, Number.POSITIVE_INFINITY, -1];
  kinds.forEach((kind, at) => {
    if (kind === 0) return;
    const x = at % width;
    const y = (at - x) / width;
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  });
  const counts = LAYERS.map(() => new Float64Array(GRID.length));
  const third = (at: number, from: number, to: number): number =>
    Math.min(2, Math.floor((3 * (at - from)) / (to - from + 1)));
  data.forEach((layer, at) => {
    if (layer === 0) return;
    const x = at % width;
    counts[layer]![3 * third((at - x) / width, top, bottom) + third(x, left, right)]! += 1;
  });
  const found: { [Id in LayerId]?: Whereabouts } = {};
  LAYERS.forEach((id, layer) => {
    const cells = counts[layer]!;
    const all = cells.reduce((sum, cell) => sum + cell, 0);
    if (all > 0) found[id] = whereMost(cells, MOST * all);
  });
  return found;
}

function whereMost(cells: Float64Array, most: number): Whereabouts {
  const cell = cells.findIndex((count) => count >= most);
  if (cell >= 0) return GRID[cell]!;
  const sum = (...at: number[]): number => at.reduce((total, i) => total + cells[i]!, 0);
  if (sum(0, 3, 6) >= most) return 'left';
  if (sum(2, 5, 8) >= most) return 'right';
  if (sum(0, 1, 2) >= most) return 'top';
  if (sum(6, 7, 8) >= most) return 'bottom';
  return 'over';
}
