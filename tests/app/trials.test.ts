import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventTrials } from '../../src/app/demo/invent-trials.ts';
import { placeDots, ticksOver } from '../../src/app/places/Book/Trial/place-dots.ts';
import { refreshGarden } from '../../src/app/state/garden.ts';
import { store } from '../../src/app/state/kept.ts';
import { layOutSeason, nextSeason, planNumbers, warningsOf } from '../../src/app/state/plan-trial.ts';
import {
  bedsToWalk,
  countedReadings,
  measuredOn,
  mixesEyeAndCamera,
  readKeptTrial,
  stateOf,
} from '../../src/app/state/read-kept-trial.ts';
import { hashOf, readRoute } from '../../src/app/state/route.ts';
import {
  bringBack,
  newTrial,
  putNumbers,
  setFields,
  setPlan,
  strikeOut,
  touchTrial,
  trialOn,
} from '../../src/app/state/trials.ts';
import { nameField, sayValue } from '../../src/app/words/backup.ts';
import {
  digitsFor,
  figure,
  isSettled,
  measureWords,
  sayCounts,
  sayDifference,
  sayDoubts,
  sayPlan,
  sayRange,
  saySeason,
  sayTooFew,
  typedOf,
} from '../../src/app/words/say-trial.ts';
import { TRIAL_WORDS } from '../../src/app/words/trial.ts';
import { METRIC, units } from '../../src/app/words/units.ts';
import type { TreatmentDifference } from '../../src/compare/side-by-side/read-trial.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import type { TrialRecord } from '../../src/garden/trial-record.ts';
import { record } from '../garden/small-garden.ts';

const NOW = '2026-05-01T08:00:00.000Z';
const TODAY = '2026-05-01';
const bed = { id: 'long', name: 'Long bed' };
const planned = (more: Partial<TrialRecord> = {}): TrialRecord => ({
  ...newTrial('t', NOW),
  ways: [
    { id: 'A', name: 'dug' },
    { id: 'B', name: 'not dug' },
  ],
  ...more,
});
const laidOut = (more: Partial<TrialRecord> = {}, places = 12): TrialRecord => {
  const trial = planned(more);
  return { ...trial, layouts: [layOutSeason(trial, [{ bed, places }], 3, TODAY, 'north')] };
};
/** Every unit measured on one day: by way, counted within it. */
const measuredAs = (
  trial: TrialRecord,
  numberOf: (way: string, at: number) => number,
  date = '2026-06-01',
) => {
  const met: Record<string, number> = {};
  return trial.layouts.at(-1)!.units.reduce((found, { id, way }) => {
    const at = met[way] ?? 0;
    met[way] = at + 1;
    return putNumbers(found, id, date, [numberOf(way, at)]);
  }, trial);
};

