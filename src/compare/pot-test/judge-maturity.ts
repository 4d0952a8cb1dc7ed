import { betaBelow } from './beta-functions.ts';
import { VALIDITY } from './judge-validity.ts';
import { PotTestError } from './types.ts';
import { weighEmergence } from './weigh-emergence.ts';

/** A home test of ripeness as print has it. Ripeness pots (`planPotTest`, question `ripeness`) are the fuller form of the first. */
export const MATURITY_TESTS = [
  {
    id: 'radish-pots',
    says: 'Sow twenty radish seeds in pots of the compost. It is ready where three in four or more come up and grow on.',
    days: 14,
    source: 'UF-SARASOTA',
  },
  {
    id: 'water-extract',
    says: 'Soak one part of compost in two parts of water by volume for two hours and filter it. Lay fifteen quick seeds on paper wet with it, fifteen on paper wet with water, keep them warm, and compare.',
    days: 5,
    source: 'UF-SARASOTA',
  },
  {
    id: 'self-heating',
    says: 'Fill moist compost loosely into a vacuum flask with a thermometer in it, leave it open at room temperature, and read it every day. What counts is the greatest rise over the room.',
    days: 10,
    source: 'CCQC-2001',
  },
] as const;

/** What is known against all tests with quick seeds, to be said beside their result. */
export const SEED_TESTS_ARE_BLUNT = {
  says: 'Cress, radish and Chinese cabbage were not sensitive enough to tell ripe from unripe composts: a test that is passed proves little.',
  source: 'GERM-COMP',
} as const;

export interface SownShare {
  readonly sown: number;
  /** Up and growing on. */
  readonly grown: number;
}

const checked = ({ sown, grown }: SownShare): void => {
  if (!Number.isInteger(sown) || !Number.isInteger(grown) || sown < 1 || grown < 0)
    throw new PotTestError('bad-count');
  if (grown > sown) throw new PotTestError('more-up-than-sown');
};

/** Three in four that sprout and grow on make compost ready (UF-SARASOTA). */
export const RADISH_READY = 0.75;

/**
 * The radish rule, and how sure its count is: chance that the true share is at least three in four, every share taken as likely as any
 * other beforehand (exact: a Beta). It has no control, so poor seed looks like poor compost.
 * @throws PotTestError `bad-count`, `more-up-than-sown`
 */
export function judgeRadish(count: SownShare): { readonly ready: boolean; readonly chance: number } {
  checked(count);
  const { sown, grown } = count;
  return {
    ready: grown / sown >= RADISH_READY,
    chance: 1 - betaBelow(RADISH_READY, grown + 1, sown - grown + 1),
  };
}

export interface ExtractTest {
  readonly extract: SownShare;
  readonly water: SownShare;
  /** Mean length of the roots, mm, where they were measured. */
  readonly rootMm?: { readonly extract: number; readonly water: number };
}

export interface ExtractResult {
  /** Germination in the extract over that in water. */
  readonly share: number;
  /** Chance that the extract keeps a fifth or more of the seed from coming up, even odds beforehand. */
  readonly harmed: number;
  /** Germination share times root share, percent (ZUCCONI). */
  readonly index?: number;
  /** Below 50 strongly poisonous to plants, above 80 harmless, `between` else (ZUCCONI, from memory). */
  readonly grade?: 'poisonous' | 'between' | 'harmless';
}

/** Germination index of Zucconi and others: both shares in percent, their product over 100. */
export const germinationIndex = (germinationPercent: number, rootPercent: number): number =>
  (germinationPercent * rootPercent) / 100;

/**
 * Reads the extract test against plain water. Void where too few come up in water, by the limit for control pots (OECD-208).
 * @throws PotTestError `bad-count`, `more-up-than-sown`, `bad-height`
 */
export function judgeExtract({ extract, water, rootMm }: ExtractTest): ExtractResult | 'invalid' {
  checked(extract);
  checked(water);
  if (rootMm && !(rootMm.extract >= 0 && rootMm.water > 0)) throw new PotTestError('bad-height');
  const [inExtract, inWater] = [extract.grown / extract.sown, water.grown / water.sown];
  if (inWater < VALIDITY.germination.limit) return 'invalid';
  const share = inExtract / inWater;
  const pot = ({ sown, grown }: SownShare) => ({ seeds: sown, emerged: grown });
  const index = rootMm && germinationIndex(100 * share, (100 * rootMm.extract) / rootMm.water);
  return {
    share,
    harmed: weighEmergence([pot(extract)], [pot(water)]).chanceFrom(0.5),
    ...(index === undefined
      ? {}
      : { index, grade: index < 50 ? 'poisonous' : index > 80 ? 'harmless' : 'between' }),
  };
}

/** Below this share of the control a compost is immature (CCQC-2001, band from memory). */
const MATURE_SHARE = 0.8;

/**
 * What an extract test comes to: passed from 80 % of the control on where no root index speaks against it; failed where fewer came up and
 * that is likelier than not the extract's doing, or where the index says poisonous; else unclear.
 */
export function verdictOfExtract({ share, harmed, grade }: ExtractResult): 'passed' | 'failed' | 'unclear' {
  if (grade === 'poisonous' || (share < MATURE_SHARE && harmed > 0.5)) return 'failed';
  return share >= MATURE_SHARE && grade !== 'between' ? 'passed' : 'unclear';
}
