import { useState } from 'preact/hooks';
import { dayAfter } from '../../../days/days.ts';
import type { WeatherRecord } from '../../../garden/ground-records.ts';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { DayField } from '../../parts/DayField/day-field.tsx';
import { readNumber } from '../../state/edit-ground.ts';
import { garden, groundRecords, keepWithUndo } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import {
  asGridLine,
  GRID_COLUMNS,
  type GridColumn,
  type GridFault,
  type GridLine,
  readGrid,
} from '../../state/weather-days.ts';
import {
  dayOf,
  describeDay,
  describeDayAndYear,
  describeDayShortly,
  weekdayShortly,
} from '../../words/dates.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { WEATHER_WORDS as WORDS } from '../../words/ground-weather.ts';
import { figureShown, fromShown, type RecordUnit } from '../../words/units.ts';
import { WeatherFile } from './weather-file.tsx';
import { WeatherPlot } from './weather-plot.tsx';

/** Weather: what it was and what is expected, drawn, typed and read from files. */
export function WeatherPage() {
  const [shown, setShown] = useState<string | undefined>(undefined);
  const all = garden.value;
  if (!all) return <h1 tabIndex={-1}>{WORDS.title}</h1>;
  return (
    <div class="ground stack-wide">
      <div>
        <BackLink to={{ place: 'ground' }} says={GROUND_WORDS.toGround} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
      </div>
      <div class="open-pages">
        <div class="page-left">
          {all.weather.length > 0 ? (
            <WeatherPlot garden={all} until={shown} onUntil={setShown} />
          ) : (
            <p class="soft">{WORDS.none}</p>
          )}
        </div>
        <div class="page-right stack-wide">
          <Grid />
          <WeatherFile onKept={setShown} />
        </div>
      </div>
    </div>
  );
}

export const weatherRecords = (): readonly WeatherRecord[] =>
  (groundRecords.value ?? []).filter((record): record is WeatherRecord => record.kind === 'weather');

const DAYS_SHOWN = 8;
const DAYS_AHEAD = 3;

const sayFault = ({ date, code }: GridFault): string => {
  const day = describeDayAndYear(date);
  return code === 'crossed' ? WORDS.crossed(day) : code === 'beyond' ? WORDS.beyond(day) : WORDS.wrong(day);
};

/** A cell with its number turned from the unit of the records into the one shown, or back. */
function turnCell(
  column: GridColumn,
  cell: string,
  turn: (unit: RecordUnit, value: number) => number,
): string {
  const number = readNumber(cell);
  return number === undefined || Number.isNaN(number)
    ? cell
    : String(turn(column === 'rain' ? 'mm' : '°C', number));
}

/** The days of a week or so as a table to type into. What was typed stays when the days shown change. */
function Grid() {
  const today = dayOf(new Date());
  const [until, setUntil] = useState(dayAfter(today, DAYS_AHEAD));
  const [typed, setTyped] = useState<Readonly<Record<string, GridLine>>>({});
  const [says, setSays] = useState<readonly string[]>([]);
  const kept = new Map(garden.value!.weather.map((record) => [record.date, record]));
  const days = Array.from({ length: DAYS_SHOWN }, (_, at) => dayAfter(until, at + 1 - DAYS_SHOWN));
  const cell = (date: string, column: GridColumn): string =>
    typed[date]?.[column] ?? turnCell(column, asGridLine(kept.get(date))[column] ?? '', figureShown);
  const type = (date: string, column: GridColumn, value: string): void =>
    setTyped((before) => ({ ...before, [date]: { ...before[date], [column]: value } }));
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const whole = Object.fromEntries(
      Object.keys(typed).map((date) => [
        date,
        Object.fromEntries(
          GRID_COLUMNS.map((column) => [
            column,
            // What was not typed over goes in as it is kept: turned there and back it would differ by its rounding.
            typed[date]?.[column] === undefined
              ? (asGridLine(kept.get(date))[column] ?? '')
              : turnCell(column, typed[date][column], fromShown),
          ]),
        ),
      ]),
    );
    const { records, faults } = readGrid(whole, weatherRecords(), today, nowStamp());
    const troubles = faults.map(sayFault);
    if (records.length === 0) return setSays(troubles.length > 0 ? troubles : [WORDS.nothingNew]);
    const saved = await keepWithUndo(records, WORDS.kept(records.length));
    if (saved !== 'stored') return setSays([GROUND_WORDS.trouble[saved], ...troubles]);
    const bad = new Set(faults.map(({ date }) => date));
    setTyped((before) => Object.fromEntries(Object.entries(before).filter(([date]) => bad.has(date))));
    setSays(troubles);
  };
  return (
    <form class="stack-close" aria-label={WORDS.typed} noValidate onSubmit={(event) => void save(event)}>
      <h2>{WORDS.typed}</h2>
      <p class="small soft">{WORDS.typedHow()}</p>
      <DayField
        label={WORDS.until}
        wide="year-choice"
        value={until}
        onDay={(day) => {
          if (day) setUntil(day);
        }}
      />
      <div class="wide-table">
        <table class="weather-grid figures">
          <thead>
            <tr>
              <th scope="col">{WORDS.day}</th>
              {GRID_COLUMNS.map((column) => (
                <th key={column} scope="col">
                  {WORDS.columns[column]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {days.map((date) => (
              <tr key={date}>
                <th scope="row">
                  {weekdayShortly(date)} {describeDayShortly(date)}
                  {date >= today && (
                    <span class="soft small">{date === today ? WORDS.today : WORDS.expected}</span>
                  )}
                </th>
                {GRID_COLUMNS.map((column) => (
                  <td key={column}>
                    <input
                      type="text"
                      class="day-number"
                      inputMode="decimal"
                      autocomplete="off"
                      aria-label={WORDS.cell(describeDay(date, today), WORDS.columns[column])}
                      value={cell(date, column)}
                      onInput={(event) => type(date, column, event.currentTarget.value)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div role="alert">
        {says.map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
      <button type="submit" class={Object.keys(typed).length > 0 ? 'button next' : 'button'}>
        {WORDS.save}
      </button>
    </form>
  );
}
