import { describe, expect, it } from 'vitest';
import { checkAnswers } from '../../src/signs/check-answers.ts';
import { settingsFromRecords, withoutOverruled, withRecords } from '../../src/signs/settings-from-records.ts';
import type { Answers } from '../../src/signs/types.ts';
import { triage } from '../../src/triage.ts';
import { garden, record, weather } from '../garden/small-garden.ts';

const DATE = '2026-05-20';
const bed = record('bed', 'long', {
  name: 'Long bed',
  place: 'open-ground',
  soil: 'clay',
  soilReaction: 'acid',
});
const kale = record('planting', 'kale', {
  crop: 'kale',
  variety: 'Red curly',
  colour: 'red-or-purple',
  bedId: 'long',
  sownOn: '2026-03-20',
  plantedOn: '2026-05-08',
  hardenedOff: true,
});
const batch = (id: string, what: string, date: string, how: string | undefined, more: object = {}) =>
  record('batch', id, {
    what,
    given: [{ id: `${id}1`, date, bedId: 'long', ...(how ? { how } : {}) }],
    ...more,
  });
const valuesOf = (...args: Parameters<typeof settingsFromRecords>): object =>
  Object.fromEntries(
    Object.entries(settingsFromRecords(...args).settings).map(([id, found]) => [id, found.value]),
  );
const kalePlant = { plantingId: 'kale', date: DATE, zone: 'north' } as const;