describe('how many it takes', () => {
  // The table of `compare/side-by-side/README.md`, itself checked against R's power.t.test in `plan-trial.test.ts`.
  it.each([
    ['hard-to-tell-apart', 0.1, 8],
    ['a-little-uneven', 0.2, 9],
    ['uneven', 0.3, 11],
    ['very-uneven', 0.5, 12],
  ])(
    '%s plants, a difference of %f of what is usual: %i of each way at random',
    (spreadWord, share, units) => {
      const numbers = planNumbers(
        planned({ matters: share * 30, plan: { typical: 30, spreadWord, how: 'random' } }),
      );
      expect(numbers).toMatchObject({ needed: units, each: units, chance: 0.8 });
    },
  );
  it('asks for what is missing, one after the other, and takes the middle of the grower’s range for usual', () => {
    expect(planNumbers(planned())).toEqual({ missing: 'matters' });
    expect(planNumbers(planned({ matters: 4 }))).toEqual({ missing: 'typical' });
    expect(planNumbers(planned({ matters: 4, plan: { typical: 30 } }))).toEqual({ missing: 'spread' });
    expect(planNumbers(planned({ matters: 4, plan: { smallest: 30, largest: 20 } }))).toEqual({
      missing: 'spread',
    });
    // Range 10 of ten plants: 10 / 3.078 is 3.25, of 25 a spread of 0.13 (d₂ of the control-chart tables).
    const own = planNumbers(planned({ matters: 5, plan: { smallest: 20, largest: 30, how: 'random' } }));
    const told = planNumbers(
      planned({ matters: 5, plan: { typical: 25, smallest: 21.8, largest: 31.8, how: 'random' } }),
    );
    expect(own).toMatchObject({ needed: 7 });
    expect('needed' in told && told.needed).toBeLessThanOrEqual(7);
  });
  it('never takes fewer beds because more plants stand in them than beds differ by themselves', () => {
    const beds = (perBed: number) =>
      planNumbers(
        planned({ unit: 'bed', matters: 6, plan: { typical: 30, spreadWord: 'uneven', perBed } }),
      ) as { needed: number };
    expect(beds(1).needed).toBeGreaterThan(beds(50).needed);
    expect(beds(50).needed).toBe(9);
  });
  it('is said in words that follow the number', () => {
    const words = measureWords({ by: 'hand', kind: 'height' });
    const say = (more: Partial<TrialRecord>): string => {
      const trial = planned({ matters: 6, ...more });
      return sayPlan(trial, planNumbers(trial), words).join(' ');
    };
    expect(say({ plan: { typical: 30, spreadWord: 'a-little-uneven', how: 'random' } })).toBe(
      'It takes about 9 plants of each way, 18 in all. Then a difference of 6 cm shows in 8 of 10 such trials, if it is there.',
    );
    const few = say({ plan: { typical: 30, spreadWord: 'a-little-uneven', how: 'random', each: 4 } });
    expect(few).toMatch(
      /With 4 of each it would show in about 4 in 10 such trials; what shows in 8 of 10 such trials is a difference of \d+(\.\d)? cm or more\./,
    );
    expect(say({ plan: { typical: 30, spreadWord: 'a-little-uneven', each: 1 } })).toContain(
      'With one of each nothing can be said of chance',
    );
    expect(say({ matters: 0.3, plan: { typical: 30, spreadWord: 'very-uneven' } })).toContain(
      'Even 100 plants of each way would not do.',
    );
  });
});

