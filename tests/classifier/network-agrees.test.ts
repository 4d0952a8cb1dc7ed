import { readFileSync } from 'node:fs';
import { ready, setBackend } from '@tensorflow/tfjs-core';
import '@tensorflow/tfjs-backend-wasm';
import { InferenceSession, Tensor } from 'onnxruntime-web';
import { beforeAll, describe, expect, it } from 'vitest';
import { INPUT_CHANNELS } from '../../src/classifier/crop-to-input.ts';
import { CROP_SIDE_PX } from '../../src/classifier/cut-crop.ts';
import { type OnnxGraph, readOnnx } from '../../src/classifier/read-onnx.ts';
import { runOnce } from '../../src/classifier/session/open-network.ts';
import { placeWeights, type Weights } from '../../src/classifier/session/run-graph.ts';
import { makeUpInput } from './made-up-input.ts';

const FILE = readFileSync(new URL('../../models/signs.onnx', import.meta.url));
/** What PyTorch made of the made-up inputs, written by `training/signs-network/export.py`. */
const CHECK = JSON.parse(readFileSync(new URL('./network-check.json', import.meta.url), 'utf8')) as {
  logits: number[];
  strangeness: number;
}[];

/** Rows, columns, channels to channels, rows, columns. */
function channelsFirst(input: Float32Array): Float32Array {
  const n = input.length / INPUT_CHANNELS;
  return Float32Array.from(input, (_, i) => input[INPUT_CHANNELS * (i % n) + Math.floor(i / n)]!);
}

const furthest = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((value, k) => Math.abs(value - b[k]!)));

describe('the network of signs', () => {
  let graph: OnnxGraph;
  let weights: Weights;
  let session: InferenceSession;
  beforeAll(async () => {
    await setBackend('wasm');
    await ready();
    graph = readOnnx(new Uint8Array(FILE));
    weights = placeWeights(graph);
    session = await InferenceSession.create(new Uint8Array(FILE), { executionProviders: ['wasm'] });
  });

  it.each([0, 1, 2])('says in the app what it said in training, to 1e-4 (input %i)', async (k) => {
    const [logits, , strangeness] = await runOnce(graph, weights, makeUpInput(k));
    expect(furthest(logits!, CHECK[k]!.logits)).toBeLessThan(1e-4 * Math.max(1, ...logits!.map(Math.abs)));
    expect(strangeness![0]! / CHECK[k]!.strangeness).toBeCloseTo(1, 3);
  });

  it.each([0, 1, 2])('says the same in the other runtime, to 1e-4 (input %i)', async (k) => {
    const input = makeUpInput(k);
    const [logits, features] = await runOnce(graph, weights, input);
    const crop = new Tensor('float32', channelsFirst(input), [1, INPUT_CHANNELS, CROP_SIDE_PX, CROP_SIDE_PX]);
    const other = await session.run({ crop });
    const valuesOf = (name: string): number[] => [...(other[name]!.data as Float32Array)];
    expect(furthest(logits!, valuesOf('logits'))).toBeLessThan(1e-4 * Math.max(1, ...logits!.map(Math.abs)));
    expect(furthest(features!, valuesOf('features'))).toBeLessThan(1e-4 * Math.max(1, ...features!));
  });

  it('stays under 3 MB', () => {
    expect(FILE.length).toBeLessThan(3_000_000);
  });
});
