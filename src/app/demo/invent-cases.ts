import type { SaidOutcome } from '../../garden/settle-case.ts';
import type { PhotoRole } from '../../photo/types.ts';
import type { Answers } from '../../signs/types.ts';

/** A leaf to be rendered when the app is built (`training/rendered-leaves/`): one leaf keeps its `plant` from look to look. */
export interface InventedPicture {
  readonly seed: number;
  readonly plant: number;
  readonly leaf: 'cabbage' | 'bean' | 'tomato' | 'strap' | 'rocket' | 'lettuce' | 'beet' | 'squash';
  readonly marks: readonly (
    | 'purple-tint'
    | 'cupped-up'
    | 'twisted-narrow'
    | 'yellow-between-veins'
    | 'yellow-even'
    | 'shot-holes'
    | 'ragged-holes'
    | 'edge-bites'
    | 'whole-colour-golden'
    | 'white-powder'
  )[];
  /** Taken off its compound leaf: between leaflets the ground would count as holes. */
  readonly leaflet?: boolean;
  readonly ground: 'paper' | 'soil';
  readonly fill?: number;
  readonly turnDegrees?: number;
}

/** One look of the demo: when, what is drawn, and what the invented grower said. Never what came out. */
export interface InventedLook {
  readonly daysAgo: number;
  readonly photos: readonly (InventedPicture & { readonly role: PhotoRole })[];
  readonly signs: Answers['signs'];
  readonly note: string;
}

export interface InventedCase {
  readonly id: string;
  readonly planting: string;
  readonly plant: string;
  readonly looks: readonly InventedLook[];
  /** How it ended, and how many days ago; open without it. */
  readonly ended?: SaidOutcome & { readonly daysAgo: number };
}

const OLD = { role: 'old', ground: 'paper' } as const;
const NEW = { role: 'new', ground: 'paper' } as const;
const KALE = { leaf: 'cabbage', plant: 14, marks: ['purple-tint'] } as const;
const TOMATO = { leaf: 'tomato', leaflet: true, plant: 232, marks: ['yellow-between-veins'] } as const;
const CORN = { leaf: 'strap', plant: 231, marks: ['yellow-even'], fill: 0.85 } as const;
const ROCKET = { leaf: 'rocket', plant: 52, marks: ['shot-holes'] } as const;
const LETTUCE = { leaf: 'lettuce', plant: 62, marks: ['ragged-holes', 'edge-bites'] } as const;
const CHARD = { leaf: 'beet', plant: 75, marks: ['whole-colour-golden'] } as const;
const COURGETTE = { leaf: 'squash', plant: 84, marks: ['white-powder'] } as const;

