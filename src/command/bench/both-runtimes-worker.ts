/** Runs in Chromium, bundled by `both-runtimes.ts`: the network of signs in the app's runtime and in the other one, one thread each. */

import { setWasmPaths } from '@tensorflow/tfjs-backend-wasm';
import { ready, setBackend } from '@tensorflow/tfjs-core';
import { env, InferenceSession, Tensor } from 'onnxruntime-web/wasm';
import { INPUT_CHANNELS } from '../../classifier/crop-to-input.ts';
import { CROP_SIDE_PX } from '../../classifier/cut-crop.ts';
import { readOnnx } from '../../classifier/read-onnx.ts';
import { runOnce } from '../../classifier/session/open-network.ts';
import { placeWeights } from '../../classifier/session/run-graph.ts';
import type { RuntimeRun } from './both-runtimes.ts';

const port = globalThis as unknown as { postMessage(message: unknown): void };
const bytesAt = async (path: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(path)).arrayBuffer());

/** Rows, columns, channels to channels, rows, columns. */
function channelsFirst(input: Float32Array): Float32Array {
  const n = input.length / INPUT_CHANNELS;
  return Float32Array.from(input, (_, i) => input[INPUT_CHANNELS * (i % n) + Math.floor(i / n)]!);
}

/** Its outputs for one input, and how long each run took, ms, the first left out. */
async function timed(runs: number, run: () => Promise<number[][]>): Promise<RuntimeRun> {
  const outputs = await run();
  const ms: number[] = [];
  for (let k = 0; k < runs; k++) {
    const start = performance.now();
    await run();
    ms.push(performance.now() - start);
  }
  return { outputs, ms };
}

async function runBoth(inputs: number, runs: number): Promise<void> {
  const model = await bytesAt('/model');
  setWasmPaths({
    'tfjs-backend-wasm.wasm': '/tfjs.wasm',
    'tfjs-backend-wasm-simd.wasm': '/tfjs.wasm',
    'tfjs-backend-wasm-threaded-simd.wasm': '/tfjs.wasm',
  });
  await setBackend('wasm');
  await ready();
  const graph = readOnnx(model);
  const weights = placeWeights(graph);
  env.wasm.numThreads = 1;
  env.wasm.wasmBinary = (await bytesAt('/ort.wasm')).buffer as ArrayBuffer;
  const session = await InferenceSession.create(model, { executionProviders: ['wasm'] });
  for (let k = 0; k < inputs; k++) {
    const input = new Float32Array((await bytesAt(`/input-${k}`)).buffer);
    const app = await timed(runs, () => runOnce(graph, weights, input));
    const shape = [1, INPUT_CHANNELS, CROP_SIDE_PX, CROP_SIDE_PX];
    const other = await timed(runs, async () => {
      const said = await session.run({ crop: new Tensor('float32', channelsFirst(input), shape) });
      return graph.outputs.map((name) => [...(said[name]!.data as Float32Array)]);
    });
    port.postMessage({ app, other });
  }
}

const asked = new URLSearchParams((globalThis as unknown as { location: URL }).location.search);
runBoth(Number(asked.get('inputs')), Number(asked.get('runs'))).catch((cause: unknown) =>
  port.postMessage({ failed: String(cause) }),
);
