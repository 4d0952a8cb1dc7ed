import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sha256 } from '../../src/classifier/sha-256.ts';

it('gives the digest that Node gives', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
    }),
    { seed: 11, numRuns: 200 },
  );
});
