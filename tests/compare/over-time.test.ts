import { describe, expect, it } from 'vitest';
import { frameOfLeaf } from '../../src/compare/over-time/align-leaves.ts';
import { compareReadings, wordForLeaf } from '../../src/compare/over-time/compare-readings.ts';
import { fitTrend } from '../../src/compare/over-time/fit-trend.ts';
import { asOneOfItsPlant } from '../../src/compare/over-time/spread-among-leaves.ts';
import { seededNormals } from '../seeded-normals.ts';

describe('one measure at two looks', () => {
  it('carries both errors and says better only when that is sure', () => {
    const [change] = compareReadings(
      { 'chlorotic-fraction': { value: 0.6, se: 0.03 } },
      { 'chlorotic-fraction': { value: 0.3, se: 0.04 } },
      { sameLeaf: true },
    );
    expect(change!.change.value).toBeCloseTo(-0.3);
    expect(change!.change.se).toBeCloseTo(0.05);
    expect(change!.word).toBe('better');
  });

  it('leaves a small change open and calls a clear one the other way worse', () => {
    const at = (value: number) => ({ 'spot-fraction': { value, se: 0.02 } });
    expect(compareReadings(at(0.1), at(0.08), { sameLeaf: true })[0]!.word).toBe('no-clear-change');
    expect(compareReadings(at(0.1), at(0.2), { sameLeaf: true })[0]!.word).toBe('worse');
  });

  it('is surer of the same leaf than of another one', () => {
    const at = (value: number) => ({ 'chlorotic-fraction': { value, se: 0.02 } });
    const se = (sameLeaf: boolean): number => compareReadings(at(0.5), at(0.4), { sameLeaf })[0]!.change.se;
    expect(se(false)).toBeGreaterThan(se(true) * 1.5);
  });

  it('mends towards the normal leaf of a golden variety, not towards green', () => {
    const at = (value: number) => ({ hue: { value, se: 1 } });
    const normal = at(100);
    expect(compareReadings(at(90), at(99), { sameLeaf: true, normal })[0]!.word).toBe('better');
    expect(compareReadings(at(100), at(120), { sameLeaf: true, normal })[0]!.word).toBe('worse');
  });

  it('says nothing good or bad of lightness and nothing at all of the photo itself', () => {
    const changes = compareReadings(
      { lightness: { value: 40, se: 1 }, sharpness: { value: 0.5, se: 0.1 } },
      { lightness: { value: 50, se: 1 }, sharpness: { value: 0.9, se: 0.1 } },
    );
    expect(changes.map(({ measure, word }) => [measure, word])).toEqual([['lightness', undefined]]);
  });

  it('calls a plant that stays as it is better as often as it says it does', () => {
    const draw = seededNormals(7);
    const looks = 4000;
    let better = 0;
    let whole = 0;
    const ids = ['chlorotic-fraction', 'spot-fraction', 'mottle', 'evenness', 'necrotic-fraction'] as const;
    for (let i = 0; i < looks; i++) {
      const read = () => Object.fromEntries(ids.map((id) => [id, { value: 0.3 + 0.05 * draw(), se: 0.05 }]));
      const changes = compareReadings(read(), read(), { sameLeaf: true });
      if (changes[0]!.word === 'better') better++;
      if (wordForLeaf(changes) === 'better') whole++;
    }
    // 5 in 100 claimed; four standard errors of a binomial share over 4,000 draws are 1.4 in 100.
    expect(Math.abs(better / looks - 0.05)).toBeLessThan(0.014);
    expect(whole / looks).toBeLessThan(0.05 + 0.014);
  });
});

describe('one word for the leaf', () => {
  const GREENED = [
    {
      'chlorotic-fraction': { value: 0.99, se: 0.115 },
      'dark-green-index': { value: 0.3, se: 0.02 },
      'necrotic-fraction': { value: 0, se: 0.004 },
      'spot-count': { value: 3, se: 1 },
      'stipple-density': { value: 0, se: 0.01 },
    },
    {
      'chlorotic-fraction': { value: 0.09, se: 0.115 },
      'dark-green-index': { value: 0.55, se: 0.02 },
      'necrotic-fraction': { value: 0.01, se: 0.004 },
      'spot-count': { value: 13, se: 1 },
      'stipple-density': { value: 0.1, se: 0.01 },
    },
  ] as const;

  it.each([true, false])(
    'a leaf that greens is better although a few spots came (same leaf: %s)',
    (sameLeaf) => {
      const changes = compareReadings(...GREENED, { sameLeaf });
      expect(wordForLeaf(changes)).toBe('better');
      const wordOf = (id: string) => changes.find(({ measure }) => measure === id)?.word;
      // Sure, and too little to mean anything.
      expect(wordOf('stipple-density')).toBe('no-clear-change');
      expect(wordOf('necrotic-fraction')).toBe('no-clear-change');
    },
  );

  it('goes the other way just so, and is open where both ways are large', () => {
    const [yellow, green] = GREENED;
    expect(wordForLeaf(compareReadings(green, yellow, { sameLeaf: true }))).toBe('worse');
    const eaten = { ...green, 'lost-fraction': { value: 0.6, se: 0.02 } };
    const whole = { ...yellow, 'lost-fraction': { value: 0, se: 0.02 } };
    expect(wordForLeaf(compareReadings(whole, eaten, { sameLeaf: true }))).toBe('no-clear-change');
  });

  it.each([true, false])(
    'and its give or take is that of the line through the same two leaves (%s)',
    (sameLeaf) => {
      const id = 'chlorotic-fraction';
      const [first, later] = GREENED.map((measures) => measures[id]);
      const { change } = compareReadings(...GREENED, { sameLeaf }).find(({ measure }) => measure === id)!;
      const line = fitTrend([
        { date: '2026-06-01', ...asOneOfItsPlant(id, first!, sameLeaf) },
        { date: '2026-06-08', ...asOneOfItsPlant(id, later!, sameLeaf) },
      ])!;
      expect(line.perWeek.value).toBeCloseTo(change.value, 9);
      expect(line.perWeek.se).toBeCloseTo(change.se, 9);
      // A leaf that is yellow all over cannot differ from its neighbours by a third.
      expect(change.se).toBeLessThan(0.2);
    },
  );
});

