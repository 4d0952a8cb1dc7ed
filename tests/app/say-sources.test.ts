import { describe, expect, it } from 'vitest';
import { saySources } from '../../src/app/words/say-sources.ts';
import { garden, record } from '../garden/small-garden.ts';

const load = (more: object = {}) =>
  record('batch', 'load', {
    name: 'Stable manure',
    what: 'horse-manure',
    given: [{ id: 'g', bedId: 'long', date: '2026-04-15', depthCm: 5, how: 'mixed-in' }],
    ...more,
  });
const says = (batch: ReturnType<typeof load>): string =>
  saySources(
    garden(record('bed', 'long', { name: 'Long bed', order: 1 }), batch),
    [{ kind: 'batch', id: 'load' }],
    {
      bedId: 'long',
      day: '2026-06-10',
    },
  );

describe('where an answer from the records comes from', () => {
  it('names the load, how much of it went on, where and when', () => {
    expect(says(load())).toBe('Stable manure, 5 cm mixed in, on Long bed, Wednesday 15 April');
  });

  it('says so when the load is under suspicion, and no longer once it is released', () => {
    const suspicion = { state: 'suspected', on: '2026-06-01', why: '' };
    expect(says(load({ suspicion }))).toMatch(/^Stable manure \(under suspicion\), 5 cm/);
    expect(says(load({ suspicion: { ...suspicion, state: 'released' } }))).toMatch(/^Stable manure, 5 cm/);
  });
});
