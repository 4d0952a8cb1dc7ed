/**
 * Excess green less excess red of an RGB colour, on chromatic coordinates: above 0 speaks for a plant (Woebbecke et al.
 * 1995 [WOEBBECKE-1995]; Meyer and Camargo Neto 2008 [MEYER-2008], factor 1.4 as in trade-facts J7).
 */
export function measureExcessGreen(r: number, g: number, b: number): { exG: number; exGMinusExR: number } {
  const sum = r + g + b;
  if (sum === 0) return { exG: 0, exGMinusExR: 0 };
  const exG = (2 * g - r - b) / sum;
  return { exG, exGMinusExR: exG - (1.4 * r - g) / sum };
}
