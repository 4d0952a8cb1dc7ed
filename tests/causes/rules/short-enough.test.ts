import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../../src/causes/checks.ts';
import { COURSES } from '../../../src/causes/courses.ts';

/** A phone 360 wide shows some 28 letters a line in the size of a question (our own count). */
describe('what is to be done can be read at the bed', () => {
  it.each(CHECKS.map(({ id, says }) => ({ id, says })))('check $id: six lines', ({ says }) => {
    expect(says.length).toBeLessThanOrEqual(165);
  });

  it.each(COURSES.map(({ id, says }) => ({ id, says })))('course $id: eight lines', ({ says }) => {
    expect(says.length).toBeLessThanOrEqual(215);
  });
});