describe('laying out a season', () => {
  it('gives every way as often, in names that no path is split by, and says the same for the same seed', () => {
    const trial = laidOut();
    const [layout] = trial.layouts;
    expect(layout).toMatchObject({
      id: '2026',
      how: 'blocks',
      seed: 3,
      beds: [{ bedId: 'long', places: 12 }],
    });
    expect(layout!.units.filter(({ way }) => way === 'A')).toHaveLength(6);
    expect(layout!.units.every(({ id, block }) => !/[/ ]/.test(`${id}${block}`))).toBe(true);
    expect(laidOut().layouts).toEqual(trial.layouts);
    expect(repairRecord(structuredClone(trial))).toEqual(trial);
  });
  it('names a second season of one year, and both are read together', () => {
    const first = laidOut();
    expect(nextSeason(first, '2026-08-01', 'north')).toBe('2026-2');
    expect(nextSeason(first, '2027-04-01', 'north')).toBe('2027');
    const second = layOutSeason(first, [{ bed, places: 12 }], 9, '2027-04-01', 'north');
    const both = measuredAs(
      {
        ...measuredAs(first, (way, at) => (way === 'A' ? 20 : 25) + at),
        layouts: [...first.layouts, second],
      },
      (way, at) => (way === 'A' ? 30 : 34) + at,
      '2027-06-01',
    );
    const read = readKeptTrial(both);
    expect('result' in read && read.result.differences[0]).toMatchObject({
      word: 'more',
      counts: [12, 12],
      seasons: [{ season: '2026' }, { season: '2027' }],
    });
  });
  it('names a season of the south by both its years, and a second sowing after New Year as such', () => {
    const trial = planned();
    const layout = layOutSeason(trial, [{ bed, places: 12 }], 3, '2025-11-20', 'south');
    expect(layout.id).toBe('2025–26');
    expect(layout.units.every(({ id, block }) => !/[/ ]/.test(`${id}${block}`))).toBe(true);
    const first = { ...trial, layouts: [layout] };
    expect(repairRecord(structuredClone(first))).toEqual(first);
    expect(nextSeason(first, '2026-01-10', 'south')).toBe('2025–26-2');
    expect(nextSeason(first, '2026-08-20', 'south')).toBe('2026–27');
    expect(TRIAL_WORDS.season('2025–26')).toBe('2025–26');
    expect(TRIAL_WORDS.season('2025–26-2')).toBe('2025–26, sowing 2');
  });
  it('is one season over New Year where no winter comes: the year is its name, and no more', () => {
    const trial = planned();
    const layout = layOutSeason(trial, [{ bed, places: 12 }], 3, '2025-11-20', 'tropics');
    expect(layout.id).toBe('2025');
    const first = { ...trial, layouts: [layout] };
    const measured = measuredAs(first, (way, at) => (way === 'A' ? 20 : 25) + at, '2026-01-10');
    const read = readKeptTrial(measured);
    const difference = 'result' in read ? read.result.differences[0] : undefined;
    expect(difference).toMatchObject({ counts: [6, 6] });
    expect(difference).not.toHaveProperty('seasons');
  });
  it('warns of one bed a side, and walks the beds in the order of the garden', () => {
    const trial = planned({ unit: 'bed', plan: { perBed: 3 } });
    const beds = ['a', 'b'].map((id) => ({ bed: { id, name: id }, places: 1 }));
    const layout = layOutSeason(trial, beds, 1, TODAY, 'north');
    expect(layout.units).toHaveLength(6);
    expect(warningsOf({ ...trial, layouts: [layout] })).toContain('one-bed-a-side');
    const walk = [record('bed', 'b', { name: 'Renamed' }), record('bed', 'x', { name: 'x' })];
    expect(bedsToWalk(layout, walk).map(({ name }) => name)).toEqual(['Renamed', 'a']);
  });
});

