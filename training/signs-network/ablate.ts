/**
 * What the network adds to the ranking of causes, on photographs of sets that it never saw.
 *
 *     npx tsx training/signs-network/ablate.ts ANSWERS.json PHOTOS.jsonl
 *
 * Each photograph is a look: its crop, the camera's measures, and what the eye can say by the photograph's own label of marks that
 * the network does not report. Compared: neither, the camera, the network, both. The cause is what the label names.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { NETWORK_MARKS } from '../../src/classifier/calibration.ts';
import { findingsFromNetwork } from '../../src/classifier/findings-from-network.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import { isAskable } from '../../src/signs/members-of.ts';
import type { Answers } from '../../src/signs/types.ts';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';
import { triageChances } from '../../src/triage.ts';
import { type Photo, type Run, readAnswers, SHIPPED } from './read-answers.ts';

const CROPS: Readonly<Record<string, CropId>> = {
  'bean-uganda': 'french-bean',
  'blackgram-india': 'french-bean',
  'chilli-india': 'pepper',
};
/** Several where the label leaves open which. */
const CAUSES: Readonly<Record<string, readonly CauseId[]>> = {
  powdery_mildew: ['powdery-mildew'],
  bean_rust: ['rust'],
  angular_leaf_spot: ['leaf-spot'],
  anthracnose: ['leaf-spot'],
  cercospora: ['leaf-spot'],
  yellow_mosaic: ['virus'],
  leaf_crinckle: ['virus'],
  murda_complex_mites_trips: ['spider-mite', 'thrips'],
  nutritional: ['iron-short', 'magnesium-short', 'manganese-short'],
};
const DISEASES: readonly CauseId[] = ['powdery-mildew', 'rust', 'leaf-spot', 'virus'];
/** Marks that the network does not report, so that the eye's word and the network's are never the same one. */
const BY_EYE = ['puckered', 'pale-trails', 'yellow-between-veins', 'curled'];

const { runs, photos } = readAnswers(process.argv.slice(2));

const ARMS = ['neither', 'camera', 'network', 'both'] as const;
type Arm = (typeof ARMS)[number];
interface Look {
  readonly photo: Photo;
  readonly arm: Arm;
  readonly withEye: boolean;
  readonly chances: ReadonlyMap<CauseId, number>;
}

function chancesOf(photo: Photo, run: Run, k: number, arm: Arm, withEye: boolean): Look['chances'] {
  const said = photo.labels;
  const signs: Record<string, 'seen' | 'absent'> = {};
  for (const mark of withEye ? BY_EYE : []) {
    const sign = `${mark}@old`;
    if (said[mark] !== undefined && isAskable(sign)) signs[sign] = said[mark] === 1 ? 'seen' : 'absent';
  }
  const reading = {
    role: 'old',
    leaf: { found: photo.leaf },
    trouble: photo.trouble,
    measures: arm === 'network' || arm === 'neither' ? {} : photo.measures,
  } as unknown as LeafReading;
  const network =
    arm === 'camera' || arm === 'neither'
      ? []
      : findingsFromNetwork(
          { logits: run.agreed[k]!, strangeness: run.strangeness[k]!, features: [] },
          'old',
        ).map(({ sign, ifPresent, ifAbsent }) => ({ sign, ratio: ifPresent / ifAbsent }));
  const answers: Answers = { crop: CROPS[photo.set]!, setting: {}, signs };
  // The photos say neither where nor when they were taken; without a date north and south weigh the same.
  return triageChances({ photos: [reading], answers, network, today: '2026-07-15', zone: 'north' });
}

const looks: Look[] = [];
for (const run of runs.filter(
  ({ taught, fold }) => taught === SHIPPED.taught && fold.startsWith('without-'),
)) {
  if (run.agreed[0]!.length !== NETWORK_MARKS.length) throw new Error('The answers are of another network.');
  for (const [k, id] of run.ids.entries()) {
    const photo = photos.get(id)!;
    if (photo.set !== run.fold.slice('without-'.length)) continue;
    for (const arm of ARMS)
      for (const withEye of [false, true])
        looks.push({ photo, arm, withEye, chances: chancesOf(photo, run, k, arm, withEye) });
  }
}

const mean = (values: readonly number[]): number =>
  Math.round((1000 * values.reduce((sum, x) => sum + x, 0)) / Math.max(1, values.length)) / 1000;
const sumOf = (look: Look, causes: readonly CauseId[]): number =>
  causes.reduce((sum, id) => sum + (look.chances.get(id) ?? 0), 0);
/** Place of the best of the causes among all, 1 = first. */
const placeOf = (look: Look, causes: readonly CauseId[]): number => {
  const best = Math.max(...causes.map((id) => look.chances.get(id) ?? 0));
  return 1 + [...look.chances.values()].filter((chance) => chance > best).length;
};

const table = [false, true].flatMap((withEye) =>
  ARMS.map((arm) => {
    const own = looks.filter((look) => look.arm === arm && look.withEye === withEye);
    const ill = own.filter(({ photo }) => CAUSES[photo.label] !== undefined);
    const causesOf = ({ photo }: Look): readonly CauseId[] => CAUSES[photo.label]!;
    const byLabel = Object.fromEntries(
      Object.keys(CAUSES).map((label) => {
        const of = ill.filter(({ photo }) => photo.label === label);
        return [label, mean(of.map((look) => (placeOf(look, causesOf(look)) <= 3 ? 1 : 0)))];
      }),
    );
    return {
      eye: withEye,
      arm,
      leaves: ill.length,
      first: mean(ill.map((look) => (placeOf(look, causesOf(look)) === 1 ? 1 : 0))),
      firstThree: mean(ill.map((look) => (placeOf(look, causesOf(look)) <= 3 ? 1 : 0))),
      loss: mean(ill.map((look) => -Math.log(Math.max(1e-4, Math.min(1, sumOf(look, causesOf(look))))))),
      diseaseOnHealthy: mean(
        own.filter(({ photo }) => photo.label === 'healthy').map((look) => sumOf(look, DISEASES)),
      ),
      firstThreeByLabel: byLabel,
    };
  }),
);
writeFileSync(
  fileURLToPath(new URL('./ablation.json', import.meta.url)),
  `${JSON.stringify(table, null, 1)}\n`,
);
for (const { firstThreeByLabel, ...row } of table)
  console.log(JSON.stringify(row), JSON.stringify(firstThreeByLabel));
