/**
 * What a measure says of a mark: its distribution on photographs with and without the mark, on the given scale.
 * Written by `training/fit-likelihood-pairs.ts`; do not edit by hand. `auc` is measured on the same photographs,
 * `most` is the strongest ratio that it allows. Licences of the sets: `training/README.md`.
 */
import type { MeasureId } from '../leaf/measures.ts';
import type { MeasureScale } from './measure-scale.ts';
import type { MarkId } from './vocabulary.ts';

interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** Photographs behind it. */
  readonly n: number;
}

export interface MarkPair {
  readonly mark: MarkId;
  readonly measure: MeasureId;
  readonly scale: MeasureScale;
  readonly present: Spread;
  readonly absent: Spread;
  readonly most: number;
  readonly auc: number;
  readonly sets: readonly string[];
}

export const LIKELIHOOD_PAIRS: readonly MarkPair[] = [
  {
    mark: 'yellow-even',
    measure: 'dark-green-index',
    scale: 'plain',
    present: { mean: 0.243, sd: 0.06, n: 21 },
    absent: { mean: 0.628, sd: 0.122, n: 99 },
    most: 12,
    auc: 0.992,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india', 'papaya-spad'],
  },
  {
    mark: 'brown-spots',
    measure: 'spot-fraction',
    scale: 'log-odds',
    present: { mean: -3.297, sd: 0.66, n: 83 },
    absent: { mean: -4.434, sd: 0.233, n: 64 },
    most: 10.302,
    auc: 0.912,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india'],
  },
  {
    mark: 'white-powder',
    measure: 'white-fraction',
    scale: 'log-odds',
    present: { mean: -2.809, sd: 1.437, n: 44 },
    absent: { mean: -4.612, sd: 0.693, n: 64 },
    most: 5.371,
    auc: 0.843,
    sets: ['bean-uganda', 'blackgram-india', 'chilli-india'],
  },
  {
    mark: 'ragged-holes',
    measure: 'hole-fraction',
    scale: 'log-odds',
    present: { mean: -2.719, sd: 0.791, n: 28 },
    absent: { mean: -4.285, sd: 0.345, n: 51 },
    most: 12,
    auc: 0.938,
    sets: ['bean-uganda', 'blackgram-india', 'soybean-holes'],
  },
];