/** Eight plants in trouble: four still followed, four settled. */
export const INVENTED_CASES: readonly InventedCase[] = [
  {
    id: 'kale',
    planting: 'kale',
    plant: 'Third kale from the path',
    looks: [
      {
        daysAgo: 19,
        photos: [{ ...OLD, ...KALE, seed: 11, turnDegrees: 20 }],
        signs: { 'purple-tint@old': 'seen', 'after-cold': 'seen', 'whole-bed': 'seen', stunted: 'seen' },
        note: 'Standing still since the cold nights.',
      },
      {
        daysAgo: 7,
        photos: [
          { ...OLD, ...KALE, seed: 12, turnDegrees: 35 },
          { ...NEW, ...KALE, seed: 13, plant: 10, marks: [], fill: 0.7, turnDegrees: -10 },
        ],
        signs: { 'new-growth-clean': 'seen', 'getting-better': 'seen' },
        note: 'The heart is green.',
      },
    ],
  },
  {
    id: 'bean',
    planting: 'bean',
    plant: 'Beans, middle of the row',
    looks: [
      {
        daysAgo: 18,
        photos: [{ ...NEW, leaf: 'bean', plant: 22, seed: 21, marks: ['cupped-up'], fill: 0.75 }],
        signs: { 'cupped-up@new': 'seen', 'one-plant': 'absent' },
        note: '',
      },
      {
        daysAgo: 11,
        photos: [{ ...NEW, leaf: 'bean', plant: 27, seed: 22, marks: ['twisted-narrow'] }],
        signs: {
          'cupped-up@new': 'seen',
          'twisted-narrow@new': 'seen',
          'same-compost-only': 'seen',
          aphids: 'absent',
        },
        note: 'The row without manure is straight.',
      },
      {
        daysAgo: 3,
        photos: [{ ...NEW, leaf: 'bean', plant: 26, seed: 23, marks: ['twisted-narrow'] }],
        signs: { 'twisted-narrow@new': 'seen', 'stem-twisted': 'seen', 'getting-better': 'absent' },
        note: 'Beans sown in a cup of it are up; too early to say.',
      },
    ],
  },
  {
    id: 'tomato',
    planting: 'tomato',
    plant: 'Tomato by the tunnel door',
    looks: [
      {
        daysAgo: 19,
        photos: [{ ...OLD, ...TOMATO, seed: 31, turnDegrees: -25 }],
        signs: { 'yellow-between-veins@old': 'seen', 'new-growth-clean': 'seen' },
        note: '',
      },
      {
        daysAgo: 10,
        photos: [{ ...OLD, ...TOMATO, seed: 32, turnDegrees: 30 }],
        signs: { 'yellow-between-veins@old': 'seen', 'oldest-first': 'seen' },
        note: 'One leaf further up.',
      },
    ],
  },
  {
    id: 'corn',
    planting: 'corn',
    plant: 'Sweetcorn, front row',
    looks: [
      {
        daysAgo: 22,
        photos: [{ ...OLD, ...CORN, seed: 41, turnDegrees: 24 }],
        signs: { 'yellow-even@old': 'seen', 'oldest-first': 'seen', stunted: 'seen' },
        note: '',
      },
      {
        daysAgo: 13,
        photos: [{ ...OLD, ...CORN, seed: 42, turnDegrees: 36 }],
        signs: { 'yellow-even@old': 'seen', 'whole-bed': 'seen' },
        note: 'Same all over the square.',
      },
    ],
  },
  {
    id: 'rocket',
    planting: 'rocket',
    plant: 'Rocket, first row',
    looks: [
      {
        daysAgo: 27,
        photos: [{ ...OLD, ...ROCKET, seed: 51, turnDegrees: 10 }],
        signs: { 'shot-holes@old': 'seen', 'whole-bed': 'seen' },
        note: '',
      },
      {
        daysAgo: 24,
        photos: [{ ...OLD, ...ROCKET, seed: 52, plant: 54, turnDegrees: 160 }],
        signs: { 'shot-holes@old': 'seen', 'jumping-beetles': 'seen' },
        note: 'They jump when the leaves are brushed.',
      },
    ],
    ended: { daysAgo: 14, causes: ['flea-beetle'], sureness: 'seen', lost: 'tenth', done: 'Netted the row.' },
  },
  {
    id: 'lettuce',
    planting: 'lettuce',
    plant: 'Lettuce at the low end',
    looks: [
      {
        daysAgo: 30,
        photos: [{ ...OLD, ...LETTUCE, seed: 61, plant: 65, turnDegrees: 60 }],
        signs: { 'ragged-holes@old': 'seen' },
        note: '',
      },
      {
        daysAgo: 28,
        photos: [{ ...OLD, ...LETTUCE, seed: 62, turnDegrees: 75 }],
        signs: { 'ragged-holes@old': 'seen', slime: 'seen', 'slugs-seen': 'seen' },
        note: 'Went out with a lamp.',
      },
    ],
    ended: {
      daysAgo: 17,
      causes: ['slugs-snails'],
      sureness: 'seen',
      lost: 'half',
      done: 'Picked them off at dusk.',
    },
  },
  {
    id: 'chard',
    planting: 'chard',
    plant: 'Chard under the pear',
    looks: [
      {
        daysAgo: 34,
        photos: [{ ...NEW, ...CHARD, seed: 71, turnDegrees: -35 }],
        signs: { 'whole-colour-golden@new': 'seen' },
        note: '',
      },
      {
        daysAgo: 22,
        photos: [{ ...NEW, ...CHARD, seed: 72, turnDegrees: -15 }],
        signs: { 'whole-colour-golden@new': 'seen', 'always-so': 'seen', stunted: 'absent' },
        note: 'Growing well.',
      },
    ],
    ended: { daysAgo: 22, causes: ['variety-colour'], sureness: 'fairly', lost: 'none', done: '' },
  },
  {
    id: 'courgette',
    planting: 'courgette',
    plant: 'Courgette in the tub',
    looks: [
      {
        daysAgo: 16,
        photos: [{ ...OLD, ...COURGETTE, seed: 81 }],
        signs: { 'white-powder@old': 'seen' },
        note: '',
      },
      {
        daysAgo: 9,
        photos: [{ ...OLD, ...COURGETTE, seed: 82 }],
        signs: { 'white-powder@old': 'seen', spreading: 'seen' },
        note: 'Wipes off.',
      },
    ],
    ended: {
      daysAgo: 5,
      causes: ['powdery-mildew'],
      sureness: 'seen',
      lost: 'tenth',
      done: 'Took the worst leaves off.',
    },
  },
];
