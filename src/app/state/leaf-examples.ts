/** What the garden's photos teach the network: the eye's own answers of settled cases, and healthy leaves. Pure. */
import { NETWORK_MARKS } from '../../classifier/calibration.ts';
import { isUnlike } from '../../classifier/is-unlike.ts';
import { NETWORK_ID } from '../../classifier/network-file.ts';
import type { LeafExample } from '../../classifier/own-head/leaf-example.ts';
import { marksSaid, OWN_MARKS } from '../../classifier/own-head/marks-said.ts';
import type { Zone } from '../../days/growing-year.ts';
import type { NormalLeafRecord } from '../../garden/ground-records.ts';
import { bedKey } from '../../garden/group-by-bed.ts';
import { normalLeavesOf, varietyKey } from '../../garden/normal-leaves-of.ts';
import { partByYear } from '../../garden/part-by-year.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { Settled } from '../../garden/settle-case.ts';
import type { LeafReading } from '../../leaf/types.ts';
import { findingsFromReadings, isSilenced } from '../../signs/findings-from-readings.ts';
import { signAt } from '../../signs/sign-at.ts';
import type { Answers } from '../../signs/types.ts';
import type { KeptLook } from './kept.ts';

export interface GardenPhotos {
  /** Settled cases, each with its looks. */
  readonly cases: readonly { readonly settled: Settled; readonly looks: readonly KeptLook[] }[];
  readonly normalLeaves: readonly NormalLeafRecord[];
  readonly zone: Zone;
}

export interface GatheredExamples {
  readonly examples: readonly LeafExample[];
  /** Of them, healthy leaves. */
  readonly healthy: number;
  /** Photos that told something, but that the network never saw, or only another one did. */
  readonly unseen: number;
  /** Photos that it saw and that are too unlike all that it was taught. */
  readonly unlike: number;
}

/** Photos of one crop in one bed in one growing year are one planting: they share soil, light and variety. */
const plantingsOf = ({ cases, zone }: GardenPhotos): ReadonlyMap<string, string> =>
  partByYear(
    cases.map(({ settled }) => settled),
    ({ bed, crop }) => ['in', bedKey(bed), crop ?? ''],
    zone,
  );

/** Healthy leaves do not say which plant they come from; those of one variety may be of one plant. */
const plantingOfVariety = ({ crop, variety }: NormalLeafRecord): string =>
  ['of', crop, varietyKey(variety)].join('\u0000');

interface Photo {
  readonly id: string;
  readonly planting: string;
  readonly role: LeafReading['role'];
  readonly reading: LeafReading;
  readonly network: SeenByNetwork | undefined;
  readonly signs: Answers['signs'];
  /** Healthy leaves that the camera held it against. */
  readonly normals: readonly LeafReading[];
}

/** Every photo once: a leaf that was kept as a healthy one belongs to the planting of its look. */
export function gatherExamples(photos: GardenPhotos): GatheredExamples {
  const once = new Map<string, Photo>();
  for (const photo of [...photosOfLooks(photos), ...photosOfLeaves(photos)])
    if (!once.has(photo.id)) once.set(photo.id, photo);
  const told = [...once.values()].flatMap((photo) => {
    const marks = marksSaid(photo.signs, photo.role);
    return marks.size === 0 ? [] : [{ photo, marks }];
  });
  const seen = told.flatMap(({ photo, marks }) => {
    const { network } = photo;
    return network && isOurs(network) ? [{ photo, marks, network }] : [];
  });
  const known = seen.filter(({ network }) => !isUnlike(network));
  return {
    examples: known.map(({ photo, marks, network }) => ({
      planting: photo.planting,
      features: network.features,
      logits: network.logits,
      marks,
      camera: cameraSaid(photo),
    })),
    healthy: known.filter(({ photo }) => photo.role === 'normal').length,
    unseen: told.length - seen.length,
    unlike: seen.length - known.length,
  };
}

const isOurs = ({ network, logits }: SeenByNetwork): boolean =>
  network === NETWORK_ID && logits.length === NETWORK_MARKS.length;

const photosOfLooks = (all: GardenPhotos): Photo[] => {
  const { cases, normalLeaves } = all;
  const plantings = plantingsOf(all);
  return cases.flatMap(({ settled, looks }) =>
    looks
      .filter(({ deletedAt }) => !deletedAt)
      .flatMap(({ photos, answers }) => {
        const stage = answers.setting['crop-stage'];
        const { crop, variety } = answers;
        const normals = readingsOf(normalLeavesOf(normalLeaves, { crop, variety, stage }));
        return photos.flatMap(({ id, role, reading, network }): Photo[] =>
          reading && !isSilenced(reading) && reading.role === role
            ? [
                {
                  id,
                  planting: plantings.get(settled.id)!,
                  role: reading.role,
                  reading,
                  network,
                  signs: answers.signs,
                  normals,
                },
              ]
            : [],
        );
      }),
  );
};

const photosOfLeaves = ({ normalLeaves }: GardenPhotos): Photo[] =>
  normalLeaves
    .filter(({ deletedAt }) => !deletedAt)
    .flatMap((leaf): Photo[] => {
      const reading = leaf.reading as LeafReading | undefined;
      return reading && !isSilenced(reading)
        ? [
            {
              id: leaf.photoId,
              planting: plantingOfVariety(leaf),
              role: 'normal',
              reading,
              network: leaf.network,
              signs: {},
              normals: [],
            },
          ]
        : [];
    });

const readingsOf = (leaves: readonly NormalLeafRecord[]): LeafReading[] =>
  leaves.flatMap(({ reading }) =>
    reading ? [{ ...(reading as LeafReading), role: 'normal' as const }] : [],
  );

/** The camera's log likelihood ratio of each mark on this photo. A healthy leaf is read as an old one would be: by itself it reports nothing. */
function cameraSaid({ reading, role, normals }: Photo): Map<string, number> {
  const asked = role === 'normal' ? 'old' : role;
  const ratios = new Map(
    findingsFromReadings([{ ...reading, role: asked }, ...normals]).map(({ sign, ifPresent, ifAbsent }) => [
      sign,
      Math.log(ifPresent / ifAbsent),
    ]),
  );
  return new Map(
    OWN_MARKS.flatMap((mark) => {
      const ratio = ratios.get(signAt(mark, asked));
      return ratio === undefined ? [] : [[mark, ratio] as const];
    }),
  );
}
