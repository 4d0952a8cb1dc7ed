import { effect, signal } from '@preact/signals';

export type Theme = 'device' | 'light' | 'dusk';
export type Hemisphere = 'north' | 'south';

export interface Preferences {
  readonly theme: Theme;
  readonly hemisphere: Hemisphere;
  /** Whether the camera's hatching is shown on photos. */
  readonly showHatching: boolean;
}

const KEY = 'bedside-preferences';

/** Time zones south of the equator with a winter worth the name (IANA names, from memory): only a first guess. */
const SOUTHERN =
  /^(Australia|Antarctica)\/|^Pacific\/(Auckland|Chatham)|^Africa\/(Johannesburg|Maseru|Mbabane|Harare|Lusaka|Maputo|Windhoek|Gaborone)|^America\/(Argentina|Santiago|Montevideo|Asuncion|Sao_Paulo|Punta_Arenas|Buenos_Aires)/;

export const guessHemisphere = (timeZone: string): Hemisphere =>
  SOUTHERN.test(timeZone) ? 'south' : 'north';

/** What was stored, made whole. */
export function readPreferences(stored: string | null, timeZone: string): Preferences {
  let found: Partial<Record<keyof Preferences, unknown>> = {};
  try {
    const parsed: unknown = JSON.parse(stored ?? '{}');
    if (typeof parsed === 'object' && parsed !== null) found = parsed;
  } catch {
    // Unreadable preferences are no loss: the defaults hold.
  }
  return {
    theme: found.theme === 'light' || found.theme === 'dusk' ? found.theme : 'device',
    hemisphere:
      found.hemisphere === 'north' || found.hemisphere === 'south'
        ? found.hemisphere
        : guessHemisphere(timeZone),
    showHatching: found.showHatching !== false,
  };
}

function load(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

export const preferences = signal<Preferences>(
  readPreferences(load(), Intl.DateTimeFormat().resolvedOptions().timeZone ?? ''),
);

export function prefer(change: Partial<Preferences>): void {
  preferences.value = { ...preferences.value, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences.value));
  } catch {
    // A browser that keeps nothing still follows the choice until it is closed.
  }
}

/** Tells the stylesheet which theme was chosen; without a choice it follows the device. */
export function followTheme(): void {
  effect(() => {
    const { theme } = preferences.value;
    if (theme === 'device') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  });
}
