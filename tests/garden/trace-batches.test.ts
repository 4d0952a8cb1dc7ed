import { describe, expect, it } from 'vitest';
import {
  awaitsPots,
  batchesToSpread,
  batchesUnder,
  releaseBatch,
  suspectBatch,
  whoReceived,
} from '../../src/garden/trace-batches.ts';
import { garden, record } from './small-garden.ts';

const NOW = '2026-06-20T00:00:00.000Z';
const stable = record('batch', 'stable', {
  name: 'Stable load',
  what: 'horse-manure',
  given: [
    { id: 'g1', date: '2026-03-10', bedId: 'long', how: 'mixed-in', depthCm: 20 },
    { id: 'g2', date: '2026-05-02', bedId: 'wall', plantingId: 'pumpkin', how: 'on-top' },
    { id: 'g3', date: '2026-05-03', bedId: 'pot' },
  ],
});
const own = record('batch', 'own', {
  given: [{ id: 'h', date: '2026-04-01', bedId: 'long', how: 'on-top' }],
});
const all = [
  record('bed', 'wall', { name: 'Wall bed', order: 2 }),
  record('bed', 'long', { name: 'Long bed', order: 1 }),
  record('bed', 'pot', { name: 'Pot', place: 'container' }),
  record('bed', 'clean', { name: 'Clean bed' }),
  stable,
  own,
  record('planting', 'leeks', { bedId: 'long', crop: 'leek', clearedOn: '2026-03-01' }),
  record('planting', 'beans', { bedId: 'long', crop: 'french-bean', sownOn: '2026-05-20' }),
  record('planting', 'garlic', { bedId: 'long', crop: 'garlic', clearedOn: '2026-07-01' }),
  record('planting', 'pumpkin', { bedId: 'wall', crop: 'pumpkin' }),
  record('planting', 'kale', { bedId: 'wall', crop: 'kale' }),
  record('planting', 'peas', { bedId: 'clean', crop: 'pea' }),
];
const plot = garden(...all);
const ids = (some: readonly { id: string }[]): string[] => some.map(({ id }) => id);

describe('from a batch to whatever received it', () => {
  it('names beds and pots in the order of the walk, and plantings that stood in it or came after', () => {
    const { beds, plantings } = whoReceived(plot, 'stable');
    expect(ids(beds)).toEqual(['long', 'wall', 'pot']);
    expect(ids(plantings)).toEqual(['beans', 'garlic', 'pumpkin']);
    expect(whoReceived(plot, 'no such')).toEqual({ beds: [], plantings: [] });
  });
});

describe('from a plant to the batches under it', () => {
  it('names them, the one given last first, with when and how', () => {
    expect(
      batchesUnder(plot, { plantingId: 'beans' }).map(({ batch, given }) => [batch.id, ids(given)]),
    ).toEqual([
      ['own', ['h']],
      ['stable', ['g1']],
    ]);
    expect(batchesUnder(plot, { plantingId: 'pumpkin' }).map(({ batch }) => batch.id)).toEqual(['stable']);
    expect(batchesUnder(plot, { plantingId: 'kale' })).toEqual([]);
    expect(batchesUnder(plot, { plantingId: 'leeks' })).toEqual([]);
    expect(batchesUnder(plot, { bedId: 'long' }, '2026-03-15').map(({ batch }) => batch.id)).toEqual([
      'stable',
    ]);
    expect(batchesUnder(plot, { bedId: 'clean' })).toEqual([]);
    expect(batchesUnder(plot, {})).toEqual([]);
  });

  it('agrees with the way there: a planting is under a batch exactly when the batch reached it', () => {
    for (const { id: plantingId } of plot.plantings)
      for (const { id: batchId } of plot.batches)
        expect(batchesUnder(plot, { plantingId }).some(({ batch }) => batch.id === batchId)).toBe(
          ids(whoReceived(plot, batchId).plantings).includes(plantingId),
        );
  });
});

describe('a batch under suspicion', () => {
  it('is not offered for spreading until it is released, and the suspicion stays on record', () => {
    const suspected = suspectBatch(stable, { on: '2026-06-20', why: 'beans curled', caseId: 'c' }, NOW);
    expect(ids(batchesToSpread(garden(suspected, own)))).toEqual(['own']);
    const released = releaseBatch(suspected, '2026-07-15', 'pot test clean', NOW);
    expect(ids(batchesToSpread(garden(released, own)))).toEqual(['stable', 'own']);
    expect(released.suspicion).toEqual({
      state: 'released',
      on: '2026-07-15',
      why: 'pot test clean',
      caseId: 'c',
    });
  });

  it('stays aside where its state cannot be read, and what is used up is not offered', () => {
    const damaged = record('batch', 'x', { suspicion: { state: 7 } });
    expect(batchesToSpread(garden(damaged, record('batch', 'y', { usedUpOn: '2026-05-01' })))).toEqual([]);
  });

  it('is kept aside while its pots run, and where they came out void or undecided', () => {
    const test = (more: object) =>
      record('pot-test', 'p', {
        batchId: 'own',
        question: 'residue',
        crop: 'pea',
        sownOn: '2026-05-01',
        ...more,
      });
    const said = (verdict: string) => ({
      endedOn: '2026-06-01',
      said: { verdict, on: '2026-06-01', why: [] },
    });
    expect(awaitsPots(garden(own), 'own')).toBe(false);
    expect(awaitsPots(garden(own, test({})), 'own')).toBe(true);
    expect(awaitsPots(garden(own, test({})), 'stable')).toBe(false);
    expect(awaitsPots(garden(own, test(said('invalid'))), 'own')).toBe(true);
    expect(awaitsPots(garden(own, test(said('go-on'))), 'own')).toBe(true);
    expect(awaitsPots(garden(own, test(said('safe-enough'))), 'own')).toBe(false);
    // Whether it is ripe says nothing of weedkiller, and a test that was given up decides nothing either way.
    expect(awaitsPots(garden(own, test({ question: 'ripeness' })), 'own')).toBe(false);
    expect(awaitsPots(garden(own, test({ endedOn: '2026-05-20' })), 'own')).toBe(false);
  });
});
