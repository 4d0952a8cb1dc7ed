import { toShown } from '../../words/units.ts';

/** Places on a small plot. Days as `YYYY-MM-DD`, everything else in the units of the drawing. */
export interface PlotScale {
  readonly x: (date: string) => number;
  readonly y: (celsius: number) => number;
  /** Lines to rule: a temperature that is round in the unit shown, and where it lies. */
  readonly lines: readonly { readonly figure: number; readonly at: number }[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const timeOf = (date: string): number => Date.parse(`${date}T00:00:00Z`);

/** A scale over these days and temperatures; one day only stands in the middle. */
export function scaleOver(dates: readonly string[], celsius: readonly number[], box: Box): PlotScale {
  const times = dates.map(timeOf);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const shown = celsius.map((one) => toShown('°C', one));
  const spread = Math.max(...shown) - Math.min(...shown);
  const step = spread > 80 ? 40 : spread > 40 ? 20 : spread > 15 ? 10 : 5;
  const low = Math.floor(Math.min(...shown) / step) * step;
  const high = Math.max(low + step, Math.ceil(Math.max(...shown) / step) * step);
  const x = (date: string): number =>
    first === last
      ? (box.left + box.right) / 2
      : box.left + ((timeOf(date) - first) / (last - first)) * (box.right - box.left);
  const place = (figure: number): number =>
    box.bottom - ((figure - low) / (high - low)) * (box.bottom - box.top);
  const lines = Array.from({ length: (high - low) / step + 1 }, (_, at) => low + at * step);
  return {
    x,
    y: (value) => place(toShown('°C', value)),
    lines: lines.map((figure) => ({ figure, at: place(figure) })),
  };
}

/** `M` and `L` of a path; a place that is `undefined` lifts the pen. */
export function penPath(places: readonly (readonly [number, number] | undefined)[]): string {
  let down = false;
  return places
    .map((place) => {
      const move = down ? 'L' : 'M';
      down = place !== undefined;
      return place ? `${move}${place[0].toFixed(1)} ${place[1].toFixed(1)}` : '';
    })
    .join('');
}
