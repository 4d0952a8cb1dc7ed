import { Segments } from '../../parts/Choice/segments.tsx';
import { type Hemisphere, prefer, preferences, type Theme } from '../../state/preferences.ts';
import { HELP_WORDS } from '../../words/help.ts';

const WORDS = HELP_WORDS.settings;
const THEMES: readonly Theme[] = ['device', 'light', 'dusk'];
const HEMISPHERES: readonly Hemisphere[] = ['north', 'south'];

export function SettingsForm() {
  const { theme, hemisphere } = preferences.value;
  return (
    <section class="stack">
      <h2>{WORDS.title}</h2>
      <Segments
        legend={WORDS.theme}
        name="theme"
        options={THEMES.map((id) => ({ id, says: WORDS.themes[id] }))}
        value={theme}
        onChange={(chosen) => prefer({ theme: chosen })}
      />
      <div>
        <Segments
          legend={WORDS.hemisphere}
          name="hemisphere"
          options={HEMISPHERES.map((id) => ({ id, says: WORDS.hemispheres[id] }))}
          value={hemisphere}
          onChange={(chosen) => prefer({ hemisphere: chosen })}
        />
        <p class="small soft">{WORDS.hemisphereWhy}</p>
      </div>
    </section>
  );
}
