import {
  add,
  getBackend,
  matMul,
  mul,
  type Rank,
  ready,
  setBackend,
  sigmoid,
  sub,
  type Tensor3D,
  tensor3d,
  tidy,
  zeros,
} from '@tensorflow/tfjs-core';
import '@tensorflow/tfjs-backend-wasm';
import type { FitLogistic, LogisticFits } from '../own-head/logistic-fits.ts';

/** Stops where no coefficient can be further from the best one than this: the penalty bends the loss by at least 1 in every direction. */
const NEAR = 1e-4;
const MOST_STEPS = 20_000;
/** Steps between two looks at how far it has come. */
const STRIDE = 25;

/**
 * Coefficients u of logistic regressions that minimise Σ counts · log loss + |u|² / 2, to 1e-4, all fits at once. Full batch from
 * zero, by Nesterov's accelerated steps with the momentum for a strongly convex loss: nothing is drawn, the same rows give the same numbers.
 * In a browser the address of the backend's WASM file must have been set before.
 * @throws Error where the backend cannot be had or numbers are none; whatever `progress` throws, which so stops it
 */
export const fitLogistic: FitLogistic = async (problem, progress) => {
  const { fits, rows, columns } = problem;
  if (getBackend() !== 'wasm' && !(await setBackend('wasm'))) throw new Error('no WASM backend');
  await ready();
  const bend = steepestOf(problem);
  const momentum = (Math.sqrt(bend) - 1) / (Math.sqrt(bend) + 1);
  const inputs = tensor3d(problem.inputs, [fits, rows, columns]);
  const offsets = tensor3d(problem.offsets, [fits, rows, 1]);
  const counts = tensor3d(problem.counts, [fits, rows, 1]);
  const labels = tensor3d(problem.labels, [1, rows, 1]);
  const slopeAt = (at: Tensor3D): Tensor3D => {
    const odds = add(matMul(inputs, at), offsets);
    const missed = mul(sub(sigmoid(odds), labels), counts);
    return add<Tensor3D>(matMul(inputs, missed, true), at);
  };
  let here = zeros<Rank.R3>([fits, columns, 1]);
  let ahead = here.clone();
  try {
    let first: number | undefined;
    for (let step = 0; ; step += STRIDE) {
      const slope = tidy(() => slopeAt(here));
      const values = await slope.data<'float32'>();
      slope.dispose();
      const off = Math.sqrt(Math.max(...squaresByFit(values, fits)));
      if (off <= NEAR) break;
      if (!(off < Number.POSITIVE_INFINITY) || step > MOST_STEPS) throw new Error('the fit does not settle');
      first ??= off;
      progress(Math.min(1, Math.log(first / off) / Math.log(first / NEAR)));
      for (let k = 0; k < STRIDE; k++) {
        const next = tidy(() => sub<Tensor3D>(ahead, mul(slopeAt(ahead), 1 / bend)));
        const beyond = tidy(() => add<Tensor3D>(next, mul(sub(next, here), momentum)));
        here.dispose();
        ahead.dispose();
        [here, ahead] = [next, beyond];
      }
    }
    progress(1);
    return await here.data<'float32'>();
  } finally {
    for (const one of [inputs, offsets, counts, labels, here, ahead]) one.dispose();
  }
};

/** The most that the loss of any fit can bend: a quarter of the inputs' squares, and the penalty's 1. */
function steepestOf({ fits, rows, columns, inputs, counts }: LogisticFits): number {
  let most = 0;
  for (let fit = 0; fit < fits; fit++) {
    let sum = 0;
    for (let row = fit * rows; row < (fit + 1) * rows; row++) {
      if (counts[row] === 0) continue;
      for (let k = row * columns; k < (row + 1) * columns; k++) sum += counts[row]! * inputs[k]! ** 2;
    }
    most = Math.max(most, sum);
  }
  return 1 + most / 4;
}

function squaresByFit(values: Float32Array, fits: number): number[] {
  const columns = values.length / fits;
  const sums = new Array<number>(fits).fill(0);
  values.forEach((value, i) => {
    sums[Math.floor(i / columns)]! += value ** 2;
  });
  return sums;
}
