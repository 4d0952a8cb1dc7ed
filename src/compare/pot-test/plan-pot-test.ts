import { seededRandom } from '../../leaf/draw-leaf.ts';
import { type PotsTell, potsTell } from './how-often-wrong.ts';
import { type PlannedLook, scheduleLooks } from './schedule-looks.ts';
import { TEST_CROPS, type TestCrop, testCrop } from './test-crops.ts';
import { type Pot, PotTestError, type TestQuestion } from './types.ts';

/** What is to be decided, and with what. */
export interface PotTestWish {
  readonly question: TestQuestion;
  /** Day of sowing, `YYYY-MM-DD`. */
  readonly sowOn: string;
  /** Beds that the batch would go on. Default 1. */
  readonly beds?: number;
  /** Beans, peas, potatoes, tomatoes or lettuce are to follow there (OSU-SF-AMINO). Default no. */
  readonly sensitiveFollows?: boolean;
  /** A test of this batch has ended undecided: this one decides, so it takes the most pots. Default no. */
  readonly again?: boolean;
  /** Crops of which there is seed; default any. */
  readonly seedsAtHand?: readonly string[];
  /** Temperature where the pots will stand, °C; default warm enough for all. */
  readonly celsius?: number;
  /** Any whole number: the same number gives the same places. */
  readonly seed: number;
}

export interface PlacedPot extends Pot {
  /** On the pot; says nothing about what is in it, so that it is scored without knowing. */
  readonly label: string;
  /** Pair of neighbours, and place in the pair, from 0. */
  readonly block: number;
  readonly place: number;
}

/** Parts by volume. */
export interface Mix {
  readonly batch: number;
  readonly pottingMix: number;
}

export interface SowingCard {
  readonly question: TestQuestion;
  readonly crop: TestCrop;
  readonly potsEach: number;
  readonly seedsPerPot: number;
  readonly sowMm: number;
  /** Width of the pots, cm (OSU-CARRY: 4 to 5 inches). */
  readonly potCm: readonly [least: number, most: number];
  readonly mix: { readonly test: Mix; readonly control: Mix };
  readonly pots: readonly PlacedPot[];
  readonly steps: readonly SowingStepId[];
  readonly looks: readonly PlannedLook[];
  /** How often such a test decides. */
  readonly tells?: PotsTell;
  /** Words of `CAUTIONS`. */
  readonly cautions: readonly PotTestCaution[];
  /** What the plan rests on. */
  readonly sources: readonly string[];
}

/** Cautions of the knowledge base that go with a pot test. */
export const POT_TEST_CAUTIONS = ['residue', 'local-rules', 'compost-dust', 'fresh-manure', 'ask'] as const;
export type PotTestCaution = (typeof POT_TEST_CAUTIONS)[number] | 'do-not-compost';

/** What to do at sowing, in order. */
export const SOWING_STEPS = [
  {
    id: 'wear-gloves-and-mask',
    says: 'Wear gloves, and a mask where the compost is dusty or mouldy.',
    source: 'common practice, no source',
  },
  {
    id: 'take-many-samples',
    says: 'Take ten or more small shovelfuls from all over the heap, some from deep inside, and mix them well.',
    source: 'OSU-CARRY',
  },
  {
    id: 'one-load-one-test',
    says: 'Test loads from different places each by itself.',
    source: 'OSU-CARRY',
  },
  {
    id: 'clean-potting-mix',
    says: 'Use one bag of potting mix with feed and without garden compost for all pots.',
    source: 'WSU-WHATCOM',
  },
  {
    id: 'fill-controls-first',
    says: 'Fill the pots of clean mix first, with clean hands and tools.',
    source: 'common practice, no source',
  },
  {
    id: 'own-saucers',
    says: 'Give each pot a saucer of its own, or so much room that water from one pot never reaches another.',
    source: 'OSU-CARRY',
  },
  {
    id: 'labels-that-tell-nothing',
    says: 'Write only the letter on the pot, and keep this card out of sight while you score.',
    source: 'common practice, no source',
  },
  {
    id: 'set-out-as-drawn',
    says: 'Set the pots out as drawn: chance chose the places. Turn the whole row round at each look.',
    source: 'OECD-208',
  },
  {
    id: 'water-alike',
    says: 'Water all pots alike, with the same water, and do not feed them.',
    source: 'common practice, no source',
  },
] as const;
export type SowingStepId = (typeof SOWING_STEPS)[number]['id'];

