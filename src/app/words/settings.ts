import { SETTINGS, type Setting, type SettingId } from '../../signs/settings.ts';
import { figureShown, inUnits, shownUnit } from './units.ts';

const settingOf = (id: string): Setting | undefined => (SETTINGS as Partial<Record<string, Setting>>)[id];

/** An answered circumstance in words: "soil a finger deep: sodden", "no horse manure went on the bed this year". */
export function describeOutcome(factor: string, outcome: string): string {
  const [id = factor, option] = factor.split(':');
  const setting = settingOf(id);
  if (!setting) return `${factor.replaceAll('-', ' ')}: ${outcome.replaceAll('-', ' ')}`;
  if (setting.kind === 'yes-no') return outcome === 'yes' ? setting.says : `${setting.says}: no`;
  if (setting.kind === 'number')
    return inUnits(setting.bands.find((band) => band.id === outcome)?.says ?? `${setting.says}: ${outcome}`);
  const says = setting.options.find((choice) => choice.id === (option ?? outcome))?.says ?? option ?? outcome;
  if (setting.kind === 'one-of') return `${setting.says}: ${says}`;
  return outcome === 'yes' ? `${setting.says}: ${says}` : `${setting.says}: not ${says}`;
}

/** What was answered, as the list of questions shows it. */
export function describeSettingValue(id: SettingId, value: unknown): string {
  const setting = settingOf(id);
  if (!setting || value === undefined) return '';
  if (setting.kind === 'yes-no') return value === true ? 'yes' : 'no';
  if (setting.kind === 'number')
    return `${String(figureShown(setting.unit, Number(value)))} ${shownUnit(setting.unit)}`;
  const say = (option: unknown): string =>
    setting.options.find((choice) => choice.id === option)?.says ?? String(option);
  return Array.isArray(value) ? (value.length > 0 ? value.map(say).join(', ') : 'none of these') : say(value);
}
