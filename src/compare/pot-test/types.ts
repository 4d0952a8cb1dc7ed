/** A pot test as plain values: what was sown, what was seen. The garden's record of it holds these and more. */

/** What is to be decided: does the batch carry a weedkiller of the auxin type; is it ripe enough to sow into. */
export type TestQuestion = 'residue' | 'ripeness';
export const TEST_QUESTIONS = ['residue', 'ripeness'] as const satisfies readonly TestQuestion[];

/** `test`: with the batch in it. `control`: clean mix only. */
export type PotRole = 'test' | 'control';

export interface Pot {
  readonly id: string;
  readonly role: PotRole;
  /** Seeds sown in it. */
  readonly seeds: number;
}

/** One pot at one look. What was not looked at is left out. */
export interface PotScore {
  readonly potId: string;
  /** Day of the look, `YYYY-MM-DD`. */
  readonly date: string;
  /** Seedlings that have come up so far, those that died since counted in. */
  readonly emerged: number;
  /** Mean height of the living seedlings, mm. */
  readonly heightMm?: number;
  /** 0 to 100 by the steps of `INJURY_STEPS`, the pot as a whole. */
  readonly injury?: number;
  /** Sets of true leaves that most seedlings of the pot have unfolded. */
  readonly leafSets?: number;
  /** Fresh mass of all shoots, g, where the test ends with cutting and weighing them. */
  readonly grams?: number;
  readonly photos?: readonly string[];
}

export interface PotTest {
  readonly question: TestQuestion;
  /** Crop sown, a word of `TEST_CROPS`. */
  readonly crop: string;
  /** Day of sowing, `YYYY-MM-DD`. */
  readonly sownOn: string;
  readonly pots: readonly Pot[];
  readonly scores: readonly PotScore[];
}

/**
 * `no-such-crop`: not a crop that tests are sown with. `bad-day`: not a day. `bad-count`: pots, seeds or seedlings that
 * cannot be. `more-up-than-sown`. `bad-injury`: outside 0 to 100. `bad-height`, `bad-leaf-sets`, `bad-mass`: not a size
 * that a seedling can have. `no-such-pot`: a score of a pot that was not sown. `same-pot-twice`. `before-sowing`.
 */
export type PotTestErrorCode =
  | 'no-such-crop'
  | 'bad-day'
  | 'bad-count'
  | 'more-up-than-sown'
  | 'bad-injury'
  | 'bad-height'
  | 'bad-leaf-sets'
  | 'bad-mass'
  | 'no-such-pot'
  | 'same-pot-twice'
  | 'before-sowing';

/** What is wrong with a test's numbers; the faces own the sentences. */
export class PotTestError extends Error {
  override readonly name = 'PotTestError';
  constructor(
    readonly code: PotTestErrorCode,
    /** The pot that it is about, where it is about one. */
    readonly potId?: string,
  ) {
    super(code);
  }
}
