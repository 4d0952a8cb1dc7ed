/** The few small marks of the app itself, drawn in the same line as everything else. */
const MARKS = {
  /** A steelyard with a leaf for its load: the tool weighs. Also the icon, see `public/icons/bedside.svg`. */
  bedside: (
    <>
      <path d="M5 10.5 27 6.5" />
      <path d="M16 8.5v18M11 26.5h10" />
      <path d="M8 10v4.5" />
      <path d="M8 14.5c-4 2.5-4.5 6-2.5 9 4-1 5.500-4.500 2.500-9Z" />
      <path d="M8 14.500c-.4 3-1 5.500-2.500 9" />
      <rect x="22" y="8" width="5" height="5" class="filled" />
    </>
  ),
  help: (
    <>
      <circle cx="16" cy="16" r="12" />
      <path d="M12.200 12.800c0-5 7.800-5 7.800-.4 0 3-4 3.200-4 6.400" />
      <path d="M16 22.800v.4" />
    </>
  ),
  pin: (
    <>
      <circle cx="16" cy="10" r="5.500" class="filled" />
      <path d="M16 15.500V27" />
    </>
  ),
} as const;

export function Mark({ of }: { readonly of: keyof typeof MARKS }) {
  return (
    <svg viewBox="0 0 32 32" class="mark" aria-hidden="true" focusable="false">
      {MARKS[of]}
    </svg>
  );
}
