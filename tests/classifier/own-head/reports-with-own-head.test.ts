import { describe, expect, it } from 'vitest';
import { NETWORK_MARKS, STRANGE } from '../../../src/classifier/calibration.ts';
import { NETWORK_ID } from '../../../src/classifier/network-file.ts';
import { reportsWithOwnHead } from '../../../src/classifier/own-head/reports-with-own-head.ts';
import type { OwnHeadRecord } from '../../../src/garden/own-head-record.ts';
import type { SeenByNetwork } from '../../../src/garden/seen-by-network.ts';
import { ownHeadOf, record } from '../../garden/small-garden.ts';

const own: OwnHeadRecord = { ...record('own-head', 'own-head', ownHeadOf(2)), network: NETWORK_ID };
const seen: SeenByNetwork = {
  network: NETWORK_ID,
  reports: [
    { sign: 'white-powder@old', ratio: 0.5 },
    { sign: 'mottled@old', ratio: 3 },
  ],
  logits: NETWORK_MARKS.map(() => 0.2),
  features: [1.5, 9],
  strangeness: 0.5 * STRANGE,
};
const ratios = (...args: Parameters<typeof reportsWithOwnHead>) =>
  Object.fromEntries(reportsWithOwnHead(...args).map(({ sign, ratio }) => [sign, ratio]));

describe('what the network reports in a garden that has taught it', () => {
  it('takes marks that the own head tells better from that, the others as they were', () => {
    // level −0.25, logit 0.5 · 0.2, features 2 · (1.5 − 1) / 0.5
    const log = -0.25 + 0.1 + 2;
    expect(ratios(seen, 'old', own)).toEqual({
      'white-powder@old': Math.min(5, Math.exp(log)),
      'mottled@old': 3,
    });
    const calm = { ...seen, features: [1, 9] };
    expect(ratios(calm, 'old', own)['white-powder@old']).toBeCloseTo(Math.exp(-0.15), 12);
  });

  it('reports a mark that the shipped head is silent on, for the position of the photo, and never beyond its most', () => {
    const silent = { ...seen, reports: [], features: [90, 0] };
    expect(ratios(silent, 'new', own)).toEqual({ 'white-powder@new': 5 });
    expect(ratios({ ...silent, features: [-90, 0] }, 'whole', own)).toEqual({ 'white-powder@some': 0.2 });
  });

  it('is silent on normal leaves and on pictures unlike all that was taught', () => {
    expect(reportsWithOwnHead({ ...seen, reports: [] }, 'normal', own)).toEqual([]);
    for (const strangeness of [1.01 * STRANGE, Number.NaN])
      expect(reportsWithOwnHead({ ...seen, reports: [], strangeness }, 'old', own)).toEqual([]);
  });

  it('sets a head aside that was learnt on another network, or a photo that another one saw', () => {
    expect(reportsWithOwnHead(seen, 'old', { ...own, network: 'another' })).toBe(seen.reports);
    expect(reportsWithOwnHead({ ...seen, network: 'another' }, 'old', own)).toHaveLength(2);
    expect(reportsWithOwnHead({ ...seen, network: 'another' }, 'old', own)).toEqual(seen.reports);
    expect(reportsWithOwnHead({ ...seen, features: [1] }, 'old', own)).toEqual(seen.reports);
    expect(reportsWithOwnHead(seen, 'old', undefined)).toBe(seen.reports);
  });
});