describe('what was measured', () => {
  it('leaves out the lost, the unmeasured, what no unit has and what no measure can be', () => {
    const trial = measuredAs(laidOut(), (way, at) => (way === 'A' ? 20 : 25) + at);
    const [first, second] = trial.layouts[0]!.units;
    const date = '2026-06-01';
    const spoilt: TrialRecord = {
      ...strikeOut(trial, first!.id, date, 'slugs'),
      readings: [
        ...trial.readings,
        { id: 'w', date, unitId: second!.id, photoId: 'ph' },
        { id: 'x', date, unitId: 'gone', value: 3 },
        { id: 'y', date, unitId: second!.id, value: -3 },
      ],
    };
    expect(countedReadings(spoilt)).toHaveLength(11);
    const read = readKeptTrial(spoilt);
    expect('result' in read && read.result.lost).toEqual([first!.id]);
    expect(measuredOn(spoilt, spoilt.layouts[0]!, date)).toEqual([11, 11]);
    expect(countedReadings(bringBack(spoilt, first!.id))).toHaveLength(12);
  });
  it('takes what is typed again for the same day in the place of it, several numbers side by side', () => {
    const trial = laidOut();
    const { id } = trial.layouts[0]!.units[0]!;
    const twice = putNumbers(putNumbers(trial, id, TODAY, [20, 24]), id, TODAY, [21]);
    expect(twice.readings).toEqual([{ id: `${TODAY} ${id}`, date: TODAY, unitId: id, value: 21 }]);
    expect(putNumbers(trial, id, TODAY, [20, 24]).readings.map(({ id: one }) => one)).toEqual([
      `${TODAY} ${id}`,
      `${TODAY} ${id} 2`,
    ]);
    expect(putNumbers(twice, id, TODAY, []).readings).toEqual([]);
    const photo = { id: 'p', date: TODAY, unitId: id, photoId: 'ph', value: 0.2 };
    const withPhoto = {
      ...twice,
      measure: { by: 'photo', measure: 'chlorotic-fraction' },
      readings: [photo],
    } as TrialRecord;
    const both = putNumbers(withPhoto, id, TODAY, [0.3]);
    expect(both.readings).toHaveLength(2);
    expect([mixesEyeAndCamera(withPhoto), mixesEyeAndCamera(both)]).toEqual([false, true]);
  });
  it('calls what has no number yet not measured, and lost only what was struck out', () => {
    const trial = measuredAs(laidOut(), (way, at) => (way === 'A' ? 20 : 25) + at);
    const [first, second] = trial.layouts[0]!.units;
    const lost = strikeOut(trial, first!.id, '2026-06-01', 'slugs');
    const warnings = ['units-lost', 'lost-unevenly', 'looks-apart', 'few-units'] as const;
    const { warnings: plain } = TRIAL_WORDS;
    // All that stand are measured: the plain words hold.
    expect(sayDoubts(lost, warnings)).toEqual(warnings.map((one) => plain[one]));
    const halfWay = putNumbers(lost, second!.id, '2026-06-20', [30]);
    expect(sayDoubts(halfWay, warnings)).toEqual([
      '1 was lost. It is left out, and so is what then stands alone in its set.',
      'Half-way: 1 of 11 are measured on Saturday 20 June. The others count as they were measured before, and have grown since.',
      plain['few-units'],
    ]);
    const fresh = putNumbers(laidOut(), second!.id, '2026-06-01', [30]);
    expect(sayDoubts(fresh, ['units-lost'])).toEqual(['11 are not measured yet, and left out until then.']);
    const ended = { ...halfWay, ended: { date: '2026-06-21', as: 'read' as const } };
    expect(sayDoubts(ended, ['units-lost'])).toEqual([plain['units-lost']]);
  });
  it('says why nothing can be read', () => {
    expect(readKeptTrial(laidOut())).toEqual({ trouble: 'no-readings' });
    expect(readKeptTrial(laidOut({ measure: { by: 'photo', measure: 'taste' } }))).toEqual({
      trouble: 'no-measure',
    });
    const nought = measuredAs(laidOut({ scale: 'ratio' }), (way) => (way === 'A' ? 0 : 3));
    expect(readKeptTrial(nought)).toEqual({ trouble: 'ratio-needs-positive' });
  });
});

