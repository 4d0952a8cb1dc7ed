/**
 * How well each measure of pattern ranks photographs with a mark above healthy ones, on the half of the groups that its
 * constants were chosen on and on the half that was left out. Reads what `fit-likelihood-pairs.ts` has measured.
 * Run: npx tsx training/rank-on-halves.ts (needs ../shared/photos).
 */
import { crc32 } from 'node:zlib';
import type { MeasureId } from '../src/leaf/measures.ts';
import { codeFingerprint } from './code-fingerprint.ts';
import { rank } from './fit-mark-pair.ts';
import { type LabelledReading, readLabelledPhotos } from './read-labelled-photos.ts';

type Line = readonly [
  says: string,
  measure: MeasureId,
  present: readonly string[],
  absent: readonly string[],
];

const BEAN = 'bean-uganda/healthy';
const BLACKGRAM = 'blackgram-india/healthy';
const CHILLI = 'chilli-india/healthy';
const INTERVEINAL = 'chilli-india/nutritional';
const MOSAIC = 'blackgram-india/yellow_mosaic';
const CRINKLE = 'blackgram-india/leaf_crinckle';
const CURL = 'chilli-india/murda_complex_mites_trips';

const LINES: readonly Line[] = [
  ['yellow between veins: chilli / chilli, blackgram', 'vein-contrast', [INTERVEINAL], [CHILLI, BLACKGRAM]],
  ['yellow between veins: chilli / chilli', 'vein-contrast', [INTERVEINAL], [CHILLI]],
  ['yellow between veins: chilli / mosaic blackgram', 'vein-contrast', [INTERVEINAL], [MOSAIC]],
  ['mosaic: blackgram / blackgram', 'mottle', [MOSAIC], [BLACKGRAM]],
  ['mosaic: blackgram / all healthy', 'mottle', [MOSAIC], [BEAN, BLACKGRAM, CHILLI]],
  ['angular spots: bean / bean', 'spot-fraction', ['bean-uganda/angular_leaf_spot'], [BEAN]],
  ['rust: bean / bean', 'spot-fraction', ['bean-uganda/bean_rust'], [BEAN]],
  ['anthracnose: blackgram / blackgram', 'spot-fraction', ['blackgram-india/anthracnose'], [BLACKGRAM]],
  ['cercospora: chilli / chilli', 'spot-fraction', ['chilli-india/cercospora'], [CHILLI]],
  ['powder: blackgram / blackgram', 'white-fraction', ['blackgram-india/powdery_mildew'], [BLACKGRAM]],
  ['powder: chilli / chilli', 'white-fraction', ['chilli-india/powdery_mildew'], [CHILLI]],
  ['puckering: blackgram / blackgram', 'surface-relief', [CRINKLE], [BLACKGRAM]],
  ['curl: chilli / chilli', 'surface-relief', [CURL], [CHILLI]],
  ['puckering and curl / chilli, blackgram', 'surface-relief', [CRINKLE, CURL], [CHILLI, BLACKGRAM]],
];

/** 0: the half that constants were chosen on, 1: the half left out. By group, so that no leaf is in both. */
const halfOf = ({ set, group }: LabelledReading): number => crc32(`${set}/${group}`) % 2;

const photos = (await readLabelledPhotos(process.env.READINGS ?? codeFingerprint())).filter(
  ({ trouble }) => !trouble.includes('no-leaf'),
);
for (const [says, measure, present, absent] of LINES) {
  const valuesOf = (keys: readonly string[], half?: number): number[] =>
    photos
      .filter((photo) => keys.includes(`${photo.set}/${photo.label}`))
      .filter((photo) => half === undefined || halfOf(photo) === half)
      .flatMap(({ measures }) => measures[measure]?.value ?? []);
  const onHalf = (half?: number): string => {
    const there = valuesOf(present, half);
    const away = valuesOf(absent, half);
    return `${rank(there, away).toFixed(3)} (${there.length}/${away.length})`;
  };
  process.stdout.write(
    `${says.padEnd(50)} ${measure.padEnd(16)} chosen on ${onHalf(0)}  left out ${onHalf(1)}  all ${onHalf()}\n`,
  );
}
