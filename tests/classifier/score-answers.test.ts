import { describe, expect, it } from 'vitest';
import { chanceOf, fitScale, lossOf, type Said } from '../../training/signs-network/score-answers.ts';

/** Answers whose log odds are known: `z` evenly spread, the share that is there as `slope` and `bias` say (no luck in it). */
function answersWith(slope: number, bias: number, offset = 0): Said[] {
  const said: Said[] = [];
  for (let z = -4; z <= 4; z += 0.25) {
    const there = Math.round(200 * chanceOf(slope * z + bias + offset));
    for (let k = 0; k < 200; k++) said.push({ z, there: k < there, offset });
  }
  return said;
}

describe('temperature and level', () => {
  it('finds the slope that the answers were made with', () => {
    for (const slope of [0.4, 1, 1.7]) {
      expect(fitScale(answersWith(slope, 0)).slope).toBeCloseTo(slope, 1);
    }
  });

  it('leaves nothing to add where another reporter has said it all', () => {
    const said = answersWith(1, 0).map((one) => ({ ...one, offset: one.z }));
    const { slope, bias } = fitScale(said);
    expect(Math.abs(slope)).toBeLessThan(0.05);
    expect(Math.abs(bias)).toBeLessThan(0.05);
  });

  it('loses least at the scale that it finds', () => {
    const said = answersWith(1.2, 0.4);
    const best = fitScale(said);
    for (const [ds, db] of [
      [0.3, 0],
      [-0.3, 0],
      [0, 0.3],
      [0, -0.3],
    ] as const) {
      expect(lossOf(said, { slope: best.slope + ds, bias: best.bias + db })).toBeGreaterThan(
        lossOf(said, best),
      );
    }
  });
});
