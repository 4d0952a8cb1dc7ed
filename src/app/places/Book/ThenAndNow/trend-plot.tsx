import { fitTrend, type TrendPoint } from '../../../../compare/over-time/fit-trend.ts';
import { daysBetween } from '../../../../days/days.ts';
import type { MeasureId } from '../../../../leaf/measures.ts';
import {
  describeTrend,
  nameOfMeasure,
  sayMeasure,
  scaleOf,
  CHANGE_PAGE_WORDS as WORDS,
} from '../../../words/changes.ts';
import { describeDayAndYear } from '../../../words/dates.ts';

const GIVE_OR_TAKE = 1.2816;
const [WIDE, HIGH, LEFT, BELOW, ROOM] = [320, 150, 44, 24, 12];

/** One measure over all looks: points with bars for their doubt, the straight line through them; the same in words. */
export function TrendPlot({
  id,
  points,
}: {
  readonly id: MeasureId;
  readonly points: readonly TrendPoint[];
}) {
  const trend = fitTrend(points);
  const first = points[0]?.date ?? '';
  const span = Math.max(1, daysBetween(first, points.at(-1)?.date ?? first));
  const { times, digits } = scaleOf(id);
  // A share can be neither less than nothing nor more than all.
  const isShare = times === 100;
  const held = (value: number): number => (isShare ? Math.min(1, Math.max(0, value)) : value);
  const bars = points.map(({ value, se }) => [
    held(value - GIVE_OR_TAKE * se),
    held(value + GIVE_OR_TAKE * se),
  ]);
  const low = Math.min(...bars.map(([least = 0]) => least));
  const high = Math.max(...bars.map(([, most = 0]) => most));
  const x = (date: string): number =>
    LEFT + ROOM + (daysBetween(first, date) / span) * (WIDE - LEFT - 2 * ROOM);
  const y = (value: number): number =>
    ROOM + ((high - value) / (high - low || 1)) * (HIGH - BELOW - 2 * ROOM);
  return (
    <div class="stack-close">
      <svg
        class="trend"
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        aria-label={WORDS.plot(nameOfMeasure(id), points.length)}
      >
        <path class="trend-axis" d={`M${LEFT} ${ROOM / 2}V${HIGH - BELOW}H${WIDE}`} />
        {[low, high].map((value) => (
          <text key={value} x={LEFT - 6} y={y(value) + 4} text-anchor="end">
            {(value * times).toFixed(digits)}
          </text>
        ))}
        {trend && (
          <path
            class="trend-line"
            d={`M${x(first)} ${y(trend.from)}L${x(points.at(-1)?.date ?? first)} ${y(trend.to)}`}
          />
        )}
        {points.map(({ date, value, se }, at) => (
          <g key={date + String(at)}>
            <path
              class="trend-doubt"
              d={`M${x(date)} ${y(held(value - GIVE_OR_TAKE * se))}V${y(held(value + GIVE_OR_TAKE * se))}`}
            />
            <circle class="trend-point" cx={x(date)} cy={y(value)} r="4" />
          </g>
        ))}
      </svg>
      {trend && <p>{describeTrend(id, trend)}</p>}
      <ul class="small">
        {points.map(({ date, ...measured }, at) => (
          <li key={date + String(at)}>
            {describeDayAndYear(date)}: {sayMeasure(id, measured)}
          </li>
        ))}
      </ul>
    </div>
  );
}
