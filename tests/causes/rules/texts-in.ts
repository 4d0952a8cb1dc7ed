/** Every text inside a value, keys and ids left out by their lack of a space. */
export function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return value.includes(' ') ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}
