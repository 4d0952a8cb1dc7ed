import type { SaidOutcome } from '../../garden/settle-case.ts';
import type { LeafPicture } from '../../leaf/draw-leaf.ts';
import type { PhotoRole } from '../../photo/types.ts';
import type { Answers } from '../../signs/types.ts';

/** One look of the demo: when, what is drawn, and what the invented grower said. Never what came out. */
export interface InventedLook {
  readonly daysAgo: number;
  readonly photos: readonly (LeafPicture & { readonly role: PhotoRole })[];
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

const OLD = { role: 'old', background: 'paper' } as const;
const NEW = { role: 'new', background: 'paper' } as const;

/** Eight plants in trouble: four still followed, four settled. */
export const INVENTED_CASES: readonly InventedCase[] = [
  {
    id: 'kale',
    planting: 'kale',
    plant: 'Third kale from the path',
    looks: [
      {
        daysAgo: 19,
        photos: [{ ...OLD, seed: 11, purple: true, angleDegrees: 20 }],
        signs: { 'purple-tint@old': 'seen', 'after-cold': 'seen', 'whole-bed': 'seen', stunted: 'seen' },
        note: 'Standing still since the cold nights.',
      },
      {
        daysAgo: 7,
        photos: [
          { ...OLD, seed: 12, purple: true, angleDegrees: 15 },
          { ...NEW, seed: 13, length: 0.5, angleDegrees: -10 },
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
        photos: [{ ...NEW, seed: 21, shape: 'heart', slender: 0.7, length: 0.6 }],
        signs: { 'cupped-up@new': 'seen', 'one-plant': 'absent' },
        note: '',
      },
      {
        daysAgo: 11,
        photos: [{ ...NEW, seed: 22, shape: 'heart', slender: 0.6, length: 0.55, dimples: 0.1 }],
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
        photos: [{ ...NEW, seed: 23, shape: 'heart', slender: 0.5, length: 0.5, dimples: 0.12 }],
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
        photos: [{ ...OLD, seed: 31, shape: 'lobed', yellow: { where: 'between-veins' } }],
        signs: { 'yellow-between-veins@old': 'seen', 'new-growth-clean': 'seen' },
        note: '',
      },
      {
        daysAgo: 10,
        photos: [{ ...OLD, seed: 32, shape: 'lobed', yellow: { where: 'between-veins' }, angleDegrees: 30 }],
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
        photos: [{ ...OLD, seed: 41, slender: 0.25, yellow: { where: 'all' }, length: 0.8 }],
        signs: { 'yellow-even@old': 'seen', 'oldest-first': 'seen', stunted: 'seen' },
        note: '',
      },
      {
        daysAgo: 13,
        photos: [
          { ...OLD, seed: 42, slender: 0.25, yellow: { where: 'all' }, length: 0.8, angleDegrees: 12 },
        ],
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
        photos: [{ ...OLD, seed: 51, holes: { count: 16, radius: 0.014 } }],
        signs: { 'shot-holes@old': 'seen', 'whole-bed': 'seen' },
        note: '',
      },
      {
        daysAgo: 24,
        photos: [{ ...OLD, seed: 52, holes: { count: 22, radius: 0.014 } }],
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
        photos: [
          {
            ...OLD,
            seed: 61,
            slender: 0.75,
            length: 0.6,
            bites: { count: 3 },
            holes: { count: 2, radius: 0.045 },
          },
        ],
        signs: { 'ragged-holes@old': 'seen' },
        note: '',
      },
      {
        daysAgo: 28,
        photos: [
          {
            ...OLD,
            seed: 62,
            slender: 0.75,
            length: 0.6,
            bites: { count: 5 },
            holes: { count: 3, radius: 0.045 },
          },
        ],
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
        photos: [{ ...NEW, seed: 71, yellow: { where: 'all', rgb: [188, 190, 62] } }],
        signs: { 'whole-colour-golden@new': 'seen' },
        note: '',
      },
      {
        daysAgo: 22,
        photos: [{ ...NEW, seed: 72, yellow: { where: 'all', rgb: [188, 190, 62] } }],
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
        photos: [{ ...OLD, seed: 81, shape: 'lobed', slender: 0.8, length: 0.6, powder: true }],
        signs: { 'white-powder@old': 'seen' },
        note: '',
      },
      {
        daysAgo: 9,
        photos: [{ ...OLD, seed: 82, shape: 'lobed', slender: 0.8, length: 0.6, powder: true }],
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
