import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { SOURCES } from '../../../src/causes/sources.ts';

const ADMISSIONS = ['common practice, no source', 'from memory'];

/** Every `source` anywhere inside a value, with the path to it. */
function sourcesIn(value: unknown, path: string): { path: string; source: unknown }[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'source' ? [{ path, source: inner }] : sourcesIn(inner, `${path}.${key}`),
  );
}

it.each(KNOWLEDGE)('$id: every statement names a source of the list, or admits that it has none', (cause) => {
  const sources = sourcesIn(cause, cause.id);
  expect(sources.length).toBeGreaterThan(5);
  for (const { path, source } of sources) {
    const resolves = typeof source === 'string' && (source in SOURCES || ADMISSIONS.includes(source));
    expect(resolves, `${path} has the source "${source}"`).toBe(true);
  }
});

it('every sign, leaning, loss, remedy, difference and recovery has a source of its own', () => {
  for (const { id, signs, leanings, remedies, mistakenFor, tempered, losses, recovery } of KNOWLEDGE) {
    const statements = [
      ...signs,
      ...leanings,
      ...remedies,
      ...mistakenFor,
      ...(tempered ?? []),
      losses,
      recovery,
    ];
    for (const { source } of statements) expect(source, id).toMatch(/\S/);
  }
});
