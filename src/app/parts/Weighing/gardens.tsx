import { useId } from 'preact/hooks';

const WIDTH = 200;
const EACH = WIDTH / 10;

/** Ten gardens in a row, filled as far as the chance goes; the soft-ended stroke under them is its range. */
export function Gardens({
  probability,
  low,
  high,
}: {
  readonly probability: number;
  readonly low: number;
  readonly high: number;
}) {
  const id = useId();
  const from = Math.max(0, Math.min(low * WIDTH, WIDTH - 4));
  const width = Math.max(4, (high - low) * WIDTH);
  return (
    <svg class="gardens" viewBox={`0 0 ${WIDTH} 26`} aria-hidden="true" focusable="false">
      <defs>
        <linearGradient id={id}>
          <stop offset="0" stop-color="currentColor" stop-opacity="0" />
          <stop offset="0.28" stop-color="currentColor" />
          <stop offset="0.72" stop-color="currentColor" />
          <stop offset="1" stop-color="currentColor" stop-opacity="0" />
        </linearGradient>
        <clipPath id={`${id}-filled`}>
          <rect x="0" y="0" width={probability * WIDTH} height="20" />
        </clipPath>
      </defs>
      {Array.from({ length: 10 }, (_, index) => {
        const x = EACH * (index + 0.5);
        return (
          <g key={index}>
            <circle cx={x} cy="9" r="6.5" class="garden" />
            <circle cx={x} cy="9" r="6.5" class="garden-filled" clip-path={`url(#${id}-filled)`} />
          </g>
        );
      })}
      <rect x={from} y="20.5" width={width} height="4" rx="2" fill={`url(#${id})`} />
    </svg>
  );
}