describe('what came out, in words', () => {
  const difference = (more: Partial<TreatmentDifference> = {}): TreatmentDifference => ({
    first: 'A',
    second: 'B',
    estimate: 4.2,
    interval: { low: 1.3, high: 7.1, method: 'ranks', reached: 0.94, bearsWild: 1 },
    word: 'more',
    standing: 'trial',
    counts: [6, 6],
    ...more,
  });
  const ends = (low: number, high: number) => ({ ...difference().interval!, low, high });
  const height = { by: 'hand', kind: 'height' } as const;
  const say = (more: Partial<TreatmentDifference>, scale: 'difference' | 'ratio' = 'difference') =>
    sayDifference(planned({ matters: 4 }), difference(more), height, scale);

  it('names the finding, its size and its range', () => {
    expect(say({})).toEqual({
      head: 'Taller with “not dug”',
      says: 'With “not dug” about 4 cm taller than with “dug”, give or take 3: 1 to 7 cm taller. A range found in this way holds the truth in at least 9 of 10 such trials. It may still be less than what matters to you: 4 cm.',
    });
    expect(say({ word: 'less', estimate: -4.2, interval: ends(-7.1, -1.3) }).says).toMatch(
      /^With “not dug” about 4 cm shorter than with “dug”, give or take 3: 1 to 7 cm shorter\./,
    );
  });
  it('says of an open one how far it may go either way, of one alike what does not matter, of a lone one no range', () => {
    expect(say({ word: 'open', interval: ends(-2, 9.4) })).toMatchObject({
      head: '“dug” or “not dug”: it cannot be told yet',
      says: expect.stringMatching(
        /^With “not dug” it may be anything from 2 cm shorter to 9 cm taller than with “dug”\./,
      ),
    });
    expect(say({ word: 'alike', estimate: 0.3, interval: ends(-1.5, 2.2) })).toMatchObject({
      head: 'Between “dug” and “not dug” too little to matter',
      says: expect.stringMatching(
        /^With “not dug” it is anything from 1\.5 cm shorter to 2\.2 cm taller than with “dug”, less than the 4 cm that matter to you\./,
      ),
    });
    const { interval: _interval, ...lone } = difference({ word: 'open' });
    expect(sayDifference(planned(), lone, height, 'difference').says).toBe(
      'With “not dug” about 4 cm taller than with “dug”.',
    );
  });
  it('never promises 9 in 10 where one bed stands on a side', () => {
    expect(say({ standing: 'indication' }).says).not.toContain('9 of 10');
  });
  it('leaves “give or take” out where it would not give the ends of the range', () => {
    expect(say({ estimate: 2, interval: ends(1, 9) }).says).toMatch(
      /^With “not dug” about 2 cm taller than with “dug”: 1 to 9 cm taller\./,
    );
    // Rounded, "3, give or take 2" and "1 to 6" would contradict each other.
    expect(say({ estimate: 3.3, interval: ends(1.3, 5.6) }).says).toMatch(
      /^With “not dug” about 3 cm taller than with “dug”: 1 to 6 cm taller\./,
    );
  });
  it('says ratios as times', () => {
    expect(say({ estimate: 1.31, interval: ends(1.1, 1.52) }, 'ratio').says).toMatch(
      /^With “not dug” about 1\.31 times as much as with “dug”: 1\.1 to 1\.52 times\./,
    );
    expect(saySeason({ estimate: 1.3 }, height, 'ratio')).toBe('1.3 times as much');
  });
  it('says what was counted', () => {
    expect(sayCounts(planned(), difference(), false)).toBe('Counted: 6 plants of each.');
    expect(sayCounts(planned(), difference({ counts: [5, 6] }), false)).toBe(
      'Counted: 5 plants of “dug”, 6 of “not dug”.',
    );
    expect(sayCounts(planned(), difference({ counts: [2, 2] }), true)).toBe('Counted: 2 beds of each.');
  });
  it('says with the finding that it may be too little to matter, and among the doubts how far it is from enough', () => {
    expect(say({ estimate: 3.3, interval: ends(1.3, 5.6) }).head).toBe(
      'Taller with “not dug”, perhaps too little to matter to you (you said 4 cm)',
    );
    expect(say({ word: 'less', estimate: -3.3, interval: ends(-5.6, -1.3) }).head).toContain(
      'perhaps too little',
    );
    const sure = say({ estimate: 6, interval: ends(4.5, 8) });
    expect(`${sure.head} ${sure.says}`).not.toMatch(/too little|less than what matters/);
    expect(
      sayDifference(
        planned({ matters: 1.5 }),
        difference({ estimate: 1.2, interval: ends(1.1, 1.6) }),
        height,
        'ratio',
      ).head,
    ).toContain('(you said 1.5 times as much)');
    const settled = (more: Partial<TreatmentDifference>) =>
      isSettled(planned({ matters: 4 }), difference(more), height, 'difference');
    expect(settled({ estimate: 6, interval: ends(4.5, 8) })).toBe(true);
    expect(settled({ estimate: 6, interval: ends(3.5, 8) })).toBe(false);
    expect(settled({ word: 'open', interval: ends(-2, 8) })).toBe(false);
    expect(settled({ word: 'alike', interval: ends(-2, 3) })).toBe(true);
    const numbers = { chance: 0.8, needed: 14, each: 8, chanceAtEach: 0.5, smallest: 5, ranksReach: true };
    const few = (counts: number[], ofBeds = false) =>
      sayTooFew(planned({ matters: 4 }), counts, ofBeds, numbers, measureWords(height));
    expect(few([7, 8])).toEqual([
      '7 plants of a way were counted, about half of the 14 it takes to see a difference of 4 cm in 8 of 10 such trials.',
    ]);
    expect(few([1, 2], true)[0]).toMatch(/^1 bed of a way was counted, less than a third of the 14/);
    expect(few([13, 14])[0]).toContain('not quite all of the 14');
    expect(few([14, 20])).toEqual([]);
    expect(
      sayTooFew(planned({ matters: 4 }), [2, 2], false, { missing: 'spread' }, measureWords(height)),
    ).toEqual([]);
  });
  it('says of what a count, a share or a score is, and which way did better by what the grower wants', () => {
    const of = (kind: 'share' | 'height', better?: 'more' | 'less') =>
      sayDifference(
        planned({ ofWhat: 'leaf eaten into holes', ...(better ? { better } : {}) }),
        difference({ estimate: 0.2, interval: ends(0.1, 0.3) }),
        { by: 'hand', kind },
        'difference',
      );
    expect(of('share').head).toBe('Leaf eaten into holes: more with “not dug”');
    expect(of('share').says).not.toContain('better');
    expect(of('share', 'less').says).toMatch(/ You said less is better: so “dug” did better\.$/);
    expect(of('share', 'more').says).toMatch(/ You said more is better: so “not dug” did better\.$/);
    // A height is one of itself, whatever was said while something else was measured.
    expect(of('height').head).toMatch(/^Taller with/);
    expect(measureWords({ by: 'hand', kind: 'score' }, { ofWhat: 'taste' }).name).toBe('taste');
    const open = difference({ word: 'open', interval: ends(-0.1, 0.3) });
    expect(
      sayDifference(planned({ better: 'less' }), open, { by: 'hand', kind: 'share' }, 'difference').says,
    ).not.toContain('better');
  });
  it('speaks of shares in parts of a hundred, and types them so', () => {
    const words = measureWords({ by: 'hand', kind: 'share' });
    expect(sayRange(-0.02, 0.091, words, 0)).toBe('from 2 of 100 less to 9 of 100 more');
    expect(typedOf(0.235, words)).toBe('23.5');
  });
  it('takes and says heights in inches where these are chosen; what is kept stays in centimetres', () => {
    units.value = { ...METRIC, length: 'inch' };
    const words = measureWords(height);
    expect(words).toMatchObject({ name: 'Height, in', unit: 'in' });
    expect(sayRange(2.54, 25.4, words, 0)).toBe('1 to 10 in taller');
    expect(typedOf(58.42, words)).toBe('23');
    units.value = METRIC;
  });
  it('never writes a minus before a size, nor a number in powers of ten', () => {
    const words = measureWords(height);
    const end = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(end, end, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(sayRange(low, high, words, digitsFor(high - low))).not.toMatch(/[-−]|e\d|NaN/);
      }),
      { seed: 1926 },
    );
    expect(figure(-0.01, 1)).toBe('0');
    expect(figure(-2.5, 1)).toBe('−2.5');
  });
});

