import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';

it('the causes together explain a little more than one trouble a plant, since some act together', () => {
  const sum = KNOWLEDGE.reduce((total, { baseRate }) => total + baseRate.rate, 0);
  expect(sum).toBeGreaterThanOrEqual(1);
  expect(sum).toBeLessThanOrEqual(1.35);
});

it.each(KNOWLEDGE)('$id: rare, but not impossible', ({ baseRate }) => {
  expect(baseRate.rate).toBeGreaterThanOrEqual(0.002);
  expect(baseRate.rate).toBeLessThanOrEqual(0.08);
});
