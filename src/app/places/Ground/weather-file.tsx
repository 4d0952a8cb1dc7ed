import { useState } from 'preact/hooks';
import { doubtWeather, spanOf } from '../../../season/doubt-weather.ts';
import {
  guessReading,
  orderInFile,
  WEATHER_COLUMNS,
  type WeatherColumn,
  type WeatherReading,
  weatherFromTable,
} from '../../../season/import-weather.ts';
import { readTable, type Table } from '../../../season/read-table.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { keepWithUndo } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import { preferences } from '../../state/preferences.ts';
import { recallReading, recordsOfFile, rememberReading } from '../../state/weather-days.ts';
import { dayOf } from '../../words/dates.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { WEATHER_WORDS as WORDS } from '../../words/ground-weather.ts';
import { weatherRecords } from './weather-page.tsx';

interface Chosen {
  readonly table: Table;
  readonly reading: WeatherReading;
  readonly remembered: boolean;
}

/** How this table is read until the grower says otherwise: as last time, but the file's own days decide their order. */
function firstReading(table: Table): { reading: WeatherReading; remembered: boolean } {
  const remembered = recallReading(table.columns);
  if (remembered) {
    const dates = orderInFile(table, remembered.columns.date) ?? remembered.dates;
    return { reading: { ...remembered, dates }, remembered: true };
  }
  const { days, temperature, length } = preferences.value.units;
  const usual = { dates: days, temperature, rain: length === 'inch' ? 'inch' : 'mm' } as const;
  return { reading: guessReading(table, usual), remembered: false };
}

/**
 * Weather from a file: columns are matched once, bad lines are named, good ones kept.
 * @param onKept the last of the days that were kept
 */
export function WeatherFile({ onKept }: { readonly onKept: (lastDay: string) => void }) {
  const [chosen, setChosen] = useState<Chosen | undefined>(undefined);
  const [says, setSays] = useState('');
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setSays('');
    try {
      const table = await readTable(await file.text());
      if (table.columns.length < 2) return setSays(WORDS.unreadable);
      setChosen({ table, ...firstReading(table) });
    } catch {
      setSays(WORDS.unreadable);
    }
  };
  return (
    <section class="stack-close rule-above">
      <h2>{WORDS.file}</h2>
      <p class="small soft">{WORDS.fileHow}</p>
      <label class="button file-button">
        {WORDS.choose}
        <input
          type="file"
          class="unseen"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            void read(file);
            event.currentTarget.value = '';
          }}
        />
      </label>
      <p role="alert">{says}</p>
      {chosen && (
        <Matching
          chosen={chosen}
          onReading={(reading) => setChosen({ ...chosen, reading })}
          onSays={setSays}
          onKept={onKept}
          onClose={() => setChosen(undefined)}
        />
      )}
    </section>
  );
}

interface MatchingProps {
  readonly chosen: Chosen;
  readonly onReading: (reading: WeatherReading) => void;
  readonly onSays: (says: string) => void;
  readonly onKept: (lastDay: string) => void;
  readonly onClose: () => void;
}

const FAULTS_SHOWN = 30;
const options = <Id extends string>(words: Readonly<Record<Id, string>>): { id: Id; says: string }[] =>
  (Object.keys(words) as Id[]).map((id) => ({ id, says: words[id] }));

function Matching({ chosen, onReading, onSays, onKept, onClose }: MatchingProps) {
  const { table, reading, remembered } = chosen;
  const today = dayOf(new Date());
  const { days, faults } = weatherFromTable(table, reading, today);
  const span = spanOf(days);
  const doubts = doubtWeather(days, today);
  const match = (column: WeatherColumn, value: string): void => {
    const { [column]: _before, ...others } = reading.columns;
    onReading({ ...reading, columns: value === '' ? others : { ...others, [column]: Number(value) } });
  };
  const keep = async (): Promise<void> => {
    if (!span) return;
    const saved = await keepWithUndo(
      recordsOfFile(days, weatherRecords(), nowStamp()),
      WORDS.keptSpan(span.count, span.from, span.to),
    );
    if (saved !== 'stored') return onSays(GROUND_WORDS.trouble[saved]);
    rememberReading(table.columns, reading);
    onSays('');
    onKept(span.to);
    onClose();
  };
  return (
    <div class="ground-form stack">
      <h3>{WORDS.match}</h3>
      {remembered && <p class="small">{WORDS.remembered}</p>}
      <div class="ground-fields">
        {WEATHER_COLUMNS.map((column) => (
          <label class="field" key={column}>
            <span>{WORDS.column[column]}</span>
            <select
              value={String(reading.columns[column] ?? '')}
              onChange={(event) => match(column, event.currentTarget.value)}
            >
              <option value="">{WORDS.notThere}</option>
              {table.columns.map((name, at) => (
                <option key={`${name}-${String(at)}`} value={String(at)}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        ))}
        <label class="field">
          <span>{WORDS.dates}</span>
          <select
            value={reading.dates}
            onChange={(event) =>
              onReading({ ...reading, dates: event.currentTarget.value as WeatherReading['dates'] })
            }
          >
            {options(WORDS.dateWords).map(({ id, says }) => (
              <option key={id} value={id}>
                {says}
              </option>
            ))}
          </select>
        </label>
      </div>
      <Segments
        legend={WORDS.temperature}
        name="temperature-unit"
        options={options(WORDS.temperatureWords)}
        value={reading.temperature}
        onChange={(temperature) => onReading({ ...reading, temperature })}
      />
      <Segments
        legend={WORDS.rain}
        name="rain-unit"
        options={options(WORDS.rainWords)}
        value={reading.rain}
        onChange={(rain) => onReading({ ...reading, rain })}
      />
      <div role="status" class="stack-close">
        <p>{WORDS.good(days.length)}</p>
        {span && <p class="figures">{WORDS.span(span)}</p>}
        {doubts.length > 0 && (
          <div class="doubts">
            <p>{WORDS.doubts}</p>
            <ul>
              {doubts.map((doubt) => (
                <li key={doubt.code}>{WORDS.doubt(doubt)}</li>
              ))}
            </ul>
          </div>
        )}
        {faults.length > 0 && <p>{WORDS.bad(faults.length)}</p>}
      </div>
      {faults.length > 0 && (
        <ul class="faults small">
          {faults.slice(0, FAULTS_SHOWN).map((fault) => (
            <li key={`${String(fault.line)}-${fault.code}`}>{WORDS.fault(fault)}</li>
          ))}
          {faults.length > FAULTS_SHOWN && <li>{WORDS.more(faults.length - FAULTS_SHOWN)}</li>}
        </ul>
      )}
      <p class="ground-actions">
        <button type="button" class="button next" disabled={days.length === 0} onClick={() => void keep()}>
          {WORDS.keep(days.length)}
        </button>
        <button type="button" class="button" onClick={onClose}>
          {WORDS.leave}
        </button>
      </p>
    </div>
  );
}
