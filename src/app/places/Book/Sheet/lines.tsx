/** A plain list of sentences. */
export function Lines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <ul class="sheet-lines">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
