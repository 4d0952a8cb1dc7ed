const EDGE = 'M46 82C20 72 14 44 30 22C36 13 43 9 52 7C62 14 78 34 76 54C74 70 62 79 46 82Z';
const VEINS =
  'M46 82C48 58 50 30 52 12M47 68C40 62 32 57 24 55M48 54C42 46 36 41 29 38M48 66C55 60 63 57 72 56M50 44C56 38 62 35 70 35M46 82L42 92';

/** A sound leaf: what one sees when the mark is not there. */
export function SoundLeaf() {
  return (
    <span class="drawn" aria-hidden="true">
      <svg viewBox="0 0 96 96" class="plain-leaf" aria-hidden="true">
        <path d={EDGE} class="wash" />
        <path d={`${EDGE}${VEINS}`} />
      </svg>
    </span>
  );
}

/** A leaf nobody looked at: only dashes. */
export function UnseenLeaf() {
  return (
    <span class="drawn" aria-hidden="true">
      <svg viewBox="0 0 96 96" class="plain-leaf" aria-hidden="true">
        <path d={EDGE} stroke-dasharray="1 7" />
      </svg>
    </span>
  );
}
