/**
 * Prints how often the intervals of made-up trials held what is true, how wide they were, and how often a difference was seen beside the
 * chance stated before sowing. For the tables in `src/compare/side-by-side/README.md`.
 *
 *     npx tsx training/check-trial-coverage.ts [runs]
 */
import { chanceToSee, smallestSeen } from '../src/compare/side-by-side/plan-numbers.ts';
import {
  DESIGNS,
  PAIRS,
  RANDOM,
  SHAPES,
  simulateChance,
  simulateCoverage,
} from '../tests/compare/side-by-side/simulate-trials.ts';

const runs = Number(process.argv[2] ?? 4000);
const percent = (share: number): string => (100 * share).toFixed(1);
const one = (held: number, width: number): string => `${percent(held)} (${width.toFixed(0)})`;

console.log(`Held in so many of 100 (middle width), ${runs} trials a cell: own, t, trimmed means`);
console.log(`| trial | ${SHAPES.join(' | ')} |`);
DESIGNS.forEach((design, i) => {
  const cells = SHAPES.map((shape, j) => {
    const found = simulateCoverage(design, shape, runs, 1000 * i + j + 1, true);
    const trimmed =
      found.trimmedHeld === undefined ? '' : ` / ${one(found.trimmedHeld, found.trimmedWidth!)}`;
    return `${one(found.held, found.width)} / ${one(found.tHeld!, found.tWidth!)}${trimmed}`;
  });
  console.log(`| ${design.name} | ${cells.join(' | ')} |`);
});

console.log('\n| trial | difference seen 8 times in 10, stated | stated chance | came out |');
const plans = [
  ...[2, 3, 4, 6, 10, 20].map((n) => ({ design: RANDOM(n), how: 'random', units: n }) as const),
  ...[3, 5, 6, 8, 12, 20].map((n) => ({ design: PAIRS(n), how: 'blocks', units: n }) as const),
  ...[4, 6, 12].map((n) => ({ design: RANDOM(n, 3), how: 'random', units: n }) as const),
];
plans.forEach(({ design, how, units }, i) => {
  const wish = { treatments: design.treatments, how, spread: 0.25 };
  for (const chance of [0.5, 0.8]) {
    const difference = smallestSeen(wish, units, chance);
    if (difference === undefined) continue;
    const came = simulateChance(design, difference, runs, 77_000 + i);
    console.log(
      `| ${design.name} | ${percent(difference)} % | ${percent(chanceToSee(wish, units, difference))} | ${percent(came)} |`,
    );
  }
});
