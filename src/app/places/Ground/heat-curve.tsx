import type { heatCurve } from '../../../garden/judge-batch.ts';
import { describeDayAndYear, describeDays } from '../../words/dates.ts';
import { BATCH_WORDS as WORDS } from '../../words/ground-batches.ts';
import { shownUnit } from '../../words/units.ts';
import { penPath, scaleOver } from './plot-scale.ts';

const [WIDTH, HEIGHT] = [340, 184];
const BOX = { left: 34, right: WIDTH - 44, top: 24, bottom: HEIGHT - 32 };

/** A heap's readings as a small curve, against the air where it is known. */
export function HeatCurve({ curve }: { readonly curve: ReturnType<typeof heatCurve> }) {
  const air = curve.flatMap(({ airCelsius }) => (airCelsius === undefined ? [] : [airCelsius]));
  const { x, y, lines } = scaleOver(
    curve.map(({ date }) => date),
    [0, ...curve.map(({ celsius }) => celsius), ...air],
    BOX,
  );
  const say = ({ date, celsius }: (typeof curve)[number]): string =>
    `${describeDayAndYear(date)}: ${WORDS.degrees(celsius)}`;
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const isOneDay = first.date === last.date;
  const lastAir = curve.filter(({ airCelsius }) => airCelsius !== undefined).at(-1);
  return (
    <svg
      class="plot small-plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={WORDS.curveSays(curve.length, say(first), say(last))}
    >
      <text class="plot-text end" x={26} y={10}>
        {shownUnit('°C')}
      </text>
      <text class={isOneDay ? 'plot-text middle' : 'plot-text'} x={x(first.date)} y={HEIGHT - 6}>
        {describeDays(first.date, first.date)}
      </text>
      {!isOneDay && (
        <text class="plot-text end" x={x(last.date)} y={HEIGHT - 6}>
          {describeDays(last.date, last.date)}
        </text>
      )}
      {lines.map(({ figure, at }) => (
        <g key={figure}>
          <path class="plot-rule" d={`M30 ${at}H${WIDTH - 44}`} />
          <text class="plot-text end" x={26} y={at + 4}>
            {figure}
          </text>
        </g>
      ))}
      <path
        class="plot-line dashed"
        d={penPath(
          curve.map(({ date, airCelsius }) =>
            airCelsius === undefined ? undefined : [x(date), y(airCelsius)],
          ),
        )}
      />
      <path class="plot-line" d={penPath(curve.map(({ date, celsius }) => [x(date), y(celsius)]))} />
      {curve.map(({ date, celsius }, at) => (
        <circle key={`${date}-${String(at)}`} class="plot-dot" cx={x(date)} cy={y(celsius)} r={3.5} />
      ))}
      <text class="plot-text" x={x(last.date) + 7} y={y(last.celsius) + 4}>
        {WORDS.legendHeap}
      </text>
      {lastAir && (
        <text class="plot-text" x={x(lastAir.date) + 7} y={y(lastAir.airCelsius!) + 4}>
          {WORDS.legendAir}
        </text>
      )}
    </svg>
  );
}
