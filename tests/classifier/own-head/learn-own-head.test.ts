import { describe, expect, it } from 'vitest';
import { NETWORK_MARKS } from '../../../src/classifier/calibration.ts';
import type { MarkScale } from '../../../src/classifier/mark-scale.ts';
import type { LeafExample } from '../../../src/classifier/own-head/leaf-example.ts';
import {
  clusteredSe,
  countMarks,
  FEWEST,
  learnOwnHead,
} from '../../../src/classifier/own-head/learn-own-head.ts';
import { OWN_MARKS } from '../../../src/classifier/own-head/marks-said.ts';
import { ratioOf } from '../../../src/classifier/own-head/reports-with-own-head.ts';
import { fitLogistic } from '../../../src/classifier/session/fit-logistic.ts';
import type { OwnMark } from '../../../src/garden/own-head-record.ts';
import { type MadeUp, makePhotos } from './make-photos.ts';

/** The shipped head of these tests: silent on powder, speaking of mottled leaves. */
const SCALES: readonly MarkScale[] = [
  { mark: 'white-powder', on: false, slope: 0, most: 1 },
  { mark: 'mottled', on: true, slope: 1.2, most: 6 },
];
const learn = (photos: readonly LeafExample[], progress?: (share: number) => void): Promise<OwnMark[]> =>
  learnOwnHead(photos, fitLogistic, progress, SCALES);
/** The same photos, but what was said of powder is said of mottled leaves. */
const asMottled = (photos: readonly LeafExample[]): LeafExample[] =>
  photos.map((photo) => ({ ...photo, marks: new Map([['mottled', photo.marks.get('white-powder')!]]) }));
const mottledIn = (marks: readonly OwnMark[]): OwnMark => marks.find(({ mark }) => mark === 'mottled')!;

const powderIn = (marks: readonly OwnMark[]): OwnMark => marks.find(({ mark }) => mark === 'white-powder')!;
const learnPowder = async (made: MadeUp): Promise<OwnMark> => powderIn(await learn(makePhotos(made)));

const SEEDS = Array.from({ length: 20 }, (_, k) => k + 1);

/** How many of so many gardens made up alike come to use what they learnt. */
async function countUsed(made: Omit<MadeUp, 'seed'>, seeds: readonly number[]): Promise<number> {
  let used = 0;
  for (const seed of seeds) used += Number((await learnPowder({ ...made, seed })).end === 'used');
  return used;
}

