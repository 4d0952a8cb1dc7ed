import { describe, expect, it } from 'vitest';
import { letGoOfGround } from '../../src/leaf/let-go-of-ground.ts';

const SIDE = 40;
/** A square leaf of 30 by 30 with what is bare in it, each `[left, top, width, height]`. */
function leafWith(...bare: readonly (readonly [number, number, number, number])[]) {
  const outline = new Uint8Array(SIDE * SIDE);
  const box =
    ([left, top, width, height]: readonly [number, number, number, number], value: number) =>
    (to: Uint8Array): void => {
      for (let y = top; y < top + height; y++) to.fill(value, y * SIDE + left, y * SIDE + left + width);
    };
  box([5, 5, 30, 30], 255)(outline);
  const remaining = outline.slice();
  for (const piece of bare) box(piece, 0)(remaining);
  return { outline, remaining };
}
const sizeOf = (mask: Uint8Array): number => mask.filter((there) => there === 255).length;

describe('ground inside an outline', () => {
  it('is let go where it lies open to what is around the leaf', () => {
    const { outline, remaining } = leafWith([5, 15, 12, 8], [24, 24, 4, 4]);
    expect(letGoOfGround(outline, remaining, SIDE, SIDE)).toBe(true);
    expect(sizeOf(outline)).toBe(900 - 12 * 8);
    // The hole that tissue closes in stays one.
    expect(outline[25 * SIDE + 25]).toBe(255);
  });

  it('stays a hole where tissue closes it in, down to one row of it', () => {
    const { outline, remaining } = leafWith([6, 15, 12, 8]);
    expect(letGoOfGround(outline, remaining, SIDE, SIDE)).toBe(false);
    expect(sizeOf(outline)).toBe(900);
  });

  it('stays where it is the rim of the leaf, half leaf and half ground', () => {
    const { outline, remaining } = leafWith([5, 15, 1, 8]);
    expect(letGoOfGround(outline, remaining, SIDE, SIDE)).toBe(false);
    expect(sizeOf(outline)).toBe(900);
  });
});
