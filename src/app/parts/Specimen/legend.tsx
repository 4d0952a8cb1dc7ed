import { LOOK_WORDS as WORDS } from '../../words/look.ts';

type Kind = keyof typeof WORDS.legendKinds;

/** The same hatchings as on the photo, small. */
const SWATCHES: Record<Kind, preact.JSX.Element> = {
  chlorotic: (
    <g class="swatch-dots">
      <circle cx="6" cy="6" r="2.500" />
      <circle cx="16" cy="6" r="2.500" />
      <circle cx="11" cy="14" r="2.500" />
      <circle cx="21" cy="14" r="2.500" />
    </g>
  ),
  necrotic: <path d="M3 3 21 17M3 17 21 3M12 1 23 11M1 9 12 19" />,
  missing: <path d="M5 4h14v12H5Z" stroke-dasharray="3 3" />,
  vein: <path d="M2 17C8 15 14 10 22 3M9 14 8 6M14 10l7 2" class="swatch-vein" />,
  purple: <path d="M3 4h18M3 10h18M3 16h18" />,
  white: <path d="M5 2v16M12 2v16M19 2v16" />,
};

/** In words and swatches: what the lines over the photo mean. */
export function Legend({ withHatching }: { readonly withHatching: boolean }) {
  return (
    <details class="legend">
      <summary class="small">{WORDS.legend}</summary>
      <ul class="small">
        <li>
          <svg viewBox="0 0 24 20" aria-hidden="true">
            <path d="M3 17C3 8 10 3 21 3c0 9-7 14-18 14Z" />
          </svg>
          {WORDS.legendOutline}
        </li>
        {withHatching &&
          (Object.keys(SWATCHES) as Kind[]).map((kind) => (
            <li key={kind}>
              <svg viewBox="0 0 24 20" aria-hidden="true" class={`swatch-${kind}`}>
                {SWATCHES[kind]}
              </svg>
              {WORDS.legendKinds[kind]}
            </li>
          ))}
      </ul>
    </details>
  );
}
