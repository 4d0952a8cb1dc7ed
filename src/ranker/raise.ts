/**
 * Raise the numbers between two places to a power, where they are. Quarters go by square roots, which are many times
 * faster than `**`.
 */
export function raise(values: Float64Array, power: number, from = 0, end = values.length): Float64Array {
  if (power === 1) return values;
  const quarters = Math.round(power * 4);
  if (Math.abs(quarters - power * 4) > 1e-9) {
    for (let l = from; l < end; l++) values[l] = values[l]! ** power;
    return values;
  }
  for (let l = from; l < end; l++) {
    const value = values[l]!;
    let raised = 1;
    for (let k = quarters >> 2; k > 0; k--) raised *= value;
    if ((quarters & 2) > 0) raised *= Math.sqrt(value);
    if ((quarters & 1) > 0) raised *= Math.sqrt(Math.sqrt(value));
    values[l] = raised;
  }
  return values;
}
