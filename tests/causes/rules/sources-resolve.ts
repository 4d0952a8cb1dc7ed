import { SOURCES } from '../../../src/causes/sources.ts';
import type { Rule } from './rule.ts';

const ADMISSIONS = ['common practice, no source', 'from memory'];

/** Every `source` anywhere inside a value, with the path to it. */
function sourcesIn(value: unknown, path: string): { path: string; source: unknown }[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'source' ? [{ path, source: inner }] : sourcesIn(inner, `${path}.${key}`),
  );
}

export const sourcesResolve: Rule = {
  name: 'sources resolve',
  says: 'every sign, leaning, loss, remedy, difference, recovery and base rate names a source of the list, or admits that it has none',
  check: (causes) =>
    causes.flatMap((cause) => {
      const { id, signs, leanings, remedies, mistakenFor, tempered, losses, recovery, baseRate } = cause;
      const statements = [...signs, ...leanings, ...remedies, ...mistakenFor, ...(tempered ?? [])];
      return [
        ...[...statements, losses, recovery, baseRate]
          .filter((statement) => !statement.source)
          .map((statement) => `${id}: no source for ${JSON.stringify(statement)}`),
        ...sourcesIn(cause, id)
          .filter(({ source }) => !(String(source) in SOURCES) && !ADMISSIONS.includes(String(source)))
          .map(({ path, source }) => `${path}: no source "${source}" in the list`),
      ];
    }),
};
