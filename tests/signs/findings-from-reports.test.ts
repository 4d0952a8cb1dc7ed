import { describe, expect, it } from 'vitest';
import { findingsFromReports } from '../../src/signs/findings-from-reports.ts';
import { findingsOfLook, findingsOverLooks } from '../../src/signs/findings-over-looks.ts';
import type { SeenAtLook } from '../../src/signs/seen-at-look.ts';

const ratiosOf = (findings: ReturnType<typeof findingsFromReports>): [string, number][] =>
  findings.map(({ sign, ifPresent, ifAbsent }) => [sign, ifPresent / ifAbsent]);

const look = (date: string, network: SeenAtLook['network'], overruled?: 'mottled@new'): SeenAtLook => ({
  date,
  photos: [],
  answers: { setting: {}, signs: {}, ...(overruled ? { overruled: [overruled] } : {}) },
  ...(network ? { network } : {}),
});

describe('what the network said', () => {
  it('becomes findings of its own, with the ratios that were kept', () => {
    const findings = findingsFromReports([
      { sign: 'mottled@new', ratio: 4 },
      { sign: 'holes@some', ratio: 0.25 },
    ]);
    expect(findings.map(({ from }) => from)).toEqual(['network', 'network']);
    for (const [k, [sign, ratio]] of [['mottled@new', 4] as const, ['holes@some', 0.25] as const].entries()) {
      expect(ratiosOf(findings)[k]![0]).toBe(sign);
      expect(ratiosOf(findings)[k]![1]).toBeCloseTo(ratio, 12);
    }
  });

  it('counts as the mean of several photos, and is silent on what says nothing or is unknown here', () => {
    const said = findingsFromReports([
      { sign: 'mottled@new', ratio: 4 },
      { sign: 'mottled@new', ratio: 2 },
      { sign: 'holes@old', ratio: 1.05 },
      { sign: 'not-a-sign@old', ratio: 9 },
    ]);
    expect(said.map(({ sign }) => sign)).toEqual(['mottled@new']);
    expect(ratiosOf(said)[0]![1]).toBeCloseTo(3, 12);
  });

  it('stands beside the other voices of a look, and goes where the grower sees it otherwise, then and later', () => {
    const said = [{ sign: 'mottled@new', ratio: 4 }];
    expect(findingsOfLook(look('2026-06-01', said)).length).toBe(1);
    expect(findingsOfLook(look('2026-06-01', said, 'mottled@new'))).toEqual([]);
    const earlier = [look('2026-06-01', said)];
    expect(findingsOverLooks(look('2026-06-08', undefined), earlier).length).toBe(1);
    expect(findingsOverLooks(look('2026-06-08', undefined, 'mottled@new'), earlier)).toEqual([]);
  });
});
