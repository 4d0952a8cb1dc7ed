/** Places of a plot's dots and ticks. Pure. */

/** Dots nearer than this to one another are moved apart, in the units of the drawing. */
const ROOM = 9;

/** Each dot's place along the axis and how far it is lifted off the line, so that none hides another. */
export function placeDots(places: readonly number[]): { readonly at: number; readonly lift: number }[] {
  const placed: { at: number; lift: number }[] = [];
  for (const at of [...places].sort((a, b) => a - b)) {
    let step = 0;
    const liftOf = (many: number): number => (many % 2 === 0 ? -1 : 1) * Math.ceil(many / 2) * (ROOM / 2 + 1);
    const isFree = (lift: number): boolean =>
      placed.every((other) => Math.hypot(other.at - at, other.lift - lift) >= ROOM);
    while (step < 6 && !isFree(liftOf(step))) step += 1;
    placed.push({ at, lift: step < 6 ? liftOf(step) : 0 });
  }
  return placed;
}

/** Round ticks over some values, at most seven; the ends lie a little beyond the values. */
export function ticksOver(values: readonly number[]): {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly digits: number;
} {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most - least || Math.abs(most) || 1;
  const rough = span / 5;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * ten).find((one) => one >= rough) ?? 10 * ten;
  // One value only stands in the middle.
  const beyond = span * (least === most ? 0.5 : 0.06);
  const [low, high] = [least - beyond, most + beyond];
  const first = Math.ceil(low / step);
  const last = Math.floor(high / step);
  return {
    low,
    high,
    ticks: Array.from({ length: last - first + 1 }, (_, at) => (first + at) * step),
    digits: Math.max(0, -Math.floor(Math.log10(step))),
  };
}
