/**
 * Puts what `export.py` wrote where the app and the tests look for it: `models/signs.onnx`, its size and checksum, and PyTorch's answers.
 *
 *     npx tsx training/signs-network/ship.ts FOLDER
 */
import { createHash } from 'node:crypto';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = process.argv[2];
if (folder === undefined) throw new Error('Name the folder that export.py wrote to.');
const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const file = readFileSync(join(folder, 'signs.onnx'));
copyFileSync(join(folder, 'signs.onnx'), at('models/signs.onnx'));
copyFileSync(join(folder, 'check.json'), at('tests/classifier/network-check.json'));
writeFileSync(
  at('src/classifier/network-file.ts'),
  `/** Size and SHA-256 of \`models/signs.onnx\`, as shipped. Written by \`training/signs-network/ship.ts\`. */
export const NETWORK_BYTES = ${file.length};
export const NETWORK_SHA256 = '${createHash('sha256').update(file).digest('hex')}';
/** Which network this is, as \`SeenByNetwork.network\` names it. */
export const NETWORK_ID = NETWORK_SHA256.slice(0, 16);
`,
);
console.log(`${file.length} bytes`);
