import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dealFolds, FOLDS } from '../../../src/classifier/own-head/deal-folds.ts';

const photos = fc.array(fc.tuple(fc.integer({ min: 0, max: 14 }).map(String), fc.boolean()), {
  minLength: 1,
  maxLength: 60,
});

describe('keeping plantings aside', () => {
  it('never parts the photos of one planting', () => {
    fc.assert(
      fc.property(photos, (all) => {
        const plantings = all.map(([planting]) => planting);
        const { fold, folds } = dealFolds(
          plantings,
          all.map(([, label]) => label),
        );
        expect(fold.length).toBe(all.length);
        const foldOf = new Map<string, number>();
        plantings.forEach((planting, i) => {
          expect(fold[i]).toBe(foldOf.get(planting) ?? fold[i]);
          foldOf.set(planting, fold[i]!);
        });
        expect(fold.every((one) => one >= 0 && one < folds)).toBe(true);
        expect(folds).toBeLessThanOrEqual(FOLDS);
      }),
    );
  });

  it('leaves plantings with the mark and without it in what is learnt from, whichever part is aside', () => {
    const plantings = ['a', 'a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];
    const labels = [true, false, true, true, true, false, false, false, false];
    const { fold, folds } = dealFolds(plantings, labels);
    expect(folds).toBe(4);
    for (let part = 0; part < folds; part++) {
      const learnt = labels.filter((_, i) => fold[i] !== part);
      expect(learnt).toContain(true);
      expect(learnt).toContain(false);
      expect(fold).toContain(part);
    }
  });

  it('deals the same photos the same way, whatever order they come in', () => {
    const plantings = ['a', 'b', 'c', 'd', 'd', 'e'];
    const labels = [true, true, false, false, false, true];
    const back = dealFolds([...plantings].reverse(), [...labels].reverse());
    expect([...back.fold].reverse()).toEqual([...dealFolds(plantings, labels).fold]);
  });
});
