/**
 * How far leaves of one variety in one plot differ though nothing is wrong: for `src/compare/over-time/spread-among-leaves.ts`.
 * Robust spread (1.4826 × median absolute deviation) of each measure over the healthy field photographs of one set, the
 * mean stated error taken out, and the middle of the three sets. Reads what `fit-likelihood-pairs.ts` reads.
 */
import { MEASURES } from '../src/leaf/measures.ts';
import { codeFingerprint } from './code-fingerprint.ts';
import { readLabelledPhotos } from './read-labelled-photos.ts';

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.floor(sorted.length / 2)]!;
};

const readings = await readLabelledPhotos(codeFingerprint());
for (const { id } of MEASURES) {
  const spreads = ['bean-uganda', 'blackgram-india', 'chilli-india'].map((set) => {
    const values = readings
      .filter((photo) => photo.set === set && photo.label === 'healthy')
      .flatMap(({ measures }) => measures[id] ?? []);
    const middle = median(values.map(({ value }) => value));
    const spread = 1.4826 * median(values.map(({ value }) => Math.abs(value - middle)));
    const error = median(values.map(({ se }) => se));
    return { middle, own: Math.sqrt(Math.max(0, spread ** 2 - error ** 2)), n: values.length };
  });
  const shown = spreads
    .map(({ middle, own, n }) => `${middle.toFixed(3)} ± ${own.toFixed(3)} (${n})`)
    .join('  ');
  process.stdout.write(`${id.padEnd(20)} ${median(spreads.map(({ own }) => own)).toFixed(3)}   ${shown}\n`);
}
