import { describe, expect, it } from 'vitest';
import type { KeptLook } from '../../src/app/state/kept.ts';
import { gatherExamples } from '../../src/app/state/leaf-examples.ts';
import { NETWORK_MARKS, STRANGE } from '../../src/classifier/calibration.ts';
import { NETWORK_ID } from '../../src/classifier/network-file.ts';
import { OWN_MARKS } from '../../src/classifier/own-head/marks-said.ts';
import type { Zone } from '../../src/days/growing-year.ts';
import type { SeenByNetwork } from '../../src/garden/seen-by-network.ts';
import type { Settled } from '../../src/garden/settle-case.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import { record } from '../garden/small-garden.ts';

const seen: SeenByNetwork = {
  network: NETWORK_ID,
  reports: [{ sign: 'holes@old', ratio: 9 }],
  logits: NETWORK_MARKS.map(() => 3),
  features: [1, 2],
  strangeness: 0.5 * STRANGE,
};
const reading = (role: LeafReading['role'], more: Partial<LeafReading> = {}): LeafReading => ({
  role,
  trouble: [],
  leaf: { found: true },
  measures: {},
  ...more,
});
const settled = (id: string, more: object = {}): Settled =>
  record('case', id, {
    bed: 'Long bed',
    plant: id,
    crop: 'kale',
    openedOn: '2026-06-01',
    closedOn: '2026-07-01',
    outcome: { settledOn: '2026-07-01', causes: ['aphids'], sureness: 'seen', lost: '', done: '' },
    ...more,
  }) as Settled;
const photo = (id: string, role: LeafReading['role'], more: object = {}): KeptLook['photos'][0] => ({
  id,
  role,
  taps: {},
  reading: reading(role),
  network: seen,
  ...more,
});
const look = (caseId: string, photos: KeptLook['photos'], signs: object, more: object = {}): KeptLook =>
  record('look', `${caseId}-look`, {
    caseId,
    date: '2026-06-01',
    photos,
    answers: { setting: {}, signs },
    ...more,
  }) as KeptLook;
const powder = { 'white-powder@old': 'seen', 'holes@old': 'absent' };
const gather = (
  cases: Parameters<typeof gatherExamples>[0]['cases'],
  normalLeaves: Parameters<typeof gatherExamples>[0]['normalLeaves'] = [],
) => gatherExamples({ cases, normalLeaves, zone: 'north' });

describe('the photos that teach the network', () => {
  it('are those that the eye said something about, with what it said, not what the network reported', () => {
    const { examples } = gather([
      { settled: settled('a'), looks: [look('a', [photo('p', 'old'), photo('q', 'new')], powder)] },
    ]);
    expect(examples).toHaveLength(1);
    expect(Object.fromEntries(examples[0]!.marks)).toEqual({
      'white-powder': true,
      holes: false,
      ...Object.fromEntries(
        ['shot-holes', 'ragged-holes', 'veins-left', 'edge-bites'].map((m) => [m, false]),
      ),
    });
    expect(examples[0]).toMatchObject({ features: [1, 2], logits: seen.logits });
  });

  it('come from one planting where crop, bed and year are one, however the bed is spelt', () => {
    const plantingOf = (more: object): string =>
      gather([{ settled: settled('a', more), looks: [look('a', [photo('p', 'old')], powder)] }]).examples[0]!
        .planting;
    const one = plantingOf({});
    expect(plantingOf({ bed: '  long BED', plant: 'another' })).toBe(one);
    for (const other of [{ bed: 'Short bed' }, { crop: 'chard' }, { openedOn: '2025-06-01' }])
      expect(plantingOf(other)).not.toBe(one);
  });

  it('come from one planting over New Year in the south and where no winter comes', () => {
    const plantings = (zone: Zone): number => {
      const cases = ['2025-12-20', '2026-01-10'].map((openedOn) => ({
        settled: settled(openedOn, { openedOn }),
        looks: [look(openedOn, [photo(openedOn, 'old')], powder)],
      }));
      const { examples } = gatherExamples({ cases, normalLeaves: [], zone });
      expect(examples).toHaveLength(2);
      return new Set(examples.map(({ planting }) => planting)).size;
    };
    expect(plantings('south')).toBe(1);
    expect(plantings('tropics')).toBe(1);
    expect(plantings('north')).toBe(2);
  });

  it('are counted apart where the network did not see them, or they are unlike all it was taught', () => {
    const photos = [
      photo('seen', 'old'),
      photo('off', 'old', { network: undefined }),
      photo('other', 'old', { network: { ...seen, network: 'another' } }),
      photo('strange', 'old', { network: { ...seen, strangeness: 2 * STRANGE } }),
      // Nothing is concluded from these.
      photo('blurred', 'old', { reading: reading('old', { trouble: ['too-blurred'] }) }),
      photo('no leaf', 'old', { reading: reading('old', { leaf: { found: false } }) }),
      photo('role left open', 'old', { role: 'unsaid' }),
      photo('nothing said', 'new'),
    ];
    const found = gather([{ settled: settled('a'), looks: [look('a', photos, powder)] }]);
    expect(found).toMatchObject({ unseen: 2, unlike: 1, healthy: 0 });
    expect(found.examples).toHaveLength(1);
    const gone = look('a', photos, powder, { deletedAt: '2026-06-02T00:00:00.000Z' });
    expect(gather([{ settled: settled('a'), looks: [gone] }]).examples).toEqual([]);
  });

  it('count a healthy leaf as one without any mark, by variety, and once where it was a look’s photo', () => {
    const leaf = (id: string, more: object = {}) =>
      record('normal-leaf', id, {
        crop: 'kale',
        variety: 'Curly green',
        photoId: id,
        reading: reading('normal'),
        network: { ...seen, reports: [] },
        ...more,
      });
    const { examples, healthy } = gather(
      [{ settled: settled('a'), looks: [look('a', [photo('n', 'normal')], powder)] }],
      [
        leaf('n'),
        leaf('m'),
        leaf('o', { variety: 'curly  GREEN' }),
        leaf('x', { deletedAt: '2026-06-02T00:00:00.000Z' }),
      ],
    );
    expect(healthy).toBe(3);
    expect(examples.map(({ planting }) => planting)[0]).not.toBe(examples[1]!.planting);
    expect(examples[1]!.planting).toBe(examples[2]!.planting);
    for (const { marks } of examples) {
      expect([...marks.keys()]).toEqual([...OWN_MARKS]);
      expect([...marks.values()].some(Boolean)).toBe(false);
    }
  });

  it('carry what the camera measured of a mark, as a log ratio', () => {
    const measures = { 'white-fraction': { value: 0.2, se: 0.01 } };
    const { examples } = gather([
      {
        settled: settled('a'),
        looks: [
          look(
            'a',
            [photo('p', 'old', { reading: reading('old', { measures }) }), photo('q', 'old')],
            powder,
          ),
        ],
      },
    ]);
    expect(examples[0]!.camera.get('white-powder')).toBeGreaterThan(0.5);
    expect(examples[1]!.camera.size).toBe(0);
  });
});