describe('settings from records', () => {
  it('come from planting and bed, each with the record that says so', () => {
    const { crop, variety, settings } = settingsFromRecords(garden(bed, kale), kalePlant);
    expect({ crop, variety }).toEqual({ crop: 'kale', variety: 'Red curly' });
    expect(settings).toEqual({
      'variety-colour': { value: 'red-or-purple', says: [{ kind: 'planting', id: 'kale' }] },
      'days-since-planting': { value: 12, says: [{ kind: 'planting', id: 'kale' }] },
      'hardened-off': { value: true, says: [{ kind: 'planting', id: 'kale' }] },
      'crop-stage': { value: 'just-planted', says: [{ kind: 'planting', id: 'kale' }] },
      place: { value: 'open-ground', says: [{ kind: 'bed', id: 'long' }] },
      'soil-kind': { value: 'clay', says: [{ kind: 'bed', id: 'long' }] },
      'soil-ph': { value: 'acid', says: [{ kind: 'bed', id: 'long' }] },
    });
  });

  it('leave open what no record speaks of, and words that the vocabulary does not know', () => {
    expect(settingsFromRecords(garden(), kalePlant).settings).toEqual({});
    const odd = record('bed', 'odd', { name: 'Odd', place: 'on the moon', soil: 'cheese' });
    expect(valuesOf(garden(odd), { bedId: 'odd', date: DATE, zone: 'north' })).toEqual({});
  });

  it('tell what went on the bed, how, when, and in what state it was then', () => {
    const heap = batch('stable', 'horse-manure', '2026-04-15', 'mixed-in', {
      startedOn: '2026-01-15',
      woodShare: 0.3,
      sprayedFields: 'unknown',
      readings: [
        { id: 'a', date: '2026-02-01', celsius: 65 },
        { id: 'b', date: '2026-04-01', celsius: 48, smellsOfAmmonia: true },
        { id: 'c', date: '2026-05-01', celsius: 20 },
      ],
    });
    const old = batch('old', 'leaf-mould', '2025-04-01', 'on-top');
    const chips = batch('chips', 'wood-chips', '2026-05-01', 'on-top');
    expect(
      valuesOf(garden(bed, heap, old, chips), { bedId: 'long', date: DATE, zone: 'north' }),
    ).toMatchObject({
      'compost-kinds': ['horse-manure'],
      'compost-celsius': 48,
      'compost-ammonia': true,
      'compost-age': 3,
      'wood-in-root-zone': true,
      'wood-on-surface': true,
      'weeks-since-mixed-in': 5,
      'bed-disturbed': true,
      'hay-source': 'unknown',
    });
    const before = valuesOf(garden(bed, heap, old, chips), {
      bedId: 'long',
      date: '2026-04-10',
      zone: 'north',
    });
    expect(before).not.toHaveProperty('compost-kinds');
  });

  it('take a load that came hot and went on at once for hot, and never say "nothing"', () => {
    const hot = batch('hot', 'horse-manure', '2026-05-05', undefined, {
      hotOnArrival: true,
      arrivedOn: '2026-05-01',
    });
    const found = valuesOf(garden(bed, hot), { bedId: 'long', date: DATE, zone: 'north' });
    expect(found).toMatchObject({ 'compost-kinds': ['horse-manure'], 'compost-state': 'hot' });
    expect(found).not.toHaveProperty('weeks-since-mixed-in');
  });

  it('need no time since mixing in where everything lies on top', () => {
    const { covered } = settingsFromRecords(garden(bed, batch('m', 'leaf-mould', '2026-05-01', 'on-top')), {
      bedId: 'long',
      date: DATE,
      zone: 'north',
    });
    expect(covered).toContain('weeks-since-mixed-in');
  });

  it('keep what was given to one planting from the others', () => {
    const pot = record('batch', 'p', {
      what: 'bagged-compost',
      given: [{ id: 'p1', date: '2026-05-08', bedId: 'long', plantingId: 'kale', how: 'on-top' }],
    });
    const peas = record('planting', 'peas', { crop: 'pea', bedId: 'long' });
    expect(valuesOf(garden(bed, kale, peas, pot), kalePlant)).toHaveProperty('compost-kinds', [
      'bagged-compost',
    ]);
    expect(
      valuesOf(garden(bed, kale, peas, pot), { plantingId: 'peas', date: DATE, zone: 'north' }),
    ).not.toHaveProperty('compost-kinds');
  });

  it('tell what was done to the bed while it holds', () => {
    const event = (id: string, what: string, date: string, more: object = {}) =>
      record('event', id, { bedId: 'long', what, date, ...more });
    const plain = record('bed', 'long', { name: 'Long bed' });
    const dug = event('d', 'disturbed', '2026-04-25');
    expect(valuesOf(garden(plain, dug), { bedId: 'long', date: DATE, zone: 'north' })).toEqual({
      'bed-disturbed': true,
    });
    expect(valuesOf(garden(plain, dug), { bedId: 'long', date: '2026-08-01', zone: 'north' })).toEqual({
      'bed-disturbed': false,
    });
    expect(valuesOf(garden(plain, dug), { bedId: 'long', date: '2028-08-01', zone: 'north' })).toEqual({});
    expect(
      valuesOf(
        garden(
          plain,
          event('l', 'limed', '2025-11-01'),
          event('f', 'fed', '2026-05-10', { amount: 'light' }),
          event('g', 'fed', '2026-05-01', { amount: 'heavy' }),
          event('s', 'sprayed-nearby', '2026-05-02'),
          event('n', 'netted', '2026-05-02'),
          event('u', 'uncovered', '2026-05-12'),
        ),
        { bedId: 'long', date: DATE, zone: 'north' },
      ),
    ).toEqual({ 'soil-ph': 'chalky-or-limed', feed: 'heavy', 'sprayed-nearby': true, netted: false });
  });

  it('know the year before’s crops by family', () => {
    const last = (id: string, crop: string) =>
      record('planting', id, { crop, bedId: 'long', plantedOn: '2025-05-01', clearedOn: '2025-10-01' });
    const known = (...plantings: ReturnType<typeof last>[]) =>
      settingsFromRecords(garden(bed, kale, ...plantings), kalePlant).settings['rotation-same-family'];
    expect(known()).toBeUndefined();
    expect(known(last('a', 'lettuce'))).toMatchObject({ value: false });
    expect(known(last('a', 'lettuce'), last('b', 'turnip'))).toEqual({
      value: true,
      says: [{ kind: 'planting', id: 'b' }],
    });
  });

  it('tell last year by the growing year of the place: what stands beside it is not of the year before', () => {
    const set = (id: string, crop: string, plantedOn: string, more = {}) =>
      record('planting', id, { crop, bedId: 'long', plantedOn, ...more });
    const tomato = set('tomato', 'tomato', '2025-11-05');
    const sameFamily = (zone: 'north' | 'south' | 'tropics', ...others: ReturnType<typeof set>[]) =>
      settingsFromRecords(garden(bed, tomato, ...others), { plantingId: 'tomato', date: '2026-01-10', zone })
        .settings['rotation-same-family'];
    const beside = set('beside', 'potato', '2025-10-05');
    const before = set('before', 'potato', '2024-11-01', { clearedOn: '2025-03-01' });
    for (const zone of ['south', 'tropics'] as const) {
      expect(sameFamily(zone, beside)).toBeUndefined();
      expect(sameFamily(zone, beside, set('pea', 'pea', '2024-12-01'))).toMatchObject({ value: false });
      expect(sameFamily(zone, beside, before)).toEqual({
        value: true,
        says: [{ kind: 'planting', id: 'before' }],
      });
    }
    expect(sameFamily('north', beside)).toMatchObject({ value: true });
  });

  it('count cold days against the crop’s own minimum, from three weeks of weather', () => {
    const cucumber = record('planting', 'cu', { crop: 'cucumber', bedId: 'long', plantedOn: '2026-05-01' });
    // A mean of 12 °C: too cold for cucumber (60 °F), not for kale (40 °F) (UCSC-KNOTT).
    const cool = weather('2026-04-30', Array(21).fill([7, 17]));
    const of = (planting: typeof cucumber, days = cool) =>
      settingsFromRecords(garden(bed, planting, ...days), {
        plantingId: planting.id,
        date: DATE,
        zone: 'north',
      });
    expect(of(cucumber).settings['cold-days']?.value).toBe(21);
    expect(of(cucumber).covered).toEqual(['recent-temperature']);
    expect(of(kale).settings['cold-days']?.value).toBe(0);
    // Fourteen of 21 days known, all of them cold: scaled up. Fewer: left open.
    expect(of(cucumber, cool.slice(7)).settings['cold-days']?.value).toBe(21);
    expect(of(cucumber, cool.slice(8)).settings).not.toHaveProperty('cold-days');
    const inside = record('bed', 'long', { name: 'Tunnel', place: 'under-cover' });
    expect(
      valuesOf(garden(inside, cucumber, ...cool), { plantingId: 'cu', date: DATE, zone: 'north' }),
    ).not.toHaveProperty('cold-days');
  });

  it('tell of frost only since it was planted out, of heat, and of the soil as it was read', () => {
    const frost = weather('2026-05-04', [[-1, 9]]);
    const late = weather('2026-05-10', [[-1, 9]]);
    expect(valuesOf(garden(bed, kale, ...frost), kalePlant)).not.toHaveProperty('recent-temperature');
    expect(valuesOf(garden(bed, kale, ...late), kalePlant)).toHaveProperty('recent-temperature', 'frost');
    const hot = weather('2026-05-16', [
      [15, 31],
      [16, 32],
      [15, 30],
    ]);
    expect(valuesOf(garden(bed, kale, ...hot), kalePlant)).toHaveProperty('recent-temperature', 'hot');
    const read = record('weather', 'w', { date: '2026-05-19', soilCelsius: 9.5 });
    expect(valuesOf(garden(bed, kale, read), kalePlant)).toHaveProperty('soil-celsius', 9.5);
    const forecast = weather('2026-05-20', [[-4, 3]], { forecast: true });
    expect(valuesOf(garden(bed, kale, ...forecast), kalePlant)).not.toHaveProperty('recent-temperature');
  });

  it('say how warm it was since something was mixed in', () => {
    const mixed = batch('m', 'horse-manure', '2026-04-15', 'mixed-in');
    const days = weather('2026-04-01', Array(60).fill([4, 12]));
    const { soil, warmth } = settingsFromRecords(garden(bed, mixed, ...days), {
      bedId: 'long',
      date: DATE,
      zone: 'north',
    });
    expect(soil?.since).toBe('2026-04-15');
    expect(soil?.celsius).toBeCloseTo(8, 0);
    expect(warmth).toEqual({ degreeDays: 36 * 8, daysMissing: 0 });
    expect(
      settingsFromRecords(garden(bed, mixed), { bedId: 'long', date: DATE, zone: 'north' }).soil,
    ).toBeUndefined();
  });
});

