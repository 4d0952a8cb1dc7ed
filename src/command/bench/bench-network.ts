import { INPUT_CHANNELS } from '../../classifier/crop-to-input.ts';
import { CROP_SIDE_PX } from '../../classifier/cut-crop.ts';
import { runBothRuntimes } from './both-runtimes.ts';
import type { BenchRow } from './median-ms.ts';
import { middle } from './open-built-app.ts';

/** A port of its own, so that it disturbs no other server. */
const PORT = 4793;
const RUNS = 20;

/** One view of a leaf through the network of signs in Chromium, one thread: the app's runtime, and the other one beside it. */
export async function benchNetwork(): Promise<readonly BenchRow[]> {
  const input = Float32Array.from({ length: CROP_SIDE_PX * CROP_SIDE_PX * INPUT_CHANNELS }, (_, i) =>
    i % INPUT_CHANNELS === INPUT_CHANNELS - 1 ? 1 : Math.sin(i / 50) / 2,
  );
  const [ran] = await runBothRuntimes(PORT, [input], RUNS);
  const [app, other] = [middle(ran!.app.ms), middle(ran!.other.ms)];
  const fastest = ({ ms }: { readonly ms: readonly number[] }): string =>
    `fastest of ${RUNS}: ${Math.min(...ms).toFixed(0)} ms`;
  return [
    {
      name: 'network of signs in Chromium, one view: tfjs, in the app',
      ms: app,
      note: `${fastest(ran!.app)}, to stay under 60 ms`,
    },
    {
      name: 'network of signs in Chromium, one view: onnxruntime-web',
      ms: other,
      note: `${fastest(ran!.other)}; ${(app / other).toFixed(2)} times as long in the app's`,
    },
  ];
}
