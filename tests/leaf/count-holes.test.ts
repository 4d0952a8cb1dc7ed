import { describe, expect, it } from 'vitest';
import { countHoles, LEAST_HOLE } from '../../src/leaf/count-holes.ts';
import { settleBareGround } from '../../src/leaf/settle-bare-ground.ts';

const SIDE = 220;
/** A square leaf of 200 × 200 px within a frame, and what is cut out of it: x, y, width, height. */
function leafWith(gaps: readonly (readonly [number, number, number, number])[]): [Uint8Array, Uint8Array] {
  const outline = new Uint8Array(SIDE * SIDE);
  for (let y = 10; y < 210; y++) outline.fill(255, y * SIDE + 10, y * SIDE + 210);
  const remaining = outline.slice();
  for (const [x, y, w, h] of gaps) {
    for (let row = y; row < y + h; row++) remaining.fill(0, row * SIDE + x, row * SIDE + x + w);
  }
  return [outline, remaining];
}
const count = (gaps: readonly (readonly [number, number, number, number])[]) =>
  countHoles(...leafWith(gaps), SIDE, SIDE);

describe('countHoles', () => {
  // 40,000 px of leaf: a hole counts from 8 px.
  it('counts pieces that do not touch', () => {
    expect(LEAST_HOLE * 40_000).toBe(8);
    expect(count([]).value).toBe(0);
    expect(
      count([
        [30, 30, 20, 20],
        [51, 30, 20, 20],
        [90, 90, 5, 4],
      ]).value,
    ).toBe(3);
  });

  it('takes holes that meet at a corner for one, and leaves out the very small', () => {
    expect(
      count([
        [30, 30, 20, 20],
        [50, 50, 20, 20],
      ]).value,
    ).toBe(1);
    expect(count([[30, 30, 7, 1]]).value).toBe(0);
    expect(count([[30, 30, 8, 1]]).value).toBe(1);
  });

  it('is less sure where holes are near the least size', () => {
    const large = count([
      [30, 30, 20, 20],
      [90, 90, 20, 20],
    ]);
    const small = count([
      [30, 30, 3, 3],
      [90, 90, 3, 3],
    ]);
    expect(small.value).toBe(large.value);
    expect(small.se).toBeGreaterThan(large.se);
  });
});

describe('settleBareGround', () => {
  const PAPER = { L: 94, a: 0, b: 2 };
  const LEAF = { L: 42, a: -15, b: 30 };
  /** The leaf with patches of other colours, each a place as above. */
  function settle(
    patches: readonly {
      at: readonly [number, number, number, number];
      colour: typeof LEAF;
      seen?: boolean;
    }[],
  ): Uint8Array {
    const [outline] = leafWith([]);
    const planes = {
      L: new Float32Array(SIDE * SIDE),
      a: new Float32Array(SIDE * SIDE),
      b: new Float32Array(SIDE * SIDE),
    };
    const seen = new Uint8Array(SIDE * SIDE);
    const leaf = outline.map((v) => (v === 255 ? 1 : 0));
    const put = (i: number, { L, a, b }: typeof LEAF): void => {
      planes.L[i] = L;
      planes.a[i] = a;
      planes.b[i] = b;
    };
    for (let i = 0; i < SIDE * SIDE; i++) put(i, outline[i] === 255 ? LEAF : PAPER);
    for (const { at, colour, seen: isSeen } of patches) {
      const [x, y, w, h] = at;
      for (let row = y; row < y + h; row++) {
        for (let i = row * SIDE + x; i < row * SIDE + x + w; i++) {
          put(i, colour);
          if (isSeen !== true) continue;
          seen[i] = 1;
          leaf[i] = 0;
        }
      }
    }
    const lab = { width: SIDE, height: SIDE, ...planes };
    const left = settleBareGround(lab, outline, seen, leaf, PAPER);
    return outline.map((v, i) => (v === 255 && left[i] !== 255 ? 255 : 0));
  }
  const area = (mask: Uint8Array): number => mask.reduce((sum, v) => sum + (v === 255 ? 1 : 0), 0);

  it('takes the shadow in a hole for ground, dark as it is', () => {
    const gone = settle([
      { at: [60, 60, 30, 30], colour: PAPER, seen: true },
      { at: [90, 60, 5, 30], colour: { L: 55, a: -2, b: 5 } },
    ]);
    expect(area(gone)).toBe(35 * 30);
  });

  it('sees a hole of few pixels that is nowhere pure ground', () => {
    const blend = { L: 70, a: -6, b: 13 };
    expect(area(settle([{ at: [60, 60, 4, 4], colour: blend }]))).toBe(16);
  });

  it('leaves brown spots, and pale patches that are large, with the leaf', () => {
    expect(area(settle([{ at: [60, 60, 5, 5], colour: { L: 35, a: 10, b: 20 } }]))).toBe(0);
    expect(area(settle([{ at: [60, 60, 40, 40], colour: { L: 70, a: -6, b: 13 } }]))).toBe(0);
  });
});