/**
 * Pots of each kind: the protocol's three to six (OSU-CARRY). Three where one bed hangs on it, four where sensitive crops are to
 * follow, six where the batch would go on several beds, or a first test left it open (our own steps; the README's table says what each can tell). Ripeness:
 * four pots of five seeds make the twenty that three in four are counted on (UF-SARASOTA).
 */
export function potsEach({
  question,
  beds = 1,
  sensitiveFollows = false,
  again = false,
}: PotTestWish): number {
  if (question === 'ripeness') return 4;
  if (beds > 1 || again) return 6;
  return sensitiveFollows ? 4 : 3;
}

/** The first crop that answers the question, of which there is seed and that grows at that temperature. */
function cropFor({ question, seedsAtHand, celsius }: PotTestWish): TestCrop {
  const fits = TEST_CROPS.filter(
    ({ id, questions, leastCelsius }) =>
      questions.includes(question) &&
      (seedsAtHand === undefined || seedsAtHand.includes(id)) &&
      (celsius === undefined || celsius >= leastCelsius),
  );
  if (!fits[0]) throw new PotTestError('no-such-crop');
  return fits[0];
}

/** Two parts of the batch to one of potting mix (OSU-CARRY); equal volumes for tomato (WFA); for ripeness the compost itself (UF-SARASOTA). */
function mixFor(question: TestQuestion, crop: string): Mix {
  if (question === 'ripeness') return { batch: 1, pottingMix: 0 };
  return crop === 'tomato' ? { batch: 1, pottingMix: 1 } : { batch: 2, pottingMix: 1 };
}

/**
 * Places by chance in pairs: each pair of neighbours is one test pot and one control pot, which of them comes first is drawn,
 * so that light and draught fall on both kinds alike (randomised complete blocks). Labels follow the places.
 */
function placePots(count: number, seeds: number, seed: number): PlacedPot[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }).flatMap((_, block) => {
    const roles = random() < 0.5 ? (['test', 'control'] as const) : (['control', 'test'] as const);
    return roles.map((role, place) => {
      const at = 2 * block + place;
      return { id: `pot-${at + 1}`, label: String.fromCharCode(65 + at), role, seeds, block, place };
    });
  });
}

/** A test as it was laid out: all that its card hangs on. */
export interface LaidOut {
  readonly question: TestQuestion;
  readonly crop: string;
  /** Day of sowing, `YYYY-MM-DD`. */
  readonly sownOn: string;
  readonly pots: readonly PlacedPot[];
}

/**
 * The sowing card of a test that was laid out, the same whenever it is asked for. Pure.
 * @throws PotTestError `no-such-crop`
 */
export function sowingCardOf({ question, crop: id, sownOn, pots }: LaidOut): SowingCard {
  const crop = testCrop(id);
  if (!crop) throw new PotTestError('no-such-crop');
  const count = pots.filter(({ role }) => role === 'test').length;
  const tells = potsTell(question, id, count);
  return {
    question,
    crop,
    potsEach: count,
    seedsPerPot: pots[0]?.seeds ?? crop.seedsPerPot,
    sowMm: crop.sowMm,
    potCm: [10, 13],
    mix: { test: mixFor(question, id), control: { batch: 0, pottingMix: 1 } },
    pots,
    steps: SOWING_STEPS.map((step) => step.id),
    looks: scheduleLooks({ crop: id, sownOn }),
    ...(tells ? { tells } : {}),
    cautions: POT_TEST_CAUTIONS,
    sources: [...new Set([crop.source, ...(question === 'residue' ? ['OSU-CARRY'] : []), 'OECD-208'])],
  };
}

/**
 * Plans a pot test: which crop, how many pots and seeds, what mix, which pot stands where, when to look. Pure.
 * @throws PotTestError `no-such-crop` where no crop with seed at hand answers the question at that temperature
 */
export function planPotTest(wish: PotTestWish): SowingCard {
  const { id, seedsPerPot } = cropFor(wish);
  const pots = placePots(potsEach(wish), seedsPerPot, wish.seed);
  return sowingCardOf({ question: wish.question, crop: id, sownOn: wish.sowOn, pots });
}
