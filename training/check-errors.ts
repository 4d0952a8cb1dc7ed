/**
 * Do the stated errors hold? Photographs of every set are read twice: as they are with a tap on the leaf, and taken again by
 * script under other light, exposure, JPEG quality, scale, turn and tap. Prints for each measure how often the two differ
 * by less than the errors of both together (they claim 68 of 100), on one half of the photographs and on the other, and
 * what errors would have to be multiplied by on the first: fit `RETAKE` of `take-measures.ts` there, and try it on the second.
 *
 * `npx tsx training/check-errors.ts [photographs a label]`
 */

import { seededRandom } from '../src/leaf/draw-leaf.ts';
import { type RetakenPair, retakePhotos } from '../tests/leaf/retake-photos.ts';
import { HAS_PHOTOS, pickPhotos } from '../tests/leaf/shared-photos.ts';
import { printCoverage } from './print-coverage.ts';

const LABELS = [
  ['papaya-spad', 'golden_white_bg'],
  ['papaya-spad', 'tainung_white_bg'],
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
const perLabel = Number(process.argv[2] ?? 12);
const random = seededRandom(41);
const halves: [RetakenPair[], RetakenPair[]] = [[], []];
for (const [set, label] of LABELS)
  for (const [k, row] of pickPhotos(set, label, perLabel).entries())
    halves[k % 2 === 0 ? 0 : 1].push(...(await retakePhotos([row], random)));
printCoverage(...halves);
