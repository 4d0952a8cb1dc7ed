import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTrial } from '../../../src/compare/side-by-side/read-trial.ts';
import { readingFromPhoto } from '../../../src/compare/side-by-side/reading-from-photo.ts';
import type { TrialReading } from '../../../src/compare/side-by-side/trial.ts';
import { makeTrial, row } from './make-trial.ts';
import r from './references/r-answers.json';

const near = (value: number, digits = 9): unknown => expect.closeTo(value, digits);

describe('reading a trial', () => {
  it("gives the plant-growth data R's differences, all three held together", () => {
    // PlantGrowth (Dobson 1983): three treatments, ten plants each, in one bed.
    const { ctrl, trt1, trt2 } = r.plantGrowth;
    const { trial, readings } = makeTrial([
      ...row('ctrl', 'b', ctrl),
      ...row('trt1', 'b', trt1),
      ...row('trt2', 'b', trt2),
    ]);
    const result = readTrial(trial, readings);
    expect(result.differences.map(({ first, second, word }) => [first, second, word])).toEqual([
      ['ctrl', 'trt1', 'open'],
      ['ctrl', 'trt2', 'open'],
      ['trt1', 'trt2', 'more'],
    ]);
    const third = r.shifts.find(({ level, first }) => level > 0.95 && first.length === 10)!;
    expect(result.differences[1]).toMatchObject({
      estimate: near(third.rankEstimate),
      interval: { low: near(third.rankLow), high: near(third.rankHigh), method: 'ranks' },
      standing: 'trial',
      counts: [10, 10],
    });
    for (const { interval } of result.differences)
      expect(interval!.reached).toBeGreaterThanOrEqual(1 - 0.1 / 3);
    expect(result.warnings).toEqual([]);
    expect(result.points).toHaveLength(30);
  });

  it('tells what Beall 1942 found of insects counted on plots', () => {
    // InsectSprays: F left several times as many insects as C and E, which hardly differ.
    const { C, E, F } = r.insectSprays;
    const { trial, readings } = makeTrial([...row('C', 'b', C), ...row('E', 'b', E), ...row('F', 'b', F)], {
      by: 'hand',
      kind: 'count',
    });
    const words = readTrial(trial, readings, { matters: 5 }).differences.map(({ word }) => word);
    expect(words).toEqual(['alike', 'more', 'more']);
  });

  it('reads peas in six blocks as blocks', () => {
    const { block, treated, value } = r.blocks;
    const { trial, readings } = makeTrial(
      value.map((v, i) => ({
        treatment: treated[i] ? 'fed' : 'not',
        bed: 'field',
        block: `${block[i]}`,
        values: [v],
      })),
      { by: 'hand', kind: 'weight' },
    );
    const [found] = readTrial({ ...trial, treatments: ['not', 'fed'] }, readings).differences;
    expect(found?.word).toBe('more');
    expect(found?.interval?.reached).toBeGreaterThanOrEqual(0.9);
  });

  it('bears one bad plant: the interval stays among the sound ones', () => {
    const first = [20, 22, 23, 25, 26, 28, 29, 31];
    const second = [40, 42, 43, 45, 46, 48, 49, 51];
    const sound = makeTrial([...row('a', 'b', first), ...row('b', 'b', second)]);
    const struck = makeTrial([...row('a', 'b', first), ...row('b', 'b', [1, ...second.slice(1)])]);
    const [plain] = readTrial(sound.trial, sound.readings).differences;
    const [bad] = readTrial(struck.trial, struck.readings).differences;
    expect(plain!.interval!.bearsWild).toBeGreaterThanOrEqual(1);
    expect(bad!.word).toBe('more');
    expect(Math.abs(bad!.estimate - plain!.estimate)).toBeLessThanOrEqual(2);
    expect(bad!.interval!.low).toBeGreaterThan(40 - 31);
  });

  it('does not let one mixed bed turn plants of whole beds into evidence', () => {
    const mixed = [...row('a', 'mixed', [10, 12, 14]), ...row('b', 'mixed', [11, 13, 15])];
    const whole = (block?: string) => [
      ...row('a', 'east', [10, 11, 12, 13], block ? { block } : {}),
      ...row('b', 'west', [50, 51, 52, 53], block ? { block } : {}),
    ];
    for (const block of [undefined, '1']) {
      const { trial, readings } = makeTrial([...mixed, ...whole(block)]);
      const { differences, warnings } = readTrial(trial, readings);
      expect(differences[0]).toMatchObject({ counts: [3, 3], estimate: 1, word: 'open' });
      expect(warnings).toContain('treatment-alone-in-block');
    }
  });

  it('takes halves of beds as pairs', () => {
    const halved = (bed: string, level: number) => [
      ...row('dug', `${bed} left`, [level, level + 1, level + 2], { block: bed }),
      ...row('not', `${bed} right`, [level + 3, level + 4, level + 5], { block: bed }),
    ];
    const three = makeTrial([...halved('x', 10), ...halved('y', 30), ...halved('z', 20)]);
    expect(readTrial(three.trial, three.readings)).toMatchObject({
      independent: 'bed',
      differences: [{ standing: 'trial', estimate: 3, counts: [3, 3], word: 'more' }],
    });
    const one = makeTrial(halved('x', 10));
    expect(readTrial(one.trial, one.readings).differences[0]!.standing).toBe('indication');
  });

  it('bears a plant of nought in a bed whose centre has a ratio', () => {
    const { trial, readings } = makeTrial([
      ...row('a', 'b1', [0, 10, 11, 12]),
      ...row('a', 'b2', [10, 11, 12, 13]),
      ...row('b', 'b3', [20, 21, 22, 23]),
      ...row('b', 'b4', [21, 22, 23, 24]),
    ]);
    expect(readTrial(trial, readings, { scale: 'ratio' }).differences[0]!.estimate).toBeGreaterThan(1.8);
  });

  it('calls one bed a side an indication, whatever the plants say', () => {
    const { trial, readings } = makeTrial([
      ...row('dug', 'east', [10, 11, 12, 13, 14]),
      ...row('not', 'west', [30, 31, 32, 33, 34]),
    ]);
    const { differences, warnings, independent } = readTrial(trial, readings);
    expect(independent).toBe('bed');
    expect(differences[0]).toMatchObject({ standing: 'indication', word: 'more', counts: [5, 5] });
    expect(warnings).toEqual(['beds-are-the-units', 'plants-in-bed-not-independent', 'one-bed-a-side']);
  });

  it('counts beds and not plants where whole beds were treated', () => {
    const bed = (treatment: string, name: string, level: number) =>
      row(treatment, name, [level - 1, level, level + 1, level, level]);
    const { trial, readings } = makeTrial([
      ...bed('dug', 'b1', 20),
      ...bed('dug', 'b2', 26),
      ...bed('dug', 'b3', 23),
      ...bed('not', 'b4', 24),
      ...bed('not', 'b5', 30),
      ...bed('not', 'b6', 27),
    ]);
    const { differences, points } = readTrial(trial, readings);
    expect(points).toHaveLength(6);
    // 15 plants a side lie 4 apart without touching by much; three beds a side cannot tell.
    expect(differences[0]).toMatchObject({ standing: 'trial', counts: [3, 3], word: 'open', estimate: 4 });
  });

  it('takes beds that change treatment by the season as pairs', () => {
    const season = (year: string, level: number, turned: boolean) => [
      ...row(turned ? 'b' : 'a', 'east', [level, level + 1], { season: year }),
      ...row(turned ? 'a' : 'b', 'west', [level + (turned ? -3 : 5), level + (turned ? -2 : 6)], {
        season: year,
      }),
    ];
    const { trial, readings } = makeTrial([
      ...season('2024', 20, false),
      ...season('2025', 35, true),
      ...season('2026', 28, false),
    ]);
    const { differences, independent, warnings } = readTrial({ ...trial, treatments: ['a', 'b'] }, readings);
    expect(independent).toBe('bed-season');
    expect(differences[0]).toMatchObject({ counts: [3, 3], interval: { method: 't' } });
    expect(differences[0]!.estimate).toBeCloseTo((5 + 3 + 5) / 3, 10);
    expect(warnings).toContain('carry-over');
    expect(warnings).toContain('few-units');
  });

  it('takes a season as a block: a good year does not count for a treatment', () => {
    const year = (season: string, level: number) => [
      ...row(
        'a',
        'bed',
        [0, 1, 2, 3].map((v) => level + v),
        { season },
      ),
      ...row(
        'b',
        'bed',
        [0.2, 1.2, 2.2, 3.2].map((v) => level + v + 4),
        { season },
      ),
    ];
    const { trial, readings } = makeTrial([...year('2025', 20), ...year('2026', 60)]);
    const [found] = readTrial(trial, readings).differences;
    expect(found).toMatchObject({ word: 'more', counts: [8, 8], estimate: near(4.2) });
    expect(found!.seasons!.map(({ season, estimate }) => [season, estimate])).toEqual([
      ['2025', near(4.2)],
      ['2026', near(4.2)],
    ]);
  });

  it('says when seasons disagree', () => {
    const year = (season: string, gain: number) => [
      ...row('a', 'bed', [20, 21, 22, 23], { season }),
      ...row(
        'b',
        'bed',
        [20, 21, 22, 23].map((v) => v + gain),
        { season },
      ),
    ];
    const { trial, readings } = makeTrial([...year('2025', 9), ...year('2026', -9)]);
    expect(readTrial(trial, readings).warnings).toContain('seasons-disagree');
  });

  it('does not take beds that kept their treatment for more beds in more seasons', () => {
    const year = (season: string) => [
      ...row('a', 'east', [20, 21, 22], { season }),
      ...row('b', 'west', [30, 31, 32], { season }),
    ];
    const { trial, readings } = makeTrial([...year('2024'), ...year('2025'), ...year('2026')]);
    const { differences, warnings } = readTrial(trial, readings);
    expect(differences[0]!.standing).toBe('indication');
    expect(warnings).toContain('same-beds-every-season');
  });

  it('takes several looks at a unit as one unit', () => {
    const units = [...row('a', 'b', [1, 2, 3, 4]), ...row('b', 'b', [3, 4, 5, 6])];
    const once = makeTrial(units);
    const often = makeTrial(units.map((unit) => ({ ...unit, values: [0, 9, unit.values[0]!] })));
    expect(readTrial(often.trial, often.readings).differences).toEqual(
      readTrial(once.trial, once.readings).differences,
    );
    expect(readTrial(often.trial, often.readings, { looks: 'total' }).points[0]!.value).toBe(10);
    expect(readTrial(often.trial, often.readings, { looks: 'change' }).points[0]!.value).toBe(1);
    // Mean over time: weeks 0, 1, 2 at 0, 9, 1 make (0 + 9) / 2 / 2 + (9 + 1) / 2 / 2.
    expect(readTrial(often.trial, often.readings, { looks: 'mean' }).points[0]!.value).toBeCloseTo(4.75, 12);
  });

  it('tells ratios on logarithms', () => {
    const { trial, readings } = makeTrial(
      [...row('a', 'b', [100, 120, 150, 180]), ...row('b', 'b', [200, 240, 300, 360])],
      { by: 'hand', kind: 'weight' },
    );
    const [found] = readTrial(trial, readings, { scale: 'ratio' }).differences;
    expect(found!.estimate).toBeCloseTo(2, 10);
    expect(found!.word).toBe('more');
    expect(readTrial(trial, readings, { scale: 'ratio', matters: 4 }).differences[0]!.word).toBe('alike');
  });

  it('warns of losses, late looks, coarse values, photo errors and too few', () => {
    const { trial, readings } = makeTrial([
      ...row('a', 'b', [5, 5, 5, 5, 5]),
      ...row('b', 'b', [5, 5, 5, 5, 5]),
    ]);
    expect(readTrial(trial, readings).warnings).toEqual(['no-spread']);
    const fewer = readings.slice(0, 8);
    expect(readTrial(trial, fewer).warnings).toEqual(['units-lost', 'lost-unevenly', 'no-spread']);
    expect(readTrial(trial, fewer).lost).toEqual(['u8', 'u9']);
    const late = readings.map(
      (reading, i): TrialReading => (i ? reading : { ...reading, date: '2026-06-20' }),
    );
    expect(readTrial(trial, late).warnings).toContain('looks-apart');
    const photos = makeTrial([...row('a', 'b', [0.1, 0.2, 0.3]), ...row('b', 'b', [0.3, 0.4, 0.5])], {
      by: 'photo',
      measure: 'chlorotic-fraction',
    });
    const withErrors = (se: number) => photos.readings.map((reading) => ({ ...reading, se }));
    expect(readTrial(photos.trial, withErrors(0.08)).warnings).toContain('photo-errors-lead');
    expect(readTrial(photos.trial, withErrors(0.02)).warnings).not.toContain('photo-errors-lead');
    const two = makeTrial([...row('a', 'b', [5, 6]), ...row('b', 'b', [7, 8])]);
    expect(readTrial(two.trial, two.readings)).toMatchObject({
      warnings: ['few-units'],
      differences: [{ interval: { method: 't', reached: 0.9 } }],
    });
    const lone = makeTrial([...row('a', 'b', [5]), ...row('b', 'b', [7])]);
    const [single] = readTrial(lone.trial, lone.readings).differences;
    expect(single).toMatchObject({ word: 'open', estimate: 2 });
    expect(single).not.toHaveProperty('interval');
  });

  it('takes readings from photos, and none where the measure was not taken', () => {
    const measures = { 'chlorotic-fraction': { value: 0.2, se: 0.03 } };
    expect(readingFromPhoto('u1', '2026-06-01', measures, 'chlorotic-fraction')).toEqual({
      unit: 'u1',
      date: '2026-06-01',
      value: 0.2,
      se: 0.03,
    });
    expect(readingFromPhoto('u1', '2026-06-01', measures, 'lost-fraction')).toBeUndefined();
    // Two leaves of a plant, photographed on one day: their mean, with the error of a mean.
    const { trial } = makeTrial([...row('a', 'b', [0, 0]), ...row('b', 'b', [0, 0])], {
      by: 'photo',
      measure: 'chlorotic-fraction',
    });
    const readings = trial.units.flatMap(({ id }, i) =>
      [0.1, 0.3].map((value) => ({ unit: id, date: '2026-06-01', value: value + i / 10, se: 0.02 })),
    );
    expect(readTrial(trial, readings).points.map(({ value }) => value)).toEqual(
      [0.2, 0.3, 0.4, 0.5].map((v) => near(v)),
    );
  });

  it('compares only treatments that met in a block', () => {
    const { trial, readings } = makeTrial([
      ...row('a', 'b1', [1, 2, 3]),
      ...row('b', 'b1', [2, 3, 4]),
      ...row('a', 'b2', [5, 6, 7]),
      ...row('c', 'b2', [6, 7, 8]),
    ]);
    const { differences, warnings } = readTrial(trial, readings);
    expect(differences.map(({ first, second }) => first + second)).toEqual(['ab', 'ac']);
    expect(warnings).toContain('alone-pair');
  });

  it('refuses what cannot be', () => {
    const { trial, readings } = makeTrial([...row('a', 'b', [1, 2]), ...row('b', 'b', [3, 4])]);
    const code = (change: () => unknown): unknown => {
      try {
        change();
      } catch (error) {
        return (error as { code?: unknown }).code;
      }
      return undefined;
    };
    const read = (more: Partial<TrialReading>) => () =>
      readTrial(trial, [{ ...readings[0]!, ...more }, ...readings.slice(1)]);
    expect(code(() => readTrial({ ...trial, treatments: ['a'] }, readings))).toBe('treatments');
    expect(code(() => readTrial({ ...trial, treatments: ['a', 'b', 'c', 'd', 'e'] }, readings))).toBe(
      'treatments',
    );
    expect(code(() => readTrial({ ...trial, treatments: ['a', 'c'] }, readings))).toBe('units');
    expect(code(() => readTrial({ ...trial, units: [] }, readings))).toBe('units');
    expect(code(() => readTrial({ ...trial, units: [...trial.units, trial.units[0]!] }, readings))).toBe(
      'units',
    );
    expect(
      code(() =>
        readTrial(
          { ...trial, units: trial.units.map((u, i) => (i ? u : { ...u, season: '2026' })) },
          readings,
        ),
      ),
    ).toBe('units');
    expect(code(read({ unit: 'nobody' }))).toBe('unknown-unit');
    expect(code(read({ date: '2026-02-30' }))).toBe('day');
    expect(code(read({ date: 'today' }))).toBe('day');
    expect(code(read({ value: -1 }))).toBe('value');
    expect(code(read({ value: Number.NaN }))).toBe('value');
    expect(code(read({ se: -1 }))).toBe('value');
    expect(code(() => readTrial({ ...trial, measure: { by: 'hand', kind: 'share' } }, readings))).toBe(
      'value',
    );
    expect(
      code(() =>
        readTrial({ ...trial, measure: { by: 'hand', kind: 'count' } }, [{ ...readings[0]!, value: 1.5 }]),
      ),
    ).toBe('value');
    expect(
      code(() => readTrial({ ...trial, measure: { by: 'photo', measure: 'lost-fraction' } }, readings)),
    ).toBe('value');
    expect(code(() => readTrial(trial, readings.slice(0, 2)))).toBe('no-readings');
    expect(code(() => readTrial(trial, readings, { matters: 0 }))).toBe('plan');
    expect(code(() => readTrial(trial, readings, { scale: 'ratio', matters: 1 }))).toBe('plan');
    expect(
      code(() => readTrial(trial, [{ ...readings[0]!, value: 0 }, ...readings.slice(1)], { scale: 'ratio' })),
    ).toBe('ratio-needs-positive');
    const apart = makeTrial([
      ...row('a', 'b1', [1], { season: '1' }),
      ...row('a', 'b2', [1], { season: '2' }),
      ...row('b', 'b3', [1], { season: '1' }),
    ]);
    expect(code(() => readTrial(apart.trial, apart.readings))).toBe('no-common-season');
  });
});

