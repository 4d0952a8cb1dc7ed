import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { CAUSES } from '../../../src/signs/vocabulary.ts';

const ids: readonly string[] = CAUSES.map(({ id }) => id);

describe.each(KNOWLEDGE)('$id', ({ id, mistakenFor }) => {
  it('names two to four other causes that it is mistaken for', () => {
    const others = mistakenFor.map(({ cause }) => cause);
    expect(others.length).toBeGreaterThanOrEqual(2);
    expect(others.length).toBeLessThanOrEqual(4);
    expect(new Set(others).size).toBe(others.length);
    for (const cause of others) {
      expect(ids).toContain(cause);
      expect(cause).not.toBe(id);
    }
  });

  it('says in a sentence what tells them apart', () => {
    for (const { tellsApart } of mistakenFor) expect(tellsApart).toMatch(/^[A-Z].{15,}[.]$/);
  });
});
