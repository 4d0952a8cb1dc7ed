/**
 * Turns what `train.py` exports into the module that ships, and the picture the port is tested on.
 *
 *     npx tsx training/outline-network/write-weights.ts FOLDER && npm run format
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

interface Exported {
  readonly layers: readonly { name: string; shape: number[]; scale: number[]; bias: number[] }[];
  readonly weights: string;
}

const folder = process.argv[2];
if (folder === undefined) throw new Error('Name the folder that train.py wrote to.');
const { layers, weights } = JSON.parse(readFileSync(`${folder}/outline-network.json`, 'utf8')) as Exported;
const size = (shape: readonly number[]): number => shape.reduce((product, side) => product * side, 1);
const floats = Float32Array.from(layers.flatMap(({ scale, bias }) => [...scale, ...bias]));
const lines = layers.map(({ name, shape, bias }) => `  ['${name}', ${size(shape)}, ${bias.length}],\n`);
writeFileSync(
  fileURLToPath(new URL('../../src/leaf/outline-network.ts', import.meta.url)),
  `/**
 * The network of \`guess-outline.ts\`, written by \`training/outline-network/write-weights.ts\`. Card: \`models/README.md\`.
 */

/** Name, number of weights and number of output channels of each layer, in the order they are packed. */
export const LAYERS: readonly (readonly [string, number, number])[] = [
${lines.join('')}];

/** Scale of each output channel, then its bias, layer by layer: 32-bit floats, little-endian, base64. */
export const SCALES =
  '${Buffer.from(floats.buffer).toString('base64')}';

/** Weights as whole numbers from -127 to 127, output channel by output channel: base64. */
export const WEIGHTS =
  '${weights}';
`,
);
const check = JSON.parse(readFileSync(`${folder}/check.json`, 'utf8'));
writeFileSync(
  fileURLToPath(new URL('../../tests/leaf/outline-network-check.json', import.meta.url)),
  `${JSON.stringify(check)}\n`,
);