describe('two layouts of one season', () => {
  it('are told from each other where the grower has to pick one', () => {
    const trial = laidOut();
    const [one] = trial.layouts;
    const other = layOutSeason(planned(), [{ bed, places: 12 }], 4, TODAY, 'north');
    const says = sayValue('layouts/2026', one);
    expect(says).toMatch(/^laid out on Friday 1 May 2026 in Long bed, 12 places: ([AB] ){11}[AB]$/);
    expect(sayValue('layouts/2026', other)).not.toBe(says);
    expect(nameField('layouts/2026')).toBe('layout');
  });
});

describe('a trial in the store', () => {
  it('is made at its first touch; fast touches all hold, and show at once', async () => {
    await refreshGarden();
    const done = Promise.all([
      setFields('s', { name: 'Dug or not' }),
      setPlan('s', { typical: 30 }),
      setPlan('s', { spreadWord: 'uneven' }),
      touchTrial('s', (trial) => putNumbers(trial, 'u', TODAY, [3])),
    ]);
    expect(trialOn('s')).toMatchObject({ name: 'Dug or not', plan: { typical: 30, spreadWord: 'uneven' } });
    expect(await done).toEqual([true, true, true, true]);
    const [stored] = await store.listRecords('trial');
    expect(stored).toMatchObject({
      id: 's',
      name: 'Dug or not',
      plan: { typical: 30, spreadWord: 'uneven' },
      readings: [{ unitId: 'u', value: 3 }],
    });
    expect(trialOn('s')).toEqual(stored);
    await setFields('s', { matters: undefined });
    expect((await store.listRecords('trial'))[0]).not.toHaveProperty('matters');
  });
  it('has an address for each of its pages', () => {
    for (const step of [undefined, 'plan', 'lay-out', 'measure'] as const) {
      const route = { place: 'book', trial: 'a b', ...(step ? { step } : {}) } as const;
      expect(readRoute(hashOf(route))).toEqual(route);
    }
    const from = { place: 'book', trial: 't', step: 'plan', bed: 'long' } as const;
    expect(readRoute(hashOf(from))).toEqual(from);
  });
});

