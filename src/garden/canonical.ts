import { compareWords } from './loose.ts';

/** JSON with its keys in order: two values are the same exactly when this is. `undefined` parts count as absent. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item ?? null)).join()}]`;
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value)
      .filter(([, part]) => part !== undefined)
      .sort(([a], [b]) => compareWords(a, b))
      .map(([key, part]) => `${JSON.stringify(key)}:${canonical(part)}`);
    return `{${parts.join()}}`;
  }
  return JSON.stringify(value) ?? 'null';
}
