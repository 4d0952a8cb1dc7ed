import type { SeenAtLook } from '../../signs/seen-at-look.ts';

/** Marks that the newest earlier look saw on the young leaves: whether they are still there tells how the plant goes on. */
export function youngMarksBefore(earlier: readonly SeenAtLook[]): readonly string[] {
  const newest = [...earlier].sort((a, b) => (a.date < b.date ? 1 : -1))[0];
  return Object.entries(newest?.answers.signs ?? {})
    .filter(([sign, answer]) => answer === 'seen' && sign.endsWith('@new'))
    .map(([sign]) => sign);
}
