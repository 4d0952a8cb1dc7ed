import { effect, signal } from '@preact/signals';
import { NETWORK_TROUBLES } from '../../classifier/types.ts';
import type { Zone } from '../../days/growing-year.ts';
import { METRIC, type Units, units } from '../words/units.ts';

export type Theme = 'device' | 'light' | 'dusk';

/** Why the network of signs that was switched on is not used: its own troubles, no signal, or a browser that does not keep it. */
export const NETWORK_FAULTS = [...NETWORK_TROUBLES, 'network-unreachable', 'network-not-kept'] as const;
export type NetworkFault = (typeof NETWORK_FAULTS)[number];

export interface Preferences {
  readonly theme: Theme;
  readonly zone: Zone;
  readonly units: Units;
  /** Whether the camera's hatching is shown on photos. */
  readonly showHatching: boolean;
  /** Whether the network of signs is wanted; a fault where it was and cannot be used. */
  readonly network: 'off' | 'on' | NetworkFault;
}

const KEY = 'bedside-preferences';
/** What was guessed at an earlier start: see `usualHere`. */
const USUAL_KEY = 'bedside-usual';

/** What holds where nobody said: a guess from the time zone and the language of the browser. */
export interface Usual {
  readonly zone: Zone;
  readonly units: Units;
}

/** Time zones south of the equator with a winter worth the name (IANA names, from memory): only a first guess. */
const SOUTHERN =
  /^(Australia|Antarctica)\/|^Pacific\/(Auckland|Chatham)|^Africa\/(Johannesburg|Maseru|Mbabane|Harare|Lusaka|Maputo|Windhoek|Gaborone)|^America\/(Argentina|Santiago|Montevideo|Asuncion|Sao_Paulo|Punta_Arenas|Buenos_Aires)/;

/** Time zones of lowlands without a winter (IANA names, from memory): only a first guess, hills within them may have one. */
const TROPICAL =
  /^Australia\/Darwin|^Asia\/(Singapore|Kuala_Lumpur|Kuching|Jakarta|Makassar|Manila|Bangkok|Ho_Chi_Minh|Saigon|Phnom_Penh|Vientiane|Yangon|Colombo|Brunei)|^Africa\/(Lagos|Accra|Abidjan|Dakar|Kampala|Kinshasa|Douala|Libreville|Dar_es_Salaam|Mogadishu|Freetown|Monrovia|Conakry|Bamako)|^America\/(Bogota|Panama|Caracas|Guayaquil|Manaus|Belem|Fortaleza|Recife|Bahia|Guyana|Paramaribo|Cayenne|Puerto_Rico|Jamaica|Santo_Domingo|Port_of_Spain|Barbados|Martinique|Guatemala|Managua|Costa_Rica|El_Salvador|Tegucigalpa)|^Pacific\/(Honolulu|Fiji|Guam|Port_Moresby|Tahiti|Apia|Noumea)/;

const ZONES = ['north', 'south', 'tropics'] as const satisfies readonly Zone[];

/** What a device that says nothing else is taken for: `north` where its time zone is none of those above. */
export function guessZone(timeZone: string): Zone {
  if (TROPICAL.test(timeZone)) return 'tropics';
  return SOUTHERN.test(timeZone) ? 'south' : 'north';
}

/** Countries that read air in Fahrenheit (Unicode CLDR, unit preferences; from memory), and of these the one that measures in inches. */
const FAHRENHEIT = /[-_](US|BS|BZ|KY|LR|PW|FM|MH)\b/;
const INCHES = /[-_](US|LR)\b/;

/** What is usual where the browser's language is spoken. @param language BCP 47, such as `en-US` */
export function guessUnits(language: string): Units {
  let isMonthFirst = false;
  try {
    const parts = new Intl.DateTimeFormat(language).formatToParts(0).map(({ type }) => type);
    isMonthFirst = parts.indexOf('month') < parts.indexOf('day') && parts.indexOf('year') > 0;
  } catch {
    // A language that the browser cannot name leaves the day before the month.
  }
  return {
    temperature: FAHRENHEIT.test(language) ? 'fahrenheit' : METRIC.temperature,
    length: INCHES.test(language) ? 'inch' : METRIC.length,
    days: isMonthFirst ? 'month-first' : METRIC.days,
  };
}

const among = <T extends string>(options: readonly T[], found: unknown, usual: T): T =>
  options.find((option) => option === found) ?? usual;

/** @param timeZone IANA name @param language BCP 47 */
export const guessUsual = (timeZone: string, language: string): Usual => ({
  zone: guessZone(timeZone),
  units: guessUnits(language),
});

function parseStored(stored: string | null): Record<string, unknown> {
  try {
    const parsed: unknown = JSON.parse(stored ?? '{}');
    if (typeof parsed === 'object' && parsed !== null) return parsed as Record<string, unknown>;
  } catch {
    // Unreadable preferences are no loss: the defaults hold.
  }
  return {};
}

const readUsual = (found: Record<string, unknown>, usual: Usual): Usual => {
  const said = (found.units ?? {}) as Partial<Record<keyof Units, unknown>>;
  return {
    // It was called by the half of the earth before there was a third choice.
    zone: among(ZONES, found.zone ?? found.hemisphere, usual.zone),
    units: {
      temperature: among(['celsius', 'fahrenheit'], said.temperature, usual.units.temperature),
      length: among(['metric', 'inch'], said.length, usual.units.length),
      days: among(['day-first', 'month-first'], said.days, usual.units.days),
    },
  };
};

/** What was stored, made whole. */
export function readPreferences(stored: string | null, usual: Usual): Preferences {
  const found = parseStored(stored);
  return {
    theme: among(['device', 'light', 'dusk'], found.theme, 'device'),
    ...readUsual(found, usual),
    showHatching: found.showHatching !== false,
    network: among(['off', 'on', ...NETWORK_FAULTS], found.network, 'off'),
  };
}

/** Without a browser (tests) the usual of the metric world. */
const navigatorLanguage = (): string =>
  typeof navigator === 'undefined' || typeof document === 'undefined' ? 'en-GB' : navigator.language;

function load(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function store(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing still follows the choice until it is closed.
  }
}

/** Cheap to know, and enough to see that a phone has travelled or changed its language: minutes to UTC in winter and summer. */
const whereabouts = (): string =>
  [
    navigatorLanguage(),
    new Date(2001, 0, 1).getTimezoneOffset(),
    new Date(2001, 6, 1).getTimezoneOffset(),
  ].join(' ');

/**
 * The first use of the browser's names for time zones and dates takes a slow phone 200 ms, so a start goes by the guess of the last
 * one as long as the phone is where it was. A guess that was spoilt is made anew.
 */
function usualHere(): Usual {
  const here = whereabouts();
  const last = parseStored(load(USUAL_KEY));
  const zone = ZONES.find((one) => one === last.zone);
  if (last.here === here && zone && last.units) return readUsual(last, { zone, units: METRIC });
  const usual = guessUsual(Intl.DateTimeFormat().resolvedOptions().timeZone ?? '', navigatorLanguage());
  store(USUAL_KEY, { here, ...usual });
  return usual;
}

export const preferences = signal<Preferences>(readPreferences(load(KEY), usualHere()));
effect(() => {
  units.value = preferences.value.units;
});

export function prefer(change: Partial<Preferences>): void {
  preferences.value = { ...preferences.value, ...change };
  store(KEY, preferences.value);
}

/** Tells the stylesheet which theme was chosen; without a choice it follows the device. */
export function followTheme(): void {
  effect(() => {
    const { theme } = preferences.value;
    if (theme === 'device') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  });
}
