import type { LayerId } from '../../workers/lay-layers.ts';

/** The same patterns as on the photo, small. */
const SWATCHES: Record<LayerId, preact.JSX.Element> = {
  outline: <path d="M3 17C3 8 10 3 21 3c0 9-7 14-18 14Z" />,
  veins: <path d="M2 17C8 15 14 10 22 3M9 14 8 6M14 10l7 2" />,
  yellow: (
    <>
      <circle cx="6" cy="6" r="2.500" />
      <circle cx="16" cy="6" r="2.500" />
      <circle cx="11" cy="14" r="2.500" />
      <circle cx="21" cy="14" r="2.500" />
    </>
  ),
  dead: <path d="M3 3 21 17M3 17 21 3M12 1 23 11M1 9 12 19" />,
  purple: <path d="M3 4h18M3 10h18M3 16h18" />,
  white: <path d="M5 2v16M12 2v16M19 2v16" />,
  holes: <circle cx="12" cy="10" r="7" stroke-dasharray="3.500 3" />,
  edge: (
    <>
      <path d="M4 3h16v14H4Z" stroke-dasharray="3 2.500" />
      <path d="M5 8l8 8M7 4l12 12M13 4l6 6" />
    </>
  ),
};

export function Swatch({ of }: { readonly of: LayerId }) {
  return (
    <svg viewBox="0 0 24 20" aria-hidden="true" class={`layer-swatch layer-swatch-${of}`}>
      {SWATCHES[of]}
    </svg>
  );
}
