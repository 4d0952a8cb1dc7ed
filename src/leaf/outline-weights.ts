import { LAYERS, SCALES, WEIGHTS } from './outline-network.ts';

/** Weights of one layer, output channel by output channel, and one bias for each. */
export interface LayerWeights {
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

let layers: Map<string, LayerWeights> | undefined;

/** A layer of the outline network by name, unpacked on first use. @throws Error for a name it does not have */
export function outlineWeights(name: string): LayerWeights {
  layers ??= unpack();
  const layer = layers.get(name);
  if (layer === undefined) throw new Error(`the outline network has no layer ${name}`);
  return layer;
}

function unpack(): Map<string, LayerWeights> {
  const whole = new Int8Array(decodeBase64(WEIGHTS).buffer);
  const parts = new Float32Array(decodeBase64(SCALES).buffer);
  const unpacked = new Map<string, LayerWeights>();
  let at = 0;
  let part = 0;
  for (const [name, size, channels] of LAYERS) {
    const weights = new Float32Array(size);
    for (let i = 0; i < size; i++) {
      weights[i] = whole[at + i]! * parts[part + Math.floor((i * channels) / size)]!;
    }
    at += size;
    unpacked.set(name, { weights, bias: parts.slice(part + channels, part + 2 * channels) });
    part += 2 * channels;
  }
  return unpacked;
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648; here because neither a browser's nor Node's decoder may be called in this folder. */
function decodeBase64(text: string): Uint8Array {
  const valueAt = new Uint8Array(128);
  for (let i = 0; i < 64; i++) valueAt[ALPHABET.charCodeAt(i)] = i;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const out = new Uint8Array((text.length / 4) * 3 - padding);
  for (let i = 0, o = 0; i < text.length; i += 4, o += 3) {
    const bits =
      (valueAt[text.charCodeAt(i)]! << 18) |
      (valueAt[text.charCodeAt(i + 1)]! << 12) |
      (valueAt[text.charCodeAt(i + 2)]! << 6) |
      valueAt[text.charCodeAt(i + 3)]!;
    out[o] = bits >> 16;
    if (o + 1 < out.length) out[o + 1] = (bits >> 8) & 255;
    if (o + 2 < out.length) out[o + 2] = bits & 255;
  }
  return out;
}