describe('a trend over several looks', () => {
  it('agrees with a worked weighted line', () => {
    // numpy.polyfit([0, 1, 2, 4], [0.5, 0.42, 0.37, 0.2], 1, w=1/se, cov='unscaled'), numpy 2.4.6
    const trend = fitTrend([
      { date: '2026-05-01', value: 0.5, se: 0.02 },
      { date: '2026-05-08', value: 0.42, se: 0.03 },
      { date: '2026-05-15', value: 0.37, se: 0.02 },
      { date: '2026-05-29', value: 0.2, se: 0.04 },
    ])!;
    expect(trend.perWeek.value).toBeCloseTo(-0.0712755102, 9);
    expect(trend.perWeek.se).toBeCloseTo(0.0099488488, 9);
    expect(trend.from).toBeCloseTo(0.5018367347, 9);
    expect(trend.to).toBeCloseTo(0.2167346939, 9);
  });

  it('takes points that stray for a wider error, and one day for no trend', () => {
    const wild = [0.1, 0.9, 0.2, 0.8].map((value, i) => ({ date: `2026-06-0${i + 1}`, value, se: 0.01 }));
    expect(fitTrend(wild)!.perWeek.se).toBeGreaterThan(1);
    expect(fitTrend(wild.slice(0, 1))).toBeUndefined();
    expect(fitTrend([])).toBeUndefined();
  });
});

describe('two leaves side by side', () => {
  const ellipse = (
    cx: number,
    cy: number,
    long: number,
    short: number,
    turn: number,
    width: number,
    height: number,
  ) =>
    Array.from({ length: 180 }, (_, i) => {
      const [x, y] = [long * Math.cos((i * Math.PI) / 90), short * Math.sin((i * Math.PI) / 90)];
      return {
        x: (cx + x * Math.cos(turn) - y * Math.sin(turn)) / width,
        y: (cy + x * Math.sin(turn) + y * Math.cos(turn)) / height,
      };
    });

  it.each([0.2, 1.2, -0.9, 2.6])('stand upright at the same length, whatever the turn (%f)', (turn) => {
    const frame = frameOfLeaf(ellipse(400, 300, 200, 80, turn, 1000, 700), 1000, 700);
    expect(frame.centre.x).toBeCloseTo(400, 0);
    expect(frame.centre.y).toBeCloseTo(300, 0);
    expect(frame.side).toBeCloseTo(400 * 1.24, 0);
    // Turning the long axis by `turn` more must bring it upright: an odd number of quarter turns.
    expect(Math.abs(Math.cos(turn + frame.turn))).toBeLessThan(1e-2);
    expect(Math.abs(frame.turn)).toBeLessThanOrEqual(Math.PI / 2);
  });

  it.each([-2.8, -1.6, -0.4, 0.7, 1.5, 2.9])(
    'have the more pointed end on top, whatever the turn (%f)',
    (turn) => {
      // An egg: its pointed end lies at the far end of its long axis before it is turned.
      const egg = Array.from({ length: 180 }, (_, i) => {
        const angle = (i * Math.PI) / 90;
        const [x, y] = [200 * Math.cos(angle), 90 * Math.sin(angle) * (1 - 0.5 * Math.cos(angle))];
        return {
          x: (500 + x * Math.cos(turn) - y * Math.sin(turn)) / 1000,
          y: (350 + x * Math.sin(turn) + y * Math.cos(turn)) / 700,
        };
      });
      for (const outline of [egg, egg.slice().reverse()])
        expect(Math.sin(turn + frameOfLeaf(outline, 1000, 700).turn)).toBeLessThan(-0.99);
    },
  );

  it('needs an outline', () => {
    expect(() => frameOfLeaf([{ x: 0, y: 0 }], 10, 10)).toThrow(RangeError);
  });
});