describe('learning a garden’s look', () => {
  it('is used where the features tell the mark and the shipped head does not', async () => {
    expect(await countUsed({ plantings: 10, perPlanting: 3, signal: 1.2 }, SEEDS)).toBeGreaterThanOrEqual(18);
  });

  it('tells plantings that it has never seen', async () => {
    const all = makePhotos({ seed: 5, plantings: 40, perPlanting: 3, signal: 1.5 });
    // Twelve plantings teach, the others are held against it.
    const { head, end } = powderIn(await learn(all.slice(0, 36)));
    expect(end).toBe('used');
    const at = NETWORK_MARKS.indexOf('white-powder');
    const right = all
      .slice(36)
      .filter(
        ({ features, logits, marks }) =>
          ratioOf(head!, logits[at]!, features) > 1 === marks.get('white-powder'),
      );
    expect(right.length).toBeGreaterThanOrEqual(0.8 * (all.length - 36));
  });

  it.each([
    ['the fewest photos that are tried', { plantings: 8, perPlanting: 2 }],
    ['a season’s', { plantings: 14, perPlanting: 4 }],
    ['some years’, with more features', { plantings: 30, perPlanting: 3, features: 128 }],
  ] as const)('hardly ever takes noise for knowledge: %s', async (_, made) => {
    const seeds = Array.from({ length: 60 }, (__, k) => k + 101);
    // Of 60 gardens each; the README states what was counted over more.
    expect(await countUsed({ ...made, signal: 0 }, seeds)).toBeLessThanOrEqual(2);
  });

  it('sets the shipped head anew where that is switched off but tells the mark here', async () => {
    const made = { seed: 2, plantings: 12, perPlanting: 3, signal: 0, shipped: 2 };
    const { end, head, tested } = await learnPowder(made);
    expect(end).toBe('used');
    expect(tested!.before).toBe('camera');
    expect(head!.logit).toBeGreaterThan(0.5);
    expect(head!.weights.every((weight) => weight === 0)).toBe(true);
  });

  it('leaves to the shipped head what that reports as well, and takes over what it tells better', async () => {
    let taken = 0;
    for (const seed of SEEDS) {
      const made = { seed, plantings: 12, perPlanting: 3, signal: 0, shipped: 2 };
      taken += Number(mottledIn(await learn(asMottled(makePhotos(made)))).end === 'used');
    }
    expect(taken).toBeLessThanOrEqual(1);
    const made = { seed: 3, plantings: 16, perPlanting: 3, signal: 2, shipped: 0.5 };
    const { end, tested } = mottledIn(await learn(asMottled(makePhotos(made))));
    expect([end, tested!.before]).toEqual(['used', 'shipped']);
  });

  it('asks for enough photos of enough plantings, and says what it counted', async () => {
    const few = await learnPowder({ seed: 1, plantings: 6, perPlanting: 5, signal: 3 });
    expect(few).toEqual({
      mark: 'white-powder',
      end: 'too-few',
      present: 15,
      absent: 15,
      presentPlantings: 3,
      absentPlantings: 3,
    });
    expect(FEWEST.plantings).toBeGreaterThan(3);
    const all = makePhotos({ seed: 1, plantings: 6, perPlanting: 5, signal: 3 });
    expect(countMarks(all).map(({ mark }) => mark)).toEqual([...OWN_MARKS]);
    expect(powderIn(countMarks(all) as OwnMark[])).toMatchObject({ present: 15, absentPlantings: 3 });
  });

  it('gives few photos a weak voice, many a stronger one', async () => {
    const mostOf = async (plantings: number): Promise<number> =>
      (await learnPowder({ seed: 2, plantings, perPlanting: 3, signal: 2 })).head!.most;
    expect(await mostOf(8)).toBe(5);
    expect(await mostOf(12)).toBe(7);
    expect(await mostOf(60)).toBe(12);
  });

  it('stays with the shipped head where the photos say nothing new, and starts from it', async () => {
    // Features that never vary: nothing to learn.
    const flat = asMottled(makePhotos({ seed: 4, plantings: 10, perPlanting: 2, signal: 0 })).map(
      (photo): LeafExample => ({ ...photo, features: photo.features.map(() => 1) }),
    );
    const mottled = mottledIn(await learn(flat));
    expect(mottled.end).toBe('no-better');
    // Without features it is the shipped head set level, to the digit.
    expect(mottled.tested!.own).toBeCloseTo(mottled.tested!.shipped, 4);
  });

  it('weighs beside the camera: what the camera has said already is not said again', async () => {
    const made = { seed: 6, plantings: 12, perPlanting: 3, signal: 1.2 };
    const alone = await learnPowder(made);
    const beside = powderIn(
      await learn(
        makePhotos(made).map((photo) => ({
          ...photo,
          camera: new Map([['white-powder', photo.marks.get('white-powder') ? 6 : -6]]),
        })),
      ),
    );
    expect(beside.tested!.camera).toBeLessThan(0.1);
    expect(beside.tested!.gain).toBeLessThan(0.1 * alone.tested!.gain);
    expect(beside.end).toBe('no-better');
  });

  it('uses of two marks that take each other in only the one that gains more', async () => {
    const both = makePhotos({ seed: 7, plantings: 14, perPlanting: 3, signal: 1.5 }).map(
      (photo, i): LeafExample => ({
        ...photo,
        marks: new Map([
          ['spotted', photo.marks.get('white-powder')!],
          // The narrower one is said wrongly now and then.
          ['haloed-spots', photo.marks.get('white-powder')! !== (i % 7 === 0)],
          ['white-powder', photo.marks.get('white-powder')!],
        ]),
      }),
    );
    const ends = new Map((await learn(both)).map(({ mark, end, head }) => [mark, [end, head !== undefined]]));
    expect(ends.get('spotted')).toEqual(['used', true]);
    expect(ends.get('haloed-spots')?.[1]).toBe(false);
    expect(ends.get('white-powder')).toEqual(['used', true]);
  });

  it('teaches the same twice, and tells its progress from nothing to all', async () => {
    const photos = makePhotos({ seed: 8, plantings: 10, perPlanting: 3, signal: 1 });
    const shares: number[] = [];
    const once = await learn(photos, (share) => void shares.push(share));
    expect(await learn(photos)).toEqual(once);
    expect(shares.at(-1)).toBe(1);
    expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) - 1e-9 && share <= 1)).toBe(true);
  });

  it('gives nothing where the fitting was stopped', async () => {
    const photos = makePhotos({ seed: 8, plantings: 10, perPlanting: 3, signal: 1 });
    const stop = (): never => {
      throw new Error('stopped');
    };
    await expect(learn(photos, stop)).rejects.toThrow('stopped');
  });
});

describe('the standard error over plantings', () => {
  it('is the plain one where every planting has one photo, and larger where photos of one are alike', () => {
    const values = [1, 2, 4, 7, 1, 3];
    const mean = 3;
    const plain = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / 5 / 6);
    expect(
      clusteredSe(
        values,
        values.map((_, i) => String(i)),
      ),
    ).toBeCloseTo(plain, 12);
    const twice = [...values, ...values];
    const plantings = twice.map((_, i) => String(i % 6));
    expect(clusteredSe(twice, plantings)).toBeCloseTo(plain, 12);
    expect(clusteredSe([1, 2], ['a', 'a'])).toBe(Number.POSITIVE_INFINITY);
  });
});
