import { useState } from 'preact/hooks';
import { dayAfter } from '../../../days/days.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import type { WeatherRecord } from '../../../garden/ground-records.ts';
import { coldLimitsOf } from '../../../season/crop-temperatures.ts';
import { meanOf } from '../../../season/daily-weather.ts';
import { cropName, findCrops } from '../../words/crops.ts';
import { dayOf, describeDayAndYear, describeDayShortly } from '../../words/dates.ts';
import { WEATHER_WORDS as WORDS } from '../../words/ground-weather.ts';
import { sayCelsius } from '../../words/units.ts';
import { penPath, scaleOver } from './plot-scale.ts';

const SPAN_DAYS = 30;
const [WIDTH, HEIGHT] = [420, 240];
const BOX = { left: 34, right: WIDTH - 58, top: 12, bottom: HEIGHT - 40 };
const LINES = [
  ['maxCelsius', WORDS.columns.max, ''],
  ['minCelsius', WORDS.columns.min, ' dashed'],
  ['soilCelsius', WORDS.columns.soil, ' dotted'],
] as const;

interface PlotProps {
  readonly garden: Garden;
  /** The last day drawn; without one the newest there is. */
  readonly until: string | undefined;
  readonly onUntil: (until: string | undefined) => void;
}

/** Lowest, highest and soil over a month, a crop's limit in it, the same in words below. */
export function WeatherPlot({ garden, until, onUntil }: PlotProps) {
  const grown = garden.plantings.find(({ clearedOn, crop }) => !clearedOn && coldLimitsOf(crop))?.crop;
  const [crop, setCrop] = useState(grown ?? '');
  const newest = garden.weather.at(-1)!.date;
  const end = until ?? newest;
  const start = dayAfter(end, 1 - SPAN_DAYS);
  const days = garden.weather.filter(({ date }) => date >= start && date <= end);
  const oldest = garden.weather[0]!.date;
  const limit = crop ? coldLimitsOf(crop)?.coldBelow : undefined;
  const isCold = (day: WeatherRecord): boolean => limit !== undefined && (meanOf(day) ?? limit) < limit;
  const name = cropName(crop).toLocaleLowerCase('en-GB');
  const coldSays = limit === undefined ? '' : WORDS.coldDays(days.filter(isCold).length, name);
  const reach = WORDS.plotHow(describeDayAndYear(days[0]?.date ?? start), describeDayAndYear(end));
  return (
    <section class="stack-close">
      <h2>{WORDS.plot}</h2>
      <p class="small soft">{reach}</p>
      <Drawing days={days} limit={limit} isCold={isCold} says={`${WORDS.plot}, ${reach}. ${coldSays}`} />
      {limit !== undefined && (
        <p class="small">
          {WORDS.limit(cropName(crop), sayCelsius(limit, 1))}. {coldSays}
        </p>
      )}
      {crop && limit === undefined && <p class="small">{WORDS.noLimit(name)}</p>}
      {(start > oldest || end < newest) && (
        <p class="ground-actions">
          <button
            type="button"
            class="button"
            disabled={start <= oldest}
            onClick={() => onUntil(dayAfter(end, -SPAN_DAYS))}
          >
            {WORDS.earlier}
          </button>
          <button
            type="button"
            class="button"
            disabled={end >= newest}
            onClick={() => {
              const next = dayAfter(end, SPAN_DAYS);
              onUntil(next >= newest ? undefined : next);
            }}
          >
            {WORDS.later}
          </button>
        </p>
      )}
      <label class="field year-choice">
        <span>{WORDS.crop}</span>
        <select value={crop} onChange={(event) => setCrop(event.currentTarget.value)}>
          <option value="">{WORDS.noCrop}</option>
          {findCrops('').map((id) => (
            <option key={id} value={id}>
              {cropName(id)}
            </option>
          ))}
        </select>
      </label>
      <details>
        <summary>{WORDS.inWords}</summary>
        <ul class="small">
          {days.map((day) => (
            <li key={day.date}>{sayDay(day, isCold(day))}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function sayDay(day: WeatherRecord, isCold: boolean): string {
  const { minCelsius, maxCelsius, meanCelsius, soilCelsius, rainMm } = day;
  const says = [
    minCelsius === undefined ? '' : WORDS.says.min(minCelsius),
    maxCelsius === undefined ? '' : WORDS.says.max(maxCelsius),
    meanCelsius === undefined ? '' : WORDS.says.mean(meanCelsius),
    soilCelsius === undefined ? '' : WORDS.says.soil(soilCelsius),
    rainMm === undefined ? '' : WORDS.says.rain(rainMm),
    isCold ? WORDS.cold : '',
  ];
  const when = `${describeDayAndYear(day.date)}${day.forecast || day.date > dayOf(new Date()) ? `, ${WORDS.expected}` : ''}`;
  return `${when}: ${says.filter(Boolean).join(', ')}`;
}

interface DrawingProps {
  readonly days: readonly WeatherRecord[];
  readonly limit: number | undefined;
  readonly isCold: (day: WeatherRecord) => boolean;
  readonly says: string;
}

function Drawing({ days, limit, isCold, says }: DrawingProps) {
  const values = days.flatMap((day) =>
    LINES.flatMap(([field]) => (day[field] === undefined ? [] : [day[field]])),
  );
  if (values.length === 0) return null;
  const { x, y, lines } = scaleOver(
    days.map(({ date }) => date),
    limit === undefined ? values : [...values, limit],
    BOX,
  );
  const ahead = days.filter(({ forecast }) => forecast);
  const half = days.length > 1 ? (BOX.right - BOX.left) / Math.max(days.length - 1, 1) / 2 : 8;
  /** A gap of days lifts the pen. */
  const pathOf = (field: (typeof LINES)[number][0]): string =>
    penPath(
      days.flatMap((day, at) => {
        const before = days[at - 1];
        const value = day[field];
        const place = value === undefined ? undefined : ([x(day.date), y(value)] as const);
        return before && dayAfter(before.date, 1) !== day.date ? [undefined, place] : [place];
      }),
    );
  const legends = apart(
    LINES.flatMap(([field, name]) => {
      const last = days.filter((day) => day[field] !== undefined).at(-1);
      return last ? [{ name, at: y(last[field]!) + 4 }] : [];
    }),
  );
  return (
    <svg class="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
      {ahead.length > 0 && (
        <g>
          <rect
            class="plot-ahead"
            x={x(ahead[0]!.date) - half}
            y={BOX.top}
            width={Math.max(x(ahead.at(-1)!.date) - x(ahead[0]!.date) + half, 6)}
            height={BOX.bottom - BOX.top}
          />
          <text class="plot-text end" x={BOX.right} y={HEIGHT - 4}>
            {WORDS.expected}
          </text>
        </g>
      )}
      {lines.map(({ figure, at }) => (
        <g key={figure}>
          <path class="plot-rule" d={`M30 ${at}H${BOX.right}`} />
          <text class="plot-text end" x={26} y={at + 4}>
            {figure}
          </text>
        </g>
      ))}
      {limit !== undefined && <path class="plot-limit" d={`M30 ${y(limit)}H${BOX.right}`} />}
      {LINES.map(([field, name, style]) => (
        <g key={name}>
          <path class={`plot-line${style}`} d={pathOf(field)} />
          {days.map((day) =>
            day[field] === undefined ? null : (
              <circle
                key={day.date}
                class={`plot-dot${day.forecast ? ' open' : ''}`}
                cx={x(day.date)}
                cy={y(day[field])}
                r={day.forecast ? 3 : 2}
              />
            ),
          )}
        </g>
      ))}
      {legends.map(({ name, at }) => (
        <text key={name} class="plot-text" x={BOX.right + 7} y={at}>
          {name}
        </text>
      ))}
      {days.filter(isCold).map(({ date }) => (
        <path key={date} class="plot-cold" d={`M${x(date) - 4} ${BOX.bottom + 8}h8l-4 8z`} />
      ))}
      <text class="plot-text" x={BOX.left} y={HEIGHT - 4}>
        {describeDayShortly(days[0]!.date)}
      </text>
      {ahead.length === 0 && days.length > 1 && (
        <text class="plot-text end" x={BOX.right} y={HEIGHT - 4}>
          {describeDayShortly(days.at(-1)!.date)}
        </text>
      )}
    </svg>
  );
}

const LINE_HEIGHT = 15;

/** Names beside the ends of lines, moved apart until none lies on another. */
function apart(
  names: readonly { readonly name: string; readonly at: number }[],
): { name: string; at: number }[] {
  let free = Number.NEGATIVE_INFINITY;
  return [...names]
    .sort((a, b) => a.at - b.at)
    .map(({ name, at }) => {
      const placed = Math.max(at, free);
      free = placed + LINE_HEIGHT;
      return { name, at: placed };
    });
}
