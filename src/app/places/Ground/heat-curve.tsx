import type { heatCurve } from '../../../garden/judge-batch.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { BATCH_WORDS as WORDS } from '../../words/ground-batches.ts';
import { penPath, scaleOver } from './plot-scale.ts';

const [WIDTH, HEIGHT] = [340, 150];

/** A heap's readings as a small curve, against the air where it is known. */
export function HeatCurve({ curve }: { readonly curve: ReturnType<typeof heatCurve> }) {
  const air = curve.flatMap(({ airCelsius }) => (airCelsius === undefined ? [] : [airCelsius]));
  const { x, y, lines } = scaleOver(
    curve.map(({ date }) => date),
    [0, ...curve.map(({ celsius }) => celsius), ...air],
    { left: 34, right: WIDTH - 44, top: 10, bottom: HEIGHT - 12 },
  );
  const say = ({ date, celsius }: (typeof curve)[number]): string =>
    `${describeDayAndYear(date)}: ${WORDS.degrees(celsius)}`;
  const last = curve.at(-1)!;
  const lastAir = curve.filter(({ airCelsius }) => airCelsius !== undefined).at(-1);
  return (
    <svg
      class="plot small-plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={WORDS.curveSays(curve.length, say(curve[0]!), say(last))}
    >
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
