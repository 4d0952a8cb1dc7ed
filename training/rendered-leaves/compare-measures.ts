/**
 * Do the measures of `src/leaf` agree with what was drawn? Photographs of every kind of leaf on four grounds, with and without marks,
 * are read with a tap on the leaf. Prints how well outlines agree, how far each measure lies from the truth and how often
 * within its own error, and how measures of pattern rank leaves that have their mark above those without.
 *
 * `npx tsx training/rendered-leaves/compare-measures.ts [rounds, default 4: 224 photographs]`
 */
import type { MeasureId } from '../../src/leaf/measures.ts';
import { overlapOfMasks } from '../../src/leaf/overlap-of-masks.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import { listComparisons } from './list-comparisons.ts';
import { printAgreement, type ReadPhoto } from './print-agreement.ts';
import { renderPhoto } from './render-photo.ts';

const rounds = Number(process.argv[2] ?? 4);
const read: ReadPhoto[] = [];
for (const wanted of listComparisons(rounds)) {
  const photo = renderPhoto(wanted);
  const { reading, mask } = readLeaf(photo.pixels, { role: 'whole', taps: { leaf: photo.tap } });
  const measured: { [Id in MeasureId]?: { value: number; se: number } } = reading.measures;
  read.push({
    leaf: photo.leaf,
    ground: wanted.ground,
    marks: photo.marks,
    trouble: reading.trouble,
    overlap: mask ? overlapOfMasks(mask.data, photo.remaining.data) : undefined,
    truth: photo.measures,
    measured,
  });
}
printAgreement(read);
