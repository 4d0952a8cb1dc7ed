import type { TreatmentDifference, TrialResult } from '../../../../compare/side-by-side/read-trial.ts';
import type { TrialMeasure } from '../../../../compare/side-by-side/trial.ts';
import type { TrialRecord } from '../../../../garden/trial-record.ts';
import { digitsFor, figure, measureWords, nameWithUnit, wayNameOf } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { placeDots, ticksOver } from './place-dots.ts';

const [WIDE, LEFT, RIGHT] = [340, 34, 12];
const ROW = 46;
const AXIS = 26;

interface ResultPlotProps {
  readonly trial: TrialRecord;
  readonly measure: TrialMeasure;
  readonly result: TrialResult;
}

/** Above every one as a dot by its way, with the centre; below each difference with its range on an axis of its own. */
export function ResultPlot({ trial, measure, result }: ResultPlotProps) {
  const { times } = measureWords(measure);
  const values = result.points.map(({ value }) => value * times);
  const upper = ticksOver(values);
  const x = (value: number): number =>
    LEFT + ((value - upper.low) / (upper.high - upper.low)) * (WIDE - LEFT - RIGHT);
  const high = result.centres.length * ROW + AXIS;
  return (
    <figure class="trial-plot stack-close">
      <figcaption class="small soft" aria-hidden="true">
        {WORDS.plot}
      </figcaption>
      <svg viewBox={`0 0 ${WIDE} ${high}`} role="img" aria-label={WORDS.plot}>
        {upper.ticks.map((tick) => (
          <g key={tick}>
            <path class="plot-rule" d={`M${x(tick)} 4V${high - AXIS + 4}`} />
            <text class="plot-text" x={x(tick)} y={high - 8} text-anchor="middle">
              {figure(tick, upper.digits)}
            </text>
          </g>
        ))}
        {result.centres.map(({ treatment, centre }, row) => {
          const mine = result.points.filter((point) => point.treatment === treatment);
          const middle = row * ROW + ROW / 2;
          return (
            <g key={treatment}>
              <text class="plot-letter" x={8} y={middle + 6}>
                {treatment}
              </text>
              <path class="plot-centre" d={`M${x(centre * times)} ${middle - 17}V${middle + 17}`} />
              {placeDots(mine.map(({ value }) => x(value * times))).map(({ at, lift }, dot) => (
                <circle key={dot} class="plot-dot open" cx={at} cy={middle + lift} r={4.5} />
              ))}
            </g>
          );
        })}
      </svg>
      <p class="small soft plot-under">{nameWithUnit(measureWords(measure, trial))}</p>
      <Differences trial={trial} measure={measure} result={result} />
      <details>
        <summary class="small">{WORDS.inWords}</summary>
        <InWords trial={trial} measure={measure} result={result} />
      </details>
    </figure>
  );
}

function Differences({ trial, measure, result }: ResultPlotProps) {
  const { times, unit } = measureWords(measure);
  const ratio = result.scale === 'ratio';
  const scaled = (value: number): number => (ratio ? Math.log(value) : value * times);
  const same = 0;
  const ends = result.differences.flatMap(({ estimate, interval }) =>
    (interval ? [interval.low, interval.high, estimate] : [estimate]).map(scaled),
  );
  const margin =
    trial.matters === undefined ? undefined : ratio ? Math.log(trial.matters) : trial.matters * times;
  const { low, high, ticks, digits } = ticksOver([...ends, same, ...(margin ? [margin, -margin] : [])]);
  const x = (value: number): number => LEFT + ((value - low) / (high - low)) * (WIDE - LEFT - RIGHT);
  const tall = result.differences.length * 34 + AXIS;
  const says = `${WORDS.plotDifference(unit)} ${margin ? WORDS.plotMatters : ''}`;
  return (
    <>
      <svg viewBox={`0 0 ${WIDE} ${tall}`} role="img" aria-label={says}>
        {margin && (
          <rect class="plot-ahead" x={x(-margin)} y={2} width={x(margin) - x(-margin)} height={tall - AXIS} />
        )}
        <path class="plot-same" d={`M${x(same)} 2V${tall - AXIS + 2}`} />
        {ticks.map((tick) => (
          <text key={tick} class="plot-text" x={x(tick)} y={tall - 8} text-anchor="middle">
            {ratio ? `×${figure(Math.exp(tick), 2)}` : `${tick > 0 ? '+' : ''}${figure(tick, digits)}`}
          </text>
        ))}
        {result.differences.map((difference, row) => (
          <DifferenceBar
            key={`${difference.first} ${difference.second}`}
            difference={difference}
            y={row * 34 + 18}
            x={(value) => x(scaled(value))}
          />
        ))}
      </svg>
      <p class="small soft" aria-hidden="true">
        {says}
      </p>
    </>
  );
}

function DifferenceBar({
  difference: { first, second, estimate, interval },
  y,
  x,
}: {
  readonly difference: TreatmentDifference;
  readonly y: number;
  readonly x: (value: number) => number;
}) {
  return (
    <g>
      <text class="plot-text" x={2} y={y + 4}>
        {second}−{first}
      </text>
      {interval && (
        <path
          class="plot-range"
          d={`M${x(interval.low)} ${y}H${x(interval.high)}M${x(interval.low)} ${y - 6}V${y + 6}M${x(interval.high)} ${y - 6}V${y + 6}`}
        />
      )}
      <circle class="plot-dot" cx={x(estimate)} cy={y} r={5} />
    </g>
  );
}

/** The dots in words, way by way, for those who do not see the plot. */
function InWords({ trial, measure, result }: ResultPlotProps) {
  const { times, unit } = measureWords(measure);
  const digits = digitsFor(
    Math.max(...result.points.map(({ value }) => value * times)) -
      Math.min(...result.points.map(({ value }) => value * times)),
  );
  const say = (value: number): string => figure(value * times, digits);
  return (
    <ul class="stack-close">
      {result.centres.map(({ treatment, centre }) => (
        <li key={treatment}>
          {WORDS.dotsOf(
            wayNameOf(trial, treatment),
            result.points
              .filter((point) => point.treatment === treatment)
              .map(({ value }) => value)
              .sort((a, b) => a - b)
              .map(say)
              .join(', '),
            say(centre),
            unit,
          )}
        </li>
      ))}
    </ul>
  );
}
