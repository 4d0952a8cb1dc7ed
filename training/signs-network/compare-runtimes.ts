/**
 * Times the network in both runtimes, one thread, and says what each would add to the app: bytes packed by gzip.
 *
 *     npx tsx training/signs-network/compare-runtimes.ts
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { ready, setBackend } from '@tensorflow/tfjs-core';
import '@tensorflow/tfjs-backend-wasm';
import { build } from 'esbuild';
import { env, InferenceSession, Tensor } from 'onnxruntime-web';
import { INPUT_CHANNELS } from '../../src/classifier/crop-to-input.ts';
import { CROP_SIDE_PX } from '../../src/classifier/cut-crop.ts';
import { readOnnx } from '../../src/classifier/read-onnx.ts';
import { runOnce } from '../../src/classifier/session/open-network.ts';
import { placeWeights } from '../../src/classifier/session/run-graph.ts';

const TIMES = 40;
const file = new Uint8Array(readFileSync(new URL('../../models/signs.onnx', import.meta.url)));
const require = createRequire(import.meta.url);
const packed = (bytes: Uint8Array): number => gzipSync(bytes, { level: 9 }).length;
const medianOf = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

async function timed(run: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}

async function bundled(contents: string): Promise<number> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    external: ['fs', 'path', 'worker_threads', 'perf_hooks', 'os', 'util', 'crypto'],
    logLevel: 'silent',
  });
  return packed(outputFiles[0]!.contents);
}

const input = new Float32Array(CROP_SIDE_PX * CROP_SIDE_PX * INPUT_CHANNELS).fill(0.3);

const tfjsStart = await timed(async () => {
  await setBackend('wasm');
  await ready();
});
const graph = readOnnx(file);
const weights = placeWeights(graph);
const tfjsFirst = await timed(() => runOnce(graph, weights, input));
const tfjs: number[] = [];
for (let k = 0; k < TIMES; k++) tfjs.push(await timed(() => runOnce(graph, weights, input)));

env.wasm.numThreads = 1;
let session: InferenceSession | undefined;
const ortStart = await timed(async () => {
  session = await InferenceSession.create(file, { executionProviders: ['wasm'] });
});
const run = () =>
  session!.run({ crop: new Tensor('float32', input, [1, INPUT_CHANNELS, CROP_SIDE_PX, CROP_SIDE_PX]) });
const ortFirst = await timed(run);
const ort: number[] = [];
for (let k = 0; k < TIMES; k++) ort.push(await timed(run));

const folderOf = (name: string): string => dirname(require.resolve(`${name}/package.json`));
const tfjsWasm = readFileSync(
  join(folderOf('@tensorflow/tfjs-backend-wasm'), 'dist/tfjs-backend-wasm-simd.wasm'),
);
const ortWasm = readFileSync(
  join(dirname(require.resolve('onnxruntime-web')), 'ort-wasm-simd-threaded.wasm'),
);
const tfjsScript = await bundled("export { openNetwork } from './src/classifier/session/open-network.ts'");
const ortScript = await bundled("export { InferenceSession, Tensor } from 'onnxruntime-web/wasm'");
const warm = (values: number[]): string => `${ms(medianOf(values))} (fastest ${ms(Math.min(...values))})`;
const ms = (x: number): string => `${x.toFixed(1)} ms`;
console.log(`model: ${file.length} bytes, ${packed(file)} packed`);
console.log(
  `tfjs: start ${ms(tfjsStart)}, first ${ms(tfjsFirst)}, warm ${warm(tfjs)}; script ${tfjsScript}, WASM ${packed(tfjsWasm)} bytes packed`,
);
console.log(
  `onnxruntime-web: start ${ms(ortStart)}, first ${ms(ortFirst)}, warm ${warm(ort)}; script ${ortScript}, WASM ${packed(ortWasm)} bytes packed`,
);
