import { drawLeaf } from '../../leaf/draw-leaf.ts';
import { readLeaf } from '../../leaf/read-leaf.ts';

/** Small enough to take a fraction of a second; small and large pictures pass through the same code. */
const SIDE_PX = 320;
const ROUNDS = 3;
/** A request that the worker was opened for is there by then. */
const WAIT_MS = 50;

/**
 * Reads drawn leaves while nobody asks for anything, so that the browser has compiled what the first photo needs: it then takes
 * about half the time. Stops as soon as `isWanted` says that there is work.
 */
export function practise(isWanted: () => boolean, round = 0): void {
  setTimeout(() => {
    if (isWanted() || round === ROUNDS) return;
    const background = round % 2 === 0 ? 'leaves' : 'soil';
    const { pixels } = drawLeaf({
      width: SIDE_PX,
      height: 0.75 * SIDE_PX,
      seed: round,
      background,
      spots: { count: 5 },
    });
    readLeaf(pixels, { role: 'whole', taps: { leaf: { x: 0.5, y: 0.5 } } });
    practise(isWanted, round + 1);
  }, WAIT_MS);
}
