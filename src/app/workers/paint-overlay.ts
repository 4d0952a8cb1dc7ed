import { TISSUES, type Tissue, type TissueMap } from '../../leaf/types.ts';
import type { Raster } from './protocol.ts';

type Ink = readonly [red: number, green: number, blue: number, alpha: number];

const DARK: Ink = [30, 22, 18, 235];
const LIGHT: Ink = [255, 250, 236, 215];
const STRAW: Ink = [250, 214, 60, 255];
const RUST: Ink = [178, 52, 20, 255];
const PLUM: Ink = [122, 40, 120, 255];

/** Cells across the longer side: a hatching must be coarse enough to be read on a phone held at arm's length. */
const CELLS = 64;

/**
 * Draws what was measured where, each kind of tissue by its own hatching as well as its colour, every stroke with a
 * light and a dark part so that it shows on any leaf: yellow dotted, dead crossed, missing outlined, veins as thin
 * lines, purple in level strokes, white in upright ones. Healthy tissue stays bare.
 */
export function paintOverlay(tissues: TissueMap): Raster {
  const { width, height, data } = tissues;
  const cell = Math.max(6, Math.round(Math.max(width, height) / CELLS));
  const stroke = cell / 9;
  const painted = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const tissue = TISSUES[data[at] ?? 0] ?? 'outside';
      if (tissue === 'outside' || tissue === 'healthy') continue;
      const ink = inkOfEdge(tissues, tissue, x, y, stroke) ?? inkInside(tissue, x, y, cell, stroke);
      if (!ink) continue;
      painted.set(ink, at * 4);
    }
  }
  return { width, height, data: painted };
}

function inkInside(tissue: Tissue, x: number, y: number, cell: number, stroke: number): Ink | undefined {
  if (tissue === 'missing') return undefined;
  if (tissue === 'vein') return LIGHT;
  if (tissue === 'chlorotic') {
    // Every second row of dots is shifted by half a cell: an even scatter instead of columns.
    const shift = Math.floor(y / cell) % 2 === 0 ? 0 : cell / 2;
    const distance = Math.hypot(((x + shift) % cell) - cell / 2, (y % cell) - cell / 2);
    if (distance < stroke * 1.7) return STRAW;
    return distance < stroke * 2.7 ? DARK : undefined;
  }
  if (tissue === 'necrotic') {
    // Two directions would cover twice as much, so these lines stand twice as far apart.
    const near = Math.min(fromLine(x + y, cell * 2), fromLine(x - y, cell * 2));
    if (near < stroke * 1.3) return RUST;
    return near < stroke * 2.1 ? LIGHT : undefined;
  }
  const near = tissue === 'purple' ? fromLine(y, cell) : fromLine(x, cell);
  if (near < stroke) return tissue === 'purple' ? PLUM : DARK;
  return near < stroke * 1.8 ? LIGHT : undefined;
}

/** Distance from the nearest of the lines that stand a cell apart. */
function fromLine(along: number, cell: number): number {
  const rest = ((along % cell) + cell) % cell;
  return Math.min(rest, cell - rest);
}

/**
 * Missing parts are outlined in dashes, dead ones in one stroke: a dead spot can be smaller than the space between two
 * lines of its hatching, and must show all the same.
 */
function inkOfEdge(map: TissueMap, tissue: Tissue, x: number, y: number, stroke: number): Ink | undefined {
  if (tissue !== 'missing' && tissue !== 'necrotic') return undefined;
  const reach = Math.ceil(stroke * (tissue === 'missing' ? 1.5 : 0.8));
  if (!isEdge(map, x, y, reach)) return undefined;
  if (tissue === 'necrotic') return RUST;
  return Math.floor((x + y) / (reach * 3)) % 2 === 0 ? DARK : LIGHT;
}

/** Does another kind of tissue, or the end of the frame, lie within `reach` pixels? */
function isEdge({ width, height, data }: TissueMap, x: number, y: number, reach: number): boolean {
  const own = data[y * width + x];
  return (
    x < reach ||
    y < reach ||
    x >= width - reach ||
    y >= height - reach ||
    data[y * width + x - reach] !== own ||
    data[y * width + x + reach] !== own ||
    data[(y - reach) * width + x] !== own ||
    data[(y + reach) * width + x] !== own
  );
}
