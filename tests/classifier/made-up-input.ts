import { INPUT_CHANNELS } from '../../src/classifier/crop-to-input.ts';
import { CROP_SIDE_PX } from '../../src/classifier/cut-crop.ts';

/** The input that `made_up` of `training/signs-network/export.py` makes: waves in the colours, a wavy leaf. */
export function makeUpInput(k: number): Float32Array {
  const side = CROP_SIDE_PX;
  const input = new Float32Array(side * side * INPUT_CHANNELS);
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      for (let c = 0; c < INPUT_CHANNELS; c++) {
        const wave = Math.sin(0.045 * (c + 1) * x + 0.06 * (k + 1) * y + c);
        input[INPUT_CHANNELS * (y * side + x) + c] = c < 3 ? 0.6 * wave - 0.2 : wave > -0.3 ? 1 : -1;
      }
    }
  }
  return input;
}
