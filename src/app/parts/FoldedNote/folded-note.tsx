/** Longer notes than this, in letters, would push what a page is for off the screen of a phone. */
const SHOWN = 240;

/** A note as it was written; a long one goes on where it is touched. */
export function FoldedNote({ note }: { readonly note: string }) {
  if (note.length <= SHOWN) return <p class="kept-note">{note}</p>;
  const end = note.lastIndexOf(' ', SHOWN);
  const cut = end > 0 ? end : SHOWN;
  return (
    <details class="kept-note">
      <summary>{note.slice(0, cut)} …</summary>
      <p>… {note.slice(cut).trim()}</p>
    </details>
  );
}
