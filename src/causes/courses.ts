/**
 * Courses of action. `needless` is what the course costs in effort and harm where it helps nothing, in percent of the
 * bed's crop. That cost is the second lopsided loss of the design: acting against something harmless costs the
 * predators, the soil or the crop. The numbers are our own judgement (common practice, no source); the reasons say why.
 * No course names a pesticide or a dose.
 */
import type { CautionId } from './cautions.ts';
import type { CheckId } from './checks.ts';

interface Course<Id extends string = string> {
  readonly id: Id;
  /** What to do, as an instruction. */
  readonly says: string;
  readonly needless: number;
  readonly because: string;
  readonly cautions: readonly CautionId[];
  /**
   * Set on a course that only holds back until something is known. The last of these checks is the proof: as long as it
   * is open the verdict is to make the first of them that is, and the course holds meanwhile.
   */
  readonly until?: readonly CheckId[];
}

/** Courses that lift plants or cut them down: what cannot be put back is not done on a guess. */
export const DESTROYS_PLANTS: readonly string[] = ['remove-plants', 'clear-at-once', 'guard-roots'];

const course = <const Id extends string>(
  id: Id,
  says: string,
  needless: number,
  because: string,
  cautions: readonly CautionId[] = [],
  until?: readonly CheckId[],
): Course<Id> => ({ id, says, needless, because, cautions, ...(until ? { until } : {}) });

export const COURSES = [
  course(
    'stop-the-load',
    'Stop spreading and moving that load; label it, keep a sample, and ask the supplier what the fields were sprayed with. Grow sweetcorn or grass where it went; retest with beans in pots before anything tender.',
    12,
    'a good load lies idle for a season and the beds go without it',
    ['residue', 'local-rules'],
    // No leaf proves residue, and the pot test is cheap (OSU-CARRY, NCSU-CARRY): ask the bed, the supplier, then the beans.
    ['compare-other-crops', 'ask-supplier', 'pot-test'],
  ),
  course(
    'remove-plants',
    'Lift the affected plants and take them off the plot.',
    25,
    'healthy plants are lost',
    ['do-not-compost'],
  ),
  course(
    'clear-at-once',
    'Cut down and take away the affected tops today, before the next wet spell.',
    45,
    'the crop stops growing at once',
    ['do-not-compost', 'notifiable'],
  ),
  course(
    'pick-off-leaves',
    'Pick off the worst leaves and take them away.',
    3,
    'the plant loses working leaf',
  ),
  course(
    'pick-off-pests',
    'Pick the animals off by hand, or squash them, every other day.',
    2,
    'an hour a week',
  ),
  course(
    'wash-off-pests',
    'Wash them off with a jet of water or wipe them off with a finger, keeping ladybird larvae and hoverfly grubs.',
    5,
    'the hunters are washed away with the hunted',
    ['sprays'],
  ),
  course(
    'cover',
    'Cover with net or fine mesh, held off the leaves.',
    3,
    'mesh costs money and keeps bees out',
  ),
  course('fence', 'Put a guard or fence round the crop.', 4, 'a fence costs money and a morning'),
  course(
    'clear-hiding-places',
    'Clear boards, dead leaves and long grass from around the plants, and collect slugs and snails by torchlight.',
    3,
    'ground beetles live there too',
    ['slug-bait'],
  ),
  course(
    'keep-warm',
    'Cover with fleece or a cloche, or bring the pots in, until the nights are warmer.',
    3,
    'less light, and a job every evening',
  ),
  course(
    'quick-nitrogen',
    'Give a quick nitrogen-rich liquid feed once.',
    9,
    'soft growth draws greenfly, and what is not taken up washes away',
    ['feeds'],
  ),
  course(
    'feed-while-it-rots',
    'Give a little nitrogen-rich liquid feed every two weeks until new leaves come green. Dig in no more wood, straw or raw compost: leave it on top.',
    9,
    'soft growth draws greenfly, and it is a job every fortnight',
    ['feeds'],
  ),
  course(
    'supply-element',
    'Have the soil tested, then give the missing nutrient as the label of the product says.',
    9,
    'the wrong salt locks up another nutrient',
    ['feeds', 'soil-test'],
  ),
  course(
    'correct-ph',
    'Test the soil reaction and correct it slowly, in time for the next growing season.',
    10,
    'overdone liming lasts for years',
    ['soil-test', 'lime'],
  ),
  course(
    'water-deeply',
    'Water deeply now, then less often, and mulch.',
    6,
    'more water drowns roots that are short of air',
  ),
  course(
    'let-dry',
    'Stop watering, let surplus water away and keep off the soil.',
    5,
    'a dry plant stands dry for longer',
  ),
  course(
    'flush-salts',
    'Let plain water run through the soil or pot and feed no more for now.',
    5,
    'nutrients are washed out',
  ),
  course('shade', 'Shade during the hottest hours and water in the morning.', 3, 'the plant gets less light'),
  course('shelter', 'Put up a windbreak and support the stems.', 3, 'an hour and some netting'),
  course('pot-on', 'Loosen the roots and plant into more room.', 5, 'handled roots set the plant back'),
  course(
    'replant-cooler',
    'Lift the plants with their soil into finished ground and let the heap cool and mature.',
    6,
    'moved roots set the plant back',
  ),
  course('more-light', 'Move into better light or thin what shades it.', 3, 'a move is a check too'),
  course(
    'air-and-space',
    'Thin, ventilate, and water the soil instead of the leaves.',
    3,
    'an hour, and some plants',
  ),
  course(
    'guard-roots',
    'Lift the worst plant with its soil and look for grubs. Where there are some, lift the other bad ones too, and put collars or fine mesh round the rest.',
    // One plant, priced as one that is lifted for a check, and the mesh: without a grub nothing more is lifted.
    6,
    'a lifted plant is lost, and mesh costs money',
  ),
  course(
    'leave-soil-be',
    'Leave the soil undisturbed, mulch thinly, and give it time.',
    1,
    'nothing is lost but patience',
  ),
] as const;

export type CourseId = (typeof COURSES)[number]['id'];