describe('properties of reading a trial', () => {
  const heights = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 3, maxLength: 9 });
  const seed = { seed: 20_261, numRuns: 150 };

  it('moves with what is added to one side, and turns with the sides', () => {
    fc.assert(
      fc.property(heights, heights, fc.integer({ min: 0, max: 300 }), (a, b, more) => {
        const plain = makeTrial([...row('a', 'x', a), ...row('b', 'x', b)]);
        const moved = makeTrial([
          ...row('a', 'x', a),
          ...row(
            'b',
            'x',
            b.map((v) => v + more),
          ),
        ]);
        const turned = { ...plain.trial, treatments: ['b', 'a'] };
        const [one] = readTrial(plain.trial, plain.readings).differences;
        const [two] = readTrial(moved.trial, moved.readings).differences;
        const [back] = readTrial(turned, plain.readings).differences;
        expect(two!.estimate).toBeCloseTo(one!.estimate + more, 8);
        expect(two!.interval!.low).toBeCloseTo(one!.interval!.low + more, 8);
        expect(back!.estimate).toBeCloseTo(-one!.estimate, 8);
        expect(back!.interval!.low).toBeCloseTo(-one!.interval!.high, 8);
        expect(one!.interval!.low).toBeLessThanOrEqual(one!.estimate);
        expect(one!.interval!.high).toBeGreaterThanOrEqual(one!.estimate);
      }),
      seed,
    );
  });

  it('stays among the sound however wild so many values are as it says', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 100, max: 200 }), { minLength: 6, maxLength: 14 }),
        fc.array(fc.integer({ min: 100, max: 200 }), { minLength: 6, maxLength: 14 }),
        fc.array(fc.constantFrom(0, 1e6), { minLength: 6, maxLength: 6 }),
        (a, b, wild) => {
          const calm = makeTrial([...row('a', 'x', a), ...row('b', 'x', b)]);
          const borne = readTrial(calm.trial, calm.readings).differences[0]!.interval!.bearsWild;
          const struck = b.map((v, i) => (i < Math.min(borne, b.length) ? wild[i % 6]! : v));
          const { trial, readings } = makeTrial([...row('a', 'x', a), ...row('b', 'x', struck)]);
          const { low, high } = readTrial(trial, readings).differences[0]!.interval!;
          expect(low).toBeGreaterThanOrEqual(-100);
          expect(high).toBeLessThanOrEqual(100);
        },
      ),
      seed,
    );
  });

  it('does not hang on the order of readings and units', () => {
    fc.assert(
      fc.property(heights, heights, (a, b) => {
        const { trial, readings } = makeTrial([...row('a', 'x', a), ...row('b', 'x', b)]);
        const other = { ...trial, units: [...trial.units].reverse() };
        expect(readTrial(other, [...readings].reverse()).differences).toEqual(
          readTrial(trial, readings).differences,
        );
      }),
      seed,
    );
  });
});
