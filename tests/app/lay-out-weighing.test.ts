import { describe, expect, it } from 'vitest';
import { layOutWeighing } from '../../src/app/parts/Weighing/lay-out-weighing.ts';
import { findShifts } from '../../src/app/state/describe-effect.ts';
import type { RankedCause, Reason } from '../../src/ranker/types.ts';
import type { CauseId, FamilyId } from '../../src/signs/vocabulary.ts';

const reason = (sign: string, decibans: number): Reason => ({ sign, decibans, from: ['eye'] });
const cause = (
  id: CauseId,
  family: FamilyId,
  probability: number,
  more: Partial<RankedCause> = {},
): RankedCause => ({
  id,
  family,
  probability,
  low: 0,
  high: 1,
  priorDecibans: -15,
  for: [],
  against: [],
  ...more,
});

const CAUSES = [
  cause('magnesium-short', 'food', 0.6, {
    for: [reason('a', 2), reason('b', 9)],
    against: [reason('c', -3)],
  }),
  cause('aphids', 'animals', 0.3, { for: [reason('a', 0.2), reason('b', 0.3)] }),
  cause('iron-short', 'food', 0.1),
  cause('virus', 'disease', 0.02),
  cause('birds', 'animals', 0, { ruledOut: 'no pigeon eats under a net' }),
];

describe('the weighing laid out', () => {
  const layout = layOutWeighing(CAUSES, [
    { causes: ['magnesium-short', 'aphids'], probability: 0.2 },
    { causes: ['magnesium-short', 'virus'], probability: 0.1 },
    { causes: ['aphids', 'iron-short'], probability: 0.01 },
  ]);

  it('groups the leading causes by family, likeliest family first, each on a row of its own', () => {
    expect(
      layout.families.map(({ family, row, lines }) => [
        family,
        row,
        lines.map((line) => [line.cause.id, line.row]),
      ]),
    ).toEqual([
      [
        'food',
        1,
        [
          ['magnesium-short', 2],
          ['iron-short', 3],
        ],
      ],
      ['animals', 4, [['aphids', 5]]],
    ]);
  });

  it('keeps what is unlikely and what is ruled out apart', () => {
    expect(layout.rest.map(({ id }) => id)).toEqual(['virus']);
    expect(layout.ruledOut.map(({ id }) => id)).toEqual(['birds']);
  });

  it('lays the heaviest block at the fulcrum and loses no weight', () => {
    const [line] = layout.families[0]?.lines ?? [];
    expect(line?.for.map(({ decibans }) => decibans)).toEqual([9, 2]);
    expect(line?.against.map(({ decibans }) => decibans)).toEqual([3]);
    expect(line?.net).toBe(8);
  });

  it('puts reasons too narrow to touch into one block', () => {
    const [line] = layout.families[1]?.lines ?? [];
    expect(line?.for).toHaveLength(1);
    expect(line?.for[0]?.decibans).toBeCloseTo(0.5, 10);
    expect(line?.for[0]?.reasons).toHaveLength(2);
  });

  it('ties only causes that are both on the page and probably act together', () => {
    expect(layout.ties.map(({ rows }) => rows)).toEqual([[2, 5]]);
  });

  it('shows three lines and level beams when nothing has been said', () => {
    const bare = layOutWeighing(
      CAUSES.map((one) => ({ ...one, probability: one.ruledOut ? 0 : 0.01, for: [], against: [] })),
      [],
    );
    const lines = bare.families.flatMap((family) => family.lines);
    expect(lines).toHaveLength(3);
    expect(lines.every(({ net }) => net === 0)).toBe(true);
  });
});

describe('what an answer moved', () => {
  it('names the largest moves first, and none that nobody would notice', () => {
    const after = [
      cause('magnesium-short', 'food', 0.61),
      cause('aphids', 'animals', 0.6),
      cause('iron-short', 'food', 0.02),
      cause('virus', 'disease', 0.0001),
    ];
    expect(findShifts(CAUSES, after)).toEqual([
      { cause: 'iron-short', before: 0.1, after: 0.02 },
      { cause: 'aphids', before: 0.3, after: 0.6 },
    ]);
  });
});
