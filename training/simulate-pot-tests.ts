/**
 * How often a pot test goes wrong: made-up tests of each kind, read at every look and stopped by the rule. Prints the table that
 * stands in `src/compare/pot-test/README.md`.
 * Run: npx tsx training/simulate-pot-tests.ts [runs a setting, default 10000]
 */
import { type PotTestTruth, tallyPotTests } from './draw-pot-tests.ts';

const RUNS = Number(process.argv[2] ?? 10_000);
const DOSES = [0, 10, 20, 30, 50];
const settings: (PotTestTruth & { readonly name: string })[] = [];
for (const crop of ['french-bean', 'tomato'])
  for (const potsEach of [3, 4, 6])
    for (const [name, spread] of [
      ['alike', 0.3],
      ['unlike', 1],
    ] as const)
      for (const dose of DOSES) settings.push({ name, crop, potsEach, spread, dose });
for (const [name, spread] of [
  ['alike', 0.3],
  ['unlike', 1],
] as const)
  for (const unripe of [0, 0.2, 0.4, 0.6])
    settings.push({
      name: `${name}, ${100 * unripe} % fewer and smaller`,
      crop: 'radish',
      potsEach: 4,
      spread,
      dose: 0,
      unripe,
    });
for (const dose of [0, 30]) {
  settings.push({ name: 'poor seed', crop: 'french-bean', potsEach: 4, spread: 0.6, dose, comesUp: 0.72 });
  settings.push({ name: 'rater leans +5', crop: 'french-bean', potsEach: 4, spread: 0.6, dose, leaning: 5 });
  settings.push({ name: 'rater leans −5', crop: 'french-bean', potsEach: 4, spread: 0.6, dose, leaning: -5 });
  settings.push({ name: 'water crosses', crop: 'french-bean', potsEach: 4, spread: 0.6, dose, crossed: 0.5 });
}

const percent = (count: number, of: number): string => ((100 * count) / of).toFixed(1);
console.log(
  '| crop | pots of each kind | pots | true injury | safe % | do not spread % | goes on % | void % | days |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- | --- |');
let [falseSafe, falseAlarm, leaningAlarm] = [0, 0, 0];
for (const [at, { name, ...truth }] of settings.entries()) {
  const { runs, safe, stopped, goesOn, invalid, meanDays } = tallyPotTests(truth, RUNS, 1000 + at);
  console.log(
    `| ${truth.crop} | ${truth.potsEach} | ${name} | ${truth.dose} | ${percent(safe, runs)} | ${percent(stopped, runs)} | ${percent(goesOn, runs)} | ${percent(invalid, runs)} | ${meanDays.toFixed(0)} |`,
  );
  if (truth.dose >= 30) falseSafe = Math.max(falseSafe, safe / runs);
  if (truth.dose > 0 || truth.unripe) continue;
  if (truth.leaning) leaningAlarm = Math.max(leaningAlarm, stopped / runs);
  else falseAlarm = Math.max(falseAlarm, stopped / runs);
}
console.log(
  `\n${RUNS} tests a line. Worst false "safe" at an injury of 30 or more: ${percent(falseSafe, 1)} %; worst false alarm on a harmless batch: ${percent(falseAlarm, 1)} %, ${percent(leaningAlarm, 1)} % where the rater leans.`,
);
