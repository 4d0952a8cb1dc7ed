import type { Ground } from './backgrounds.ts';
import type { Dice } from './dice.ts';

export interface Surroundings {
  readonly ground: Ground;
  readonly hand: boolean;
  readonly behind: number;
  readonly inFront: number;
}

/** What lies behind the leaf, who holds it, which leaves of the plant are about. */
export function chooseSurroundings(dice: Dice): Surroundings {
  const ground: Ground = dice.pick([
    'soil',
    'soil',
    'soil',
    'foliage',
    'foliage',
    'foliage',
    'foliage',
    'straw',
    'paper',
    'paper',
    'cloth',
    'dark',
  ]);
  const loose = ground === 'paper' || ground === 'cloth';
  return {
    ground,
    hand: dice.chance(loose ? 0.08 : 0.22),
    behind: loose || dice.chance(0.55) ? 0 : dice.whole(1, 3),
    inFront: dice.chance(0.07) ? 1 : 0,
  };
}