describe('a case whose ranking turns on what went on the bed in spring', () => {
  const said: Answers = {
    crop: 'kale',
    date: DATE,
    setting: {},
    signs: { 'yellow-even@old': 'seen', stunted: 'seen', 'whole-bed': 'seen' },
  };
  const spring = weather('2026-03-20', Array(62).fill([3, 11]));
  const raw = batch('raw', 'horse-manure', '2026-04-20', 'mixed-in', { told: 'fresh', woodShare: 0.4 });
  const ripe = batch('ripe', 'own-compost', '2026-04-20', 'on-top', { told: 'finished', woodShare: 0 });
  const rankWith = (...brought: ReturnType<typeof batch>[]) => {
    const found = settingsFromRecords(garden(bed, kale, ...spring, ...brought), kalePlant);
    const answers = withRecords(said, found);
    return {
      found,
      answers,
      result: triage({
        photos: [],
        answers,
        today: DATE,
        zone: 'north',
        draws: 20,
        cannotSay: found.covered,
        ...(found.soil ? { soilCelsius: found.soil.celsius } : {}),
      }),
    };
  };
  const chanceOf = ({ result }: ReturnType<typeof rankWith>, cause: string): number =>
    result.causes.find(({ id }) => id === cause)?.probability ?? 0;

  it('leads with lock-up over raw manure dug in, and not over ripe compost on top, with the same answers', () => {
    const [dug, laid] = [rankWith(raw), rankWith(ripe)];
    expect(dug.result.causes[0]?.id).toBe('nitrogen-locked');
    expect(laid.result.causes[0]?.id).not.toBe('nitrogen-locked');
    expect(chanceOf(dug, 'nitrogen-locked')).toBeGreaterThan(2 * chanceOf(laid, 'nitrogen-locked'));
  });

  it('asks nothing about it', () => {
    const { result, found } = rankWith(raw);
    expect(Object.keys(found.settings)).toEqual(
      expect.arrayContaining(['compost-kinds', 'compost-state', 'wood-in-root-zone', 'weeks-since-mixed-in']),
    );
    const asked = new Set([...result.nextChecks, ...result.openQuestions].map(({ id }) => id));
    expect(asked.size).toBeGreaterThan(20);
    expect([...Object.keys(found.settings), ...found.covered].filter((id) => asked.has(id))).toEqual([]);
  });

  it('asks neither what else went on nor how ripe it was, where wood alone was dug in', () => {
    const { settings, covered } = settingsFromRecords(
      garden(bed, kale, batch('chips', 'wood-chips', '2026-04-10', 'mixed-in')),
      kalePlant,
    );
    expect(settings['wood-in-root-zone']?.value).toBe(true);
    expect(settings).not.toHaveProperty('compost-kinds');
    expect(covered).toEqual(
      expect.arrayContaining(['compost-kinds', 'compost-state', 'hay-source', 'wood-on-surface']),
    );
    const open = withoutOverruled(
      settingsFromRecords(
        garden(bed, kale, batch('chips', 'wood-chips', '2026-04-10', 'mixed-in')),
        kalePlant,
      ),
      ['wood-in-root-zone'],
    );
    expect(Object.keys(open.settings)).not.toEqual(expect.arrayContaining(['weeks-since-mixed-in']));
    expect(open.settings).not.toHaveProperty('bed-disturbed');
    expect(open.covered).toEqual([]);
  });

  it('can be overruled by an answer, or by naming what does not hold', () => {
    const { found, answers } = rankWith(raw);
    expect(answers.recorded).toContain('compost-kinds');
    const denied = { 'compost-kinds': ['none'] } as const;
    const told = withRecords({ ...said, setting: denied, notAsRecorded: ['wood-in-root-zone'] }, found);
    expect(told.setting['compost-kinds']).toEqual(['none']);
    expect(told.setting).not.toHaveProperty('wood-in-root-zone');
    // What stands on the denied load alone falls with it; what the bed and the planting say does not.
    expect(told.setting).not.toHaveProperty('weeks-since-mixed-in');
    expect(told.setting).not.toHaveProperty('compost-state');
    expect(told.setting.place).toBe(answers.setting.place);
    const restored = withRecords(said, found);
    expect(restored).toEqual(answers);
    expect(told.recorded).not.toContain('compost-kinds');
    expect(
      checkAnswers({ ...told, recorded: undefined }).faults.filter(({ at }) => at.startsWith('setting')),
    ).toEqual([]);
  });
});
