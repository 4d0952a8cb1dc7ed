import fc from 'fast-check';
import type { Evidence, SignEvidence } from '../../src/ranker/evidence.ts';

export function reportOn(sign: number, ifPresent: number, ifAbsent: number): SignEvidence {
  return { label: `sign-${sign}`, sign, ifPresent, ifAbsent, from: ['eye'] };
}

export interface AnyEvidence {
  readonly signs: number;
  /** Odds multipliers that crop or season may bring, one a cause. */
  readonly context: fc.Arbitrary<number[]>;
  /** Either side of a report's likelihood pair. */
  readonly likelihood: fc.Arbitrary<number>;
  readonly mostSigns: number;
  readonly mostBroad: number;
  readonly mostMembers: number;
}

/** Any evidence on a small network: reports on signs and on ORs of signs, the answer to its one factor, a context. */
export function anyEvidence({
  signs,
  context,
  likelihood,
  mostSigns,
  mostBroad,
  mostMembers,
}: AnyEvidence): fc.Arbitrary<Evidence> {
  const pair = { yes: likelihood, no: likelihood };
  return fc.record({
    signs: fc
      .uniqueArray(fc.record({ at: fc.nat(signs - 1), ...pair }), {
        selector: ({ at }) => at,
        maxLength: mostSigns,
      })
      .map((list) => list.map(({ at, yes, no }) => reportOn(at, yes, no))),
    broad: fc
      .uniqueArray(
        fc.record({
          members: fc.uniqueArray(fc.nat(signs - 1), { minLength: 2, maxLength: mostMembers }),
          ...pair,
        }),
        { selector: ({ members }) => [...members].sort().join('+'), maxLength: mostBroad },
      )
      .map((list) =>
        list.map(({ members, yes, no }) => ({
          label: `any-of-${[...members].sort().join('+')}`,
          members,
          ifPresent: yes,
          ifAbsent: no,
          from: ['eye'] as const,
        })),
      ),
    factors: fc
      .option(fc.nat(1), { nil: undefined })
      .map((outcome) =>
        outcome === undefined ? [] : [{ label: 'factor-0', factor: 0, outcome, from: ['eye'] as const }],
      ),
    context: fc
      .option(context, { nil: undefined })
      .map((odds) => (odds === undefined ? [] : [{ label: 'crop=x', oddsFactor: Float64Array.from(odds) }])),
  });
}
