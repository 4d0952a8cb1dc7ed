import { seededNumbers } from './seeded-numbers.ts';

/** Normal deviates that are the same on every run (Box and Muller 1958). */
export function seededNormals(seed: number): () => number {
  const uniform = seededNumbers(seed);
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
