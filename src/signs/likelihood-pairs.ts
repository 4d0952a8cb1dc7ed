/**
 * What a measure says of a mark: its distribution on photographs with and without the mark, on the given scale.
 * Written by `training/fit-likelihood-pairs.ts`; do not edit by hand. `auc` is measured on the same photographs,
 * `most` is the strongest ratio that it allows. Licences of the sets: `training/README.md`.
 */
import type { MarkPair } from './mark-pair.ts';

export const LIKELIHOOD_PAIRS: readonly MarkPair[] = [
  {
    mark: 'yellow-even',
    measure: 'dark-green-index',
    scale: 'plain',
    present: { mean: 0.254, sd: 0.057, n: 38 },
    absent: { mean: 0.628, sd: 0.124, n: 184 },
    most: 12,
    auc: 0.996,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'],
  },
  {
    mark: 'yellow-between-veins',
    measure: 'vein-contrast',
    scale: 'plain',
    present: { mean: 1.225, sd: 0.596, n: 36 },
    absent: { mean: 0.279, sd: 0.292, n: 186 },
    most: 10.768,
    auc: 0.915,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'],
  },
  {
    mark: 'mottled',
    measure: 'mottle',
    scale: 'plain',
    present: { mean: 0.511, sd: 0.066, n: 36 },
    absent: { mean: 0.369, sd: 0.083, n: 148 },
    most: 8.531,
    auc: 0.895,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'],
  },
  {
    mark: 'brown-spots',
    measure: 'spot-fraction',
    scale: 'log-odds',
    present: { mean: -3.255, sd: 0.602, n: 107 },
    absent: { mean: -4.42, sd: 0.274, n: 108 },
    most: 11.984,
    auc: 0.923,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india'],
  },
  {
    mark: 'white-powder',
    measure: 'white-fraction',
    scale: 'log-odds',
    present: { mean: -2.535, sd: 1.56, n: 72 },
    absent: { mean: -4.535, sd: 0.87, n: 108 },
    most: 3.152,
    auc: 0.759,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india'],
  },
  {
    mark: 'ragged-holes',
    measure: 'hole-fraction',
    scale: 'log-odds',
    present: { mean: -2.558, sd: 0.578, n: 34 },
    absent: { mean: -4.456, sd: 0.431, n: 72 },
    most: 12,
    auc: 0.99,
    sets: ['bean-uganda', 'blackgram-india', 'soybean-holes'],
  },
];
