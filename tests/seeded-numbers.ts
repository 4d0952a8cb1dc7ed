/** Numbers from 0 up to 1 that are the same on every run (Park and Miller 1988). */
export function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
