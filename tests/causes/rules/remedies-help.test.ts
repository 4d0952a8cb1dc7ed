import { describe, expect, it } from 'vitest';
import { COURSES } from '../../../src/causes/courses.ts';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';

const courseIds: readonly string[] = COURSES.map(({ id }) => id);

describe.each(KNOWLEDGE)('$id', ({ losses, tempered, remedies }) => {
  it('waiting and then treating never loses more than doing nothing', () => {
    for (const { leave, watch } of [losses, ...(tempered ?? [])]) {
      expect(watch).toBeLessThanOrEqual(leave);
      expect(watch).toBeGreaterThanOrEqual(0);
    }
  });

  it('a remedy exists, stands once, and leaves no more than is lost without it', () => {
    for (const { course, remains } of remedies) {
      expect(courseIds).toContain(course);
      expect(remains).toBeGreaterThanOrEqual(0);
      expect(remains).toBeLessThanOrEqual(losses.leave);
    }
    expect(new Set(remedies.map(({ course }) => course)).size).toBe(remedies.length);
  });

  it('gives a reason for every loss', () => {
    for (const { because } of [losses, ...(tempered ?? []), ...remedies]) expect(because).toMatch(/\w+ \w+/);
  });
});
