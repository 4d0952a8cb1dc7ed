import type { LeafCrop } from './cut-crop.ts';

/** Numbers a pixel of the network's input: red, green, blue as coded in sRGB, share of the leaf; all from -1 to 1. */
export const INPUT_CHANNELS = 4;

/** What the network is given of a crop: rows, columns, channels. */
export function cropToInput({ side, rgb, mask }: LeafCrop): Float32Array {
  const input = new Float32Array(INPUT_CHANNELS * side * side);
  for (let i = 0; i < side * side; i++) {
    for (let c = 0; c < 3; c++) input[4 * i + c] = rgb[3 * i + c]! / 127.5 - 1;
    input[4 * i + 3] = mask[i]! / 127.5 - 1;
  }
  return input;
}