describe('the plot', () => {
  it('hides no dot behind another, and has a few round ticks within its ends', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 12 }), (places) => {
        const dots = placeDots(places);
        expect(dots.map(({ at }) => at)).toEqual([...places].sort((a, b) => a - b));
        const hidden = dots.filter(
          (dot, i) => dots.findIndex((other) => other.at === dot.at && other.lift === dot.lift) < i,
        );
        // Seven on one spot fill the row.
        const most = Math.max(
          0,
          ...places.map((place) => places.filter((one) => Math.abs(one - place) < 9).length),
        );
        if (most <= 4) expect(hidden).toEqual([]);
      }),
      { seed: 1905 },
    );
    fc.assert(
      fc.property(
        fc.array(
          fc.integer({ min: -1e6, max: 1e6 }).map((hundredths) => hundredths / 100),
          { minLength: 1, maxLength: 20 },
        ),
        (values) => {
          const { low, high, ticks } = ticksOver(values);
          expect(low).toBeLessThan(high);
          expect(ticks.length).toBeGreaterThanOrEqual(1);
          expect(ticks.length).toBeLessThanOrEqual(8);
          for (const tick of ticks) expect(tick >= low - 1e-9 && tick <= high + 1e-9).toBe(true);
        },
      ),
      { seed: 1906 },
    );
  });
});

describe('the invented trials', () => {
  it('are one that is being measured today and one that ended, made up by a seeded lot', () => {
    const [running, ended] = inventTrials(TODAY);
    expect(inventTrials(TODAY)).toEqual([running, ended]);
    expect([stateOf(running!), stateOf(ended!)]).toEqual(['measured', 'ended']);
    expect(running!.lookOn).toBe(TODAY);
    expect(measuredOn(running!, running!.layouts[0]!, TODAY)).toEqual([6, 15]);
    for (const trial of [running!, ended!]) {
      expect(trial.demo).toBe(true);
      expect(repairRecord(structuredClone(trial))).toEqual(trial);
    }
    const read = readKeptTrial(ended!);
    expect('result' in read && read.result.differences[0]).toMatchObject({ word: 'more', standing: 'trial' });
  });
});
