import { stepOf } from './injury-scale.ts';
import { testCrop } from './test-crops.ts';
import { type PotScore, type PotTest, PotTestError, type PotTestErrorCode } from './types.ts';

/** Sizes beyond which it was a slip of the finger. */
const MOST = { pots: 60, seeds: 60, heightMm: 2000, leafSets: 12, grams: 2000 } as const;

const isWhole = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most;
const isWithin = (value: number | undefined, most: number): boolean =>
  value === undefined || (Number.isFinite(value) && value > 0 && value <= most);
const isDay = (value: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(value) && !Number.isNaN(Date.parse(`${value}T00:00:00Z`));

/** The first thing wrong with a score of a pot with so many seeds, or nothing. */
export function faultOfScore(
  { date, emerged, heightMm, injury, leafSets, grams }: PotScore,
  seeds: number,
  sownOn: string,
): PotTestErrorCode | undefined {
  if (!isDay(date)) return 'bad-day';
  if (date < sownOn) return 'before-sowing';
  if (!isWhole(emerged, 0, MOST.seeds)) return 'bad-count';
  if (emerged > seeds) return 'more-up-than-sown';
  if (injury !== undefined && !(injury >= 0 && injury <= 100 && stepOf(injury) <= 10)) return 'bad-injury';
  if (!isWithin(heightMm, MOST.heightMm)) return 'bad-height';
  if (leafSets !== undefined && !(leafSets >= 0 && leafSets <= MOST.leafSets)) return 'bad-leaf-sets';
  return isWithin(grams, MOST.grams) ? undefined : 'bad-mass';
}

/** @throws PotTestError where numbers of the test cannot be */
export function checkPotTest({ crop, sownOn, pots, scores }: PotTest): void {
  if (!testCrop(crop)) throw new PotTestError('no-such-crop');
  if (!isDay(sownOn)) throw new PotTestError('bad-day');
  if (pots.length > MOST.pots) throw new PotTestError('bad-count');
  const seeds = new Map<string, number>();
  for (const pot of pots) {
    if (seeds.has(pot.id)) throw new PotTestError('same-pot-twice', pot.id);
    if (!isWhole(pot.seeds, 1, MOST.seeds)) throw new PotTestError('bad-count', pot.id);
    seeds.set(pot.id, pot.seeds);
  }
  for (const score of scores) {
    const sown = seeds.get(score.potId);
    if (sown === undefined) throw new PotTestError('no-such-pot', score.potId);
    const fault = faultOfScore(score, sown, sownOn);
    if (fault) throw new PotTestError(fault, score.potId);
  }
}
