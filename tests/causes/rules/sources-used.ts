/** Keys of the source list that a text never cites; a citation beside a formula or a test counts as use. */
export function unusedSources(keys: readonly string[], text: string): string[] {
  return keys.filter((key) => !new RegExp(`(?<![A-Z0-9-])${key}(?![A-Z0-9-])`).test(text));
}
