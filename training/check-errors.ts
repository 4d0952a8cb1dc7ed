/**
 * Do the stated errors hold? Photographs of every set are read twice: as they are with a tap on the leaf, and taken again by
 * script under other light, exposure, JPEG quality, scale, turn and tap. Prints for each measure how often the two differ
 * by less than the errors of both together (they claim 68 of 100).
 *
 * `npx tsx training/check-errors.ts [photographs a label] [file for the pairs]`
 */
import { writeFileSync } from 'node:fs';
import { type RetakenPair, retakePhotos, tellCoverage } from '../tests/leaf/retake-photos.ts';
import { HAS_PHOTOS, pickPhotos } from '../tests/leaf/shared-photos.ts';
import { seededRandom } from '../tests/pictures/draw-leaf.ts';

const LABELS = [
  ['papaya-spad', 'golden_white_bg'],
  ['papaya-spad', 'tainung_natural_bg'],
  ['soybean-holes', 'damaged'],
  ['chilli-india', 'nutritional'],
  ['chilli-india', 'cercospora'],
  ['blackgram-india', 'yellow_mosaic'],
  ['blackgram-india', 'powdery_mildew'],
  ['bean-uganda', 'angular_leaf_spot'],
  ['bean-uganda', 'healthy'],
] as const;

if (!HAS_PHOTOS) throw new Error('No photographs beside the repository: nothing to check.');
const perLabel = Number(process.argv[2] ?? 8);
const random = seededRandom(41);
const pairs: RetakenPair[] = [];
for (const [set, label] of LABELS)
  pairs.push(...(await retakePhotos(pickPhotos(set, label, perLabel), random)));
if (process.argv[3] !== undefined) writeFileSync(process.argv[3], JSON.stringify(pairs));
for (const { id, count, share, medianMove, medianSe } of tellCoverage(pairs))
  console.log(
    id.padEnd(22),
    String(count).padStart(4),
    share.toFixed(2),
    medianMove.toPrecision(3),
    medianSe.toPrecision(3),
  );
