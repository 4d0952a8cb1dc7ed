import type { PotScored, PotTestRecord } from '../../../../garden/ground-records.ts';
import { describeDayAndYear, describeDayShortly } from '../../../words/dates.ts';
import { READING_WORDS } from '../../../words/pot-test-reading.ts';
import { toShown } from '../../../words/units.ts';
import { looksRead } from './looks-read.ts';

const WORDS = READING_WORDS.plots;
type Key = 'injury' | 'heightMm' | 'emerged';
type Role = 'test' | 'control';

/**
 * Injury, height and what is up, as far as it was noted: each pot as a dot, the load beside clean mix, look by look. A look that can still
 * be scored is left out: a dot that moves with a score tells what its pot holds.
 */
export function PotPlots({ test }: { readonly test: PotTestRecord }) {
  const days = looksRead(test);
  if (days.length === 0) return null;
  return (
    <section class="pot-plots">
      {(['injury', 'heightMm', 'emerged'] as const).map((key) => (
        <PotPlot key={key} of={key} test={test} days={days} />
      ))}
    </section>
  );
}

/** Of a pot at a look; seedlings as parts of 100 sown. */
function partOf(key: Key, score: PotScored, seeds: number): number | undefined {
  if (key === 'emerged') return (100 * score.emerged) / seeds;
  const { heightMm, injury } = score;
  if (key === 'injury') return injury;
  return heightMm === undefined ? undefined : toShown('mm', heightMm);
}

const [WIDE, HIGH, LEFT, TOP, BELOW] = [340, 170, 36, 12, 40];
const APART = 9;

function PotPlot({
  of,
  test,
  days,
}: {
  readonly of: Key;
  readonly test: PotTestRecord;
  readonly days: readonly string[];
}) {
  const valuesAt = (day: string, role: Role): number[] =>
    test.pots
      .filter((pot) => pot.role === role)
      .flatMap(({ id, seeds }) => {
        const score = test.scores.find((one) => one.date === day && one.potId === id);
        return (score && partOf(of, score, seeds)) ?? [];
      })
      .sort((a, b) => a - b);
  const shown = days.filter((day) => valuesAt(day, 'test').length + valuesAt(day, 'control').length > 0);
  if (shown.length === 0) return null;
  const all = shown.flatMap((day) => [...valuesAt(day, 'test'), ...valuesAt(day, 'control')]);
  const step = toShown('mm', 50) === 50 ? 50 : 2;
  const most = of === 'heightMm' ? Math.max(step, Math.ceil(Math.max(...all) / step) * step) : 100;
  const y = (value: number): number => TOP + (1 - value / most) * (HIGH - TOP - BELOW);
  const wide = (WIDE - LEFT) / shown.length;
  const inWords = (day: string, role: Role): string =>
    valuesAt(day, role)
      .map((value) => String(most < 50 ? Math.round(value * 10) / 10 : Math.round(value)))
      .join(', ');
  return (
    <figure class="pot-plot">
      <figcaption class="list-title">{WORDS.of[of]()}</figcaption>
      <svg viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={WORDS.says(WORDS.of[of](), shown.length)}>
        {[0, most / 2, most].map((value) => (
          <g key={value}>
            <path class="plot-rule" d={`M${LEFT} ${y(value)}H${WIDE}`} />
            <text class="plot-text end" x={LEFT - 6} y={y(value) + 4}>
              {value}
            </text>
          </g>
        ))}
        {shown.map((day, at) => (
          <g key={day}>
            {(['control', 'test'] as const).map((role, side) => {
              const middle = LEFT + wide * (at + 0.3 + side * 0.4);
              return spread(valuesAt(day, role)).map(({ value, shift }, index) => (
                <Dot
                  // The dots of one look stand in order and never move.
                  key={`${role} ${index}`}
                  of={role}
                  x={middle + shift}
                  y={y(value)}
                />
              ));
            })}
            <text class="plot-text middle" x={LEFT + wide * (at + 0.5)} y={HIGH - 22}>
              {describeDayShortly(day)}
            </text>
          </g>
        ))}
        <Dot of="control" x={LEFT + 8} y={HIGH - 6} />
        <text class="plot-text" x={LEFT + 18} y={HIGH - 2}>
          {WORDS.clean}
        </text>
        <Dot of="test" x={LEFT + 108} y={HIGH - 6} />
        <text class="plot-text" x={LEFT + 118} y={HIGH - 2}>
          {WORDS.load}
        </text>
      </svg>
      <details>
        <summary class="small">{WORDS.inWords}</summary>
        <ul class="small">
          {shown.map((day) => (
            <li key={day}>
              {WORDS.line(describeDayAndYear(day), inWords(day, 'test'), inWords(day, 'control'))}
            </li>
          ))}
        </ul>
      </details>
    </figure>
  );
}

/** Clean mix is a ring, the load a filled square: they differ without colour. */
function Dot({ of: role, x, y }: { readonly of: Role; readonly x: number; readonly y: number }) {
  return role === 'control' ? (
    <circle class="plot-dot open" cx={x} cy={y} r="4.5" />
  ) : (
    <rect class="plot-dot" x={x - 4} y={y - 4} width="8" height="8" />
  );
}

/** Pots with the same value stand side by side. */
function spread(values: readonly number[]): { readonly value: number; readonly shift: number }[] {
  return values.map((value, at) => {
    const same = values.filter((other) => other === value).length;
    const place = values.slice(0, at).filter((other) => other === value).length;
    return { value, shift: (place - (same - 1) / 2) * APART };
  });
}
