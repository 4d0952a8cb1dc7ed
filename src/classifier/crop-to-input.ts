import { convertPixelsToLab } from '../photo/convert-pixels-to-lab.ts';
import type { LeafCrop } from './cut-crop.ts';

/** Numbers a pixel of the network's input: L* / 50 − 1, a* / 40, b* / 40, share of the leaf (0–1). */
export const INPUT_CHANNELS = 4;

/** What the network is given of a crop: rows, columns, channels. */
export function cropToInput({ side, rgb, mask }: LeafCrop): Float32Array {
  const n = side * side;
  const data = new Uint8ClampedArray(4 * n);
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < 3; c++) data[4 * i + c] = rgb[3 * i + c]!;
    data[4 * i + 3] = 255;
  }
  const lab = convertPixelsToLab({ width: side, height: side, data });
  const input = new Float32Array(INPUT_CHANNELS * n);
  for (let i = 0; i < n; i++) {
    input[4 * i] = lab.L[i]! / 50 - 1;
    input[4 * i + 1] = lab.a[i]! / 40;
    input[4 * i + 2] = lab.b[i]! / 40;
    input[4 * i + 3] = mask[i]! / 255;
  }
  return input;
}

/** The crop mirrored, upside down or both: leaves have no right side up, so the network is asked four times. */
export function viewsOf(input: Float32Array, side: number): Float32Array[] {
  const turned = (mirror: boolean, upsideDown: boolean): Float32Array => {
    const out = new Float32Array(input.length);
    for (let y = 0; y < side; y++) {
      const fromY = upsideDown ? side - 1 - y : y;
      for (let x = 0; x < side; x++) {
        const from = INPUT_CHANNELS * (fromY * side + (mirror ? side - 1 - x : x));
        out.set(input.subarray(from, from + INPUT_CHANNELS), INPUT_CHANNELS * (y * side + x));
      }
    }
    return out;
  };
  return [input, turned(true, false), turned(false, true), turned(true, true)];
}
