/**
 * Writes rendered examples as a shard: `<from>.rgb` (size × size × 3 bytes an example), `<from>.mask` (size × size bytes) and
 * `<from>.json` (`size`, `marks` in their order, and of each example seed, marks as 0 and 1, measures, leaf, crop, ground). The example of
 * a seed is the same wherever and in whatever shard it is rendered. Needs nothing but Node:
 * `npx esbuild training/rendered-leaves/write-examples.ts --bundle --platform=node --format=esm --outfile=write-examples.mjs`.
 *
 *     write-examples.ts COUNT FROM OUTDIR [SIZE]
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { RENDERED_MARKS } from './choose-marks.ts';
import { renderExample } from './render-example.ts';

const [count = 0, from = 0, size = 224] = [process.argv[2], process.argv[3], process.argv[5]].map((text) =>
  text === undefined ? undefined : Number(text),
);
const folder = process.argv[4];
if (!folder || !Number.isInteger(count) || count < 1 || !Number.isInteger(from) || !Number.isInteger(size)) {
  console.error('write-examples.ts COUNT FROM OUTDIR [SIZE]');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });
const rgb = new Uint8Array(count * size * size * 3);
const mask = new Uint8Array(count * size * size);
const examples: unknown[] = [];
for (let k = 0; k < count; k++) {
  const example = renderExample(from + k, size);
  rgb.set(example.rgb, k * size * size * 3);
  mask.set(example.mask, k * size * size);
  const { measures, leaf, crop, ground } = example;
  examples.push({
    seed: from + k,
    marks: RENDERED_MARKS.map((mark) => example.marks[mark]),
    measures,
    leaf,
    crop,
    ground,
  });
}
const at = (ending: string): string => join(folder, `${String(from).padStart(8, '0')}.${ending}`);
writeFileSync(at('rgb'), rgb);
writeFileSync(at('mask'), mask);
writeFileSync(at('json'), JSON.stringify({ size, count, marks: RENDERED_MARKS, examples }));
console.log(`${count} examples from seed ${from} in ${folder}`);
