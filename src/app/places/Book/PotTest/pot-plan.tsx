import type { PotSown } from '../../../../garden/ground-records.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';

const WORDS = POT_WORDS.card;
/** A pair of neighbours is so wide, and so many pairs stand in a row of the drawing. */
const [PAIR, POT, HIGH, A_ROW] = [124, 56, 92, 3];

/** The pots from above, pair by pair, each in its saucer; the words in them say what they hold. */
export function PotPlan({ pots }: { readonly pots: readonly PotSown[] }) {
  const pairs = Math.ceil(pots.length / 2);
  const columns = Math.min(A_ROW, pairs);
  return (
    <svg
      class="pot-plan"
      viewBox={`0 0 ${columns * PAIR} ${Math.ceil(pairs / A_ROW) * HIGH}`}
      role="img"
      aria-label={WORDS.places}
    >
      {pots.map(({ id, label, role }, at) => {
        const pair = Math.floor(at / 2);
        const x = (pair % A_ROW) * PAIR + 32 + (at % 2) * POT;
        const y = Math.floor(pair / A_ROW) * HIGH + 32;
        return (
          <g key={id} class={`plan-pot ${role}`}>
            <circle class="plan-saucer" cx={x} cy={y} r="26" />
            <circle class="plan-rim" cx={x} cy={y} r="20" />
            <text x={x} y={y + 6}>
              {label}
            </text>
            <text class="plan-holds" x={x} y={y + 44}>
              {role === 'test' ? WORDS.load : WORDS.clean}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
