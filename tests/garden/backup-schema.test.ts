import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { mergeRecords } from '../../src/garden/merge-records.ts';
import { type GardenRecord, RECORDS_SCHEMA } from '../../src/garden/records.ts';
import { stampChanges } from '../../src/garden/stamp-changes.ts';
import { ownHeadOf, record } from './small-garden.ts';

// The documented schema, applied by ajv, which had no part in writing the records.
const schema = JSON.parse(readFileSync(new URL('../../docs/backup-schema.json', import.meta.url), 'utf8'));
const check = new Ajv2020({ strict: false }).compile(schema);
const faultsOf = (value: unknown): string =>
  check(JSON.parse(JSON.stringify(value))) ? '' : JSON.stringify(check.errors?.slice(0, 3));

const bed = stampChanges(
  undefined,
  record('bed', 'b', { name: 'Long', order: 2, soil: 'clay' }),
  '2026-06-01T00:00:00.000Z',
  'phone',
);
const network = {
  network: '0123456789abcdef',
  reports: [{ sign: 'holes@old', ratio: 2.5 }],
  logits: [-1.25],
  features: [0.5, 0],
  strangeness: 0.7,
};
const rename = (name: string, device: string): GardenRecord =>
  stampChanges(bed, { ...bed, name }, '2026-06-02T00:00:00.000Z', device);
const all: readonly GardenRecord[] = [
  bed,
  mergeRecords(rename('One', 'phone'), rename('Two', 'desk')),
  record('event', 'e', { bedId: 'b', date: '2026-05-01', what: 'fed', amount: 'light' }),
  record('batch', 'm', {
    what: 'horse-manure',
    arrivedOn: '2026-03-01',
    hotOnArrival: true,
    woodShare: 0.3,
    readings: [{ id: 'r', date: '2026-05-01', celsius: 60, turned: true, smellsOfAmmonia: false }],
    given: [{ id: 'g', date: '2026-05-02', bedId: 'b', how: 'mixed-in', depthCm: 20 }],
    suspicion: {
      state: 'suspected',
      on: '2026-06-01',
      why: 'curled beans',
      caseId: 'c',
      potTestId: 't',
      potTestSays: 'pots twisted',
    },
    ripeness: [
      { id: 'x', date: '2026-05-20', how: 'radish-pots', said: 'failed', sown: 20, grown: 14 },
      { id: 'y', date: '2026-05-21', how: 'self-heating', said: 'unclear', riseCelsius: 12 },
    ],
  }),
  record('planting', 'p', { crop: 'kale', bedId: 'b', sownOn: '2026-03-01', hardenedOff: true }),
  record('weather', 'weather-2026-05-01', { date: '2026-05-01', minCelsius: -1, forecast: true }),
  record('normal-leaf', 'n', { crop: 'kale', variety: 'x', photoId: 'ph', reading: {}, network }),
  record('case', 'c', {
    bed: 'Long',
    plant: 'kale',
    openedOn: '2026-06-01',
    looks: [
      { id: 'l', date: '2026-06-01', verdict: 'watch', lookAgain: '2026-06-10', leading: [], photos: ['ph'] },
    ],
  }),
  record('look', 'l', {
    caseId: 'c',
    date: '2026-06-01',
    photos: [{ id: 'ph', role: 'old', taps: {}, network }],
    note: 'x',
  }),
  record('pot-test', 't', {
    batchId: 'm',
    question: 'residue',
    crop: 'pea',
    sownOn: '2026-04-01',
    pots: [{ id: 'p', label: 'A', role: 'test', seeds: 3, block: 0, place: 1 }],
    scores: [
      {
        id: '2026-04-20 p',
        date: '2026-04-20',
        potId: 'p',
        emerged: 3,
        heightMm: 80,
        injury: 10,
        leafSets: 2,
        photos: ['ph'],
        reading: { role: 'new' },
      },
    ],
    toSow: true,
    lookOn: '2026-04-25',
    said: { verdict: 'go-on', on: '2026-04-20', chance: 0.4, injuryRatio: 1.2, why: ['injury'] },
  }),
  record('trial', 'v', {
    name: 'Dug or not',
    ways: [
      { id: 'A', name: 'dug' },
      { id: 'B', name: 'not dug' },
    ],
    unit: 'plant',
    measure: { by: 'photo', measure: 'yellow-area' },
    ofWhat: 'leaf with holes',
    better: 'less',
    matters: 0.1,
    plan: { spreadWord: 'uneven', typical: 0.3, chance: 0.8, how: 'blocks', each: 1 },
    layouts: [
      {
        id: '2026',
        date: '2026-04-01',
        how: 'blocks',
        seed: 7,
        beds: [{ bedId: 'b', bedName: 'Long', places: 2 }],
        units: [{ id: '2026.7.0.1', way: 'A', at: 0, place: 1, block: '1' }],
      },
    ],
    readings: [
      {
        id: '2026-05-01 2026.7.0.1',
        date: '2026-05-01',
        unitId: '2026.7.0.1',
        value: 0.2,
        se: 0.01,
        photoId: 'ph',
        taps: {},
      },
      { id: '2026-05-01 2026.7.0.1 2', date: '2026-05-01', unitId: '2026.7.0.1', photoId: 'px' },
    ],
    losses: [{ id: '2026.7.0.2', date: '2026-05-02', why: 'slugs' }],
    lookOn: '2026-05-08',
    ended: { date: '2026-06-01', as: 'read' },
  }),
  record('draft', 'd', { body: {} }),
  record('lessons', 'lessons', { forgetUntil: '2026-01-01T00:00:00.000Z' }),
  record('own-head', 'own-head', ownHeadOf(0.5)),
];

describe('the documented schema of a backup', () => {
  it.each(all.map((one) => [one.kind, one] as const))('holds for a %s', (_kind, one) => {
    expect(faultsOf(one)).toBe('');
  });
  it('holds for the manifest, and not for what is none', () => {
    const manifest = {
      format: 'bedside-garden',
      version: 1,
      schema: RECORDS_SCHEMA,
      madeAt: 'x',
      records: 0,
      pictures: 0,
    };
    expect(faultsOf(manifest)).toBe('');
    expect(faultsOf({ ...manifest, version: 2 })).not.toBe('');
    expect(faultsOf({ ...bed, revision: 4 })).not.toBe('');
    expect(faultsOf({ ...bed, kind: 'plan' })).not.toBe('');
    expect(faultsOf({ ...bed, name: 7 })).not.toBe('');
  });
});
