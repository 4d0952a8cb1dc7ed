import { beforeAll, describe, expect, it } from 'vitest';
import { withoutLocation } from '../../src/garden/backup/without-location.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import { MOST_PIXELS } from '../../src/photo/inspect-file.ts';
import { PhotoError } from '../../src/photo/types.ts';
import { filesOfEachKind, spoil } from '../pictures/spoil-file.ts';
import { seededNumbers } from '../seeded-numbers.ts';

describe('mutated picture files', () => {
  let files: Uint8Array[] = [];
  beforeAll(async () => {
    files = await filesOfEachKind(drawLeaf({ width: 64, height: 48, length: 0.8 }).pixels);
  });

  // One in ten is AVIF's, whose decoder is the slowest; the rest is shared out evenly.
  it('10,000 of them are decoded or refused with a reason, never anything else', {
    timeout: 300_000,
  }, async () => {
    const number = seededNumbers(20260618);
    const outcomes = new Map<string, number>();
    for (let made = 0; made < 10_000; made++) {
      const kind = made % 10 === 9 ? 5 : made % 5;
      const file = spoil(files[kind]!, files[(kind + 1) % files.length]!, number);
      let outcome = 'decoded';
      try {
        const { pixels } = await decodeInNode(file);
        expect(pixels.width * pixels.height).toBeLessThanOrEqual(MOST_PIXELS);
        expect(pixels.data.length).toBe(4 * pixels.width * pixels.height);
      } catch (cause) {
        if (!(cause instanceof PhotoError)) throw new Error(`file ${made}: ${String(cause)}`);
        outcome = cause.code;
      }
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    }
    // Both ways are really taken, or the files were not worth trying.
    expect(outcomes.get('decoded')).toBeGreaterThan(500);
    expect(outcomes.get('broken-picture')).toBeGreaterThan(3000);
  });

  it('10,000 of them go into a backup without their place, or not at all', () => {
    const number = seededNumbers(20260619);
    let freed = 0;
    for (let made = 0; made < 10_000; made++) {
      const kind = made % files.length;
      const file = spoil(files[kind]!, files[(kind + 1) % files.length]!, number);
      const left = withoutLocation(file);
      if (!left) continue;
      freed++;
      expect(left.length).toBeLessThanOrEqual(file.length + 64);
    }
    expect(freed).toBeGreaterThan(1000);
  });
});
