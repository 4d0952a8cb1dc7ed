import { Segments } from '../../parts/Choice/segments.tsx';
import { inDemo } from '../../state/demo.ts';
import { prefer, preferences } from '../../state/preferences.ts';
import { zone as zoneOnShow } from '../../state/zone.ts';
import { HELP_WORDS } from '../../words/help.ts';

const WORDS = HELP_WORDS.settings;

const options = <Id extends string>(words: Readonly<Record<Id, string>>) =>
  (Object.keys(words) as Id[]).map((id) => ({ id, says: words[id] }));

export function SettingsForm() {
  const { theme, zone, units } = preferences.value;
  return (
    <section class="stack">
      <h2>{WORDS.title}</h2>
      <Segments
        legend={WORDS.theme}
        name="theme"
        options={options(WORDS.themes)}
        value={theme}
        onChange={(chosen) => prefer({ theme: chosen })}
      />
      <div>
        {inDemo ? (
          <>
            {/* The preference is that of one's own garden: from in here it is not to be touched. */}
            <p>{WORDS.zoneInvented(zoneOnShow.value)}.</p>
            <p class="small soft">{WORDS.zoneInventedWhy}</p>
          </>
        ) : (
          <>
            <Segments
              legend={WORDS.zone}
              name="zone"
              options={options(WORDS.zones)}
              value={zone}
              onChange={(chosen) => prefer({ zone: chosen })}
            />
            <p class="small soft">{WORDS.zoneWhy}</p>
          </>
        )}
      </div>
      <Segments
        legend={WORDS.temperature}
        name="temperature"
        options={options(WORDS.temperatures)}
        value={units.temperature}
        onChange={(temperature) => prefer({ units: { ...units, temperature } })}
      />
      <Segments
        legend={WORDS.length}
        name="length"
        options={options(WORDS.lengths)}
        value={units.length}
        onChange={(length) => prefer({ units: { ...units, length } })}
      />
      <Segments
        legend={WORDS.days}
        name="days"
        options={options(WORDS.dayOrders)}
        value={units.days}
        onChange={(days) => prefer({ units: { ...units, days } })}
      />
      <p class="small soft">{WORDS.unitsWhy}</p>
    </section>
  );
}
