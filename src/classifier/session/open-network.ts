import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { getBackend, ready, setBackend, tensor4d } from '@tensorflow/tfjs-core';
import '@tensorflow/tfjs-backend-wasm';
import { agree } from '../agree.ts';
import { cropToInput, INPUT_CHANNELS } from '../crop-to-input.ts';
import { CROP_SIDE_PX, type LeafCrop } from '../cut-crop.ts';
import { NETWORK_BYTES, NETWORK_SHA256 } from '../network-file.ts';
import { type OnnxGraph, readOnnx } from '../read-onnx.ts';
import { type NetworkAnswer, NetworkError } from '../types.ts';
import { placeWeights, runGraph, type Weights } from './run-graph.ts';

/** The network, ready to look at leaves. */
export interface SignsNetwork {
  look(crop: LeafCrop): Promise<NetworkAnswer>;
  /** Gives its memory back. */
  close(): void;
}

/**
 * Tests the model file against the checksum it was shipped with and makes it ready, one thread. In a browser the address of the
 * backend's WASM file must have been set before (`setWasmPaths` of `@tensorflow/tfjs-backend-wasm`), the app's own file.
 * @param file bytes of `models/signs.onnx`; undefined or empty where it could not be fetched
 * @throws NetworkError
 */
export async function openNetwork(file: Uint8Array | undefined): Promise<SignsNetwork> {
  if (file === undefined || file.length === 0) throw new NetworkError('network-missing');
  if (file.length !== NETWORK_BYTES || bytesToHex(sha256(file)) !== NETWORK_SHA256)
    throw new NetworkError('network-altered');
  try {
    if (getBackend() !== 'wasm' && !(await setBackend('wasm'))) throw new Error('no WASM backend');
    await ready();
    const graph = readOnnx(file);
    const weights = placeWeights(graph);
    return {
      look: (crop) => look(graph, weights, crop),
      close: () => {
        for (const weight of weights.values()) weight.dispose();
      },
    };
  } catch (cause) {
    throw new NetworkError('network-cannot-run', { cause });
  }
}

/** Raw outputs for one input of rows, columns, channels: logits, features, strangeness. */
export async function runOnce(
  graph: OnnxGraph,
  weights: Weights,
  input: Float32Array,
  side: number = CROP_SIDE_PX,
): Promise<number[][]> {
  const x = tensor4d(input, [1, side, side, INPUT_CHANNELS]);
  const outputs = runGraph(graph, weights, x);
  const values = await Promise.all(outputs.map(async (output) => [...(await output.data())]));
  for (const one of [x, ...outputs]) one.dispose();
  return values;
}

async function look(graph: OnnxGraph, weights: Weights, crop: LeafCrop): Promise<NetworkAnswer> {
  const [logits, features, strangeness] = await runOnce(graph, weights, cropToInput(crop), crop.side);
  return { logits: agree(logits!), strangeness: strangeness![0]!, features: features! };
}
