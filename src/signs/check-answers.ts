import { isAskable } from './members-of.ts';
import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import type { Answers } from './types.ts';
import { CROPS, type CropId } from './vocabulary.ts';

/** What is wrong with a piece of an answers object; the faces own the sentences. */
export type AnswersFault =
  | { readonly code: 'not-an-object'; readonly at: string }
  | { readonly code: 'unknown-key'; readonly at: string }
  | { readonly code: 'unknown-crop'; readonly at: string; readonly got: string }
  | { readonly code: 'unknown-setting'; readonly at: string }
  | { readonly code: 'unknown-sign'; readonly at: string }
  | { readonly code: 'bad-date'; readonly at: string; readonly got: string }
  | {
      readonly code: 'bad-value';
      readonly at: string;
      readonly got: string;
      readonly expected: string;
    };

export interface CheckedAnswers {
  /** What could be used; faulty pieces are left out, so that nothing good is lost. */
  readonly answers: Answers;
  readonly faults: readonly AnswersFault[];
}

type Json = Record<string, unknown>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const show = (value: unknown): string => JSON.stringify(value) ?? String(value);

/** What a value of this setting looks like, for the sentence that says what was expected. */
function expectedOf(setting: Setting): string {
  switch (setting.kind) {
    case 'yes-no':
      return 'true or false';
    case 'number':
      return `a number of ${setting.unit} from ${setting.least} to ${setting.most}`;
    case 'one-of':
      return `one of ${setting.options.map(({ id }) => id).join(', ')}`;
    case 'any-of':
      return `a list of any of ${setting.options.map(({ id }) => id).join(', ')}`;
  }
}

function fits(setting: Setting, value: unknown): boolean {
  switch (setting.kind) {
    case 'yes-no':
      return typeof value === 'boolean';
    case 'number':
      return typeof value === 'number' && value >= setting.least && value <= setting.most;
    case 'one-of':
      return setting.options.some(({ id }) => id === value);
    case 'any-of':
      return Array.isArray(value) && value.every((item) => setting.options.some(({ id }) => id === item));
  }
}

/** A calendar date `YYYY-MM-DD` that exists. */
export function isDate(value: unknown): value is string {
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value)) return false;
  const time = Date.parse(`${value}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(value);
}

function checkSettings(value: unknown, faults: AnswersFault[]): Json {
  const good: Json = {};
  if (value === undefined) return good;
  if (!isObject(value)) {
    faults.push({ code: 'not-an-object', at: 'setting' });
    return good;
  }
  for (const [id, given] of Object.entries(value)) {
    const at = `setting.${id}`;
    if (!Object.hasOwn(SETTINGS, id)) {
      faults.push({ code: 'unknown-setting', at });
      continue;
    }
    const setting: Setting = SETTINGS[id as SettingId];
    if (fits(setting, given)) good[id] = given;
    else faults.push({ code: 'bad-value', at, got: show(given), expected: expectedOf(setting) });
  }
  return good;
}

function checkSigns(value: unknown, faults: AnswersFault[]): Json {
  const good: Json = {};
  if (value === undefined) return good;
  if (!isObject(value)) {
    faults.push({ code: 'not-an-object', at: 'signs' });
    return good;
  }
  for (const [id, given] of Object.entries(value)) {
    const at = `signs.${id}`;
    if (!isAskable(id)) faults.push({ code: 'unknown-sign', at });
    else if (given === 'seen' || given === 'absent') good[id] = given;
    else faults.push({ code: 'bad-value', at, got: show(given), expected: '"seen" or "absent"' });
  }
  return good;
}

const KEYS = new Set(['crop', 'variety', 'date', 'setting', 'signs', 'overruled']);

/**
 * Check an answers object read from anywhere. Never throws: what is good is kept, what is not is named.
 * @param value anything, as parsed from JSON
 */
export function checkAnswers(value: unknown): CheckedAnswers {
  const faults: AnswersFault[] = [];
  if (!isObject(value)) {
    return { answers: { setting: {}, signs: {} }, faults: [{ code: 'not-an-object', at: 'answers' }] };
  }
  for (const key of Object.keys(value)) {
    if (!KEYS.has(key)) faults.push({ code: 'unknown-key', at: key });
  }
  const { crop, variety, date, overruled } = value;
  const answers: Record<string, unknown> = {
    setting: checkSettings(value.setting, faults),
    signs: checkSigns(value.signs, faults),
  };
  if (crop !== undefined) {
    if (CROPS.includes(crop as CropId)) answers.crop = crop;
    else faults.push({ code: 'unknown-crop', at: 'crop', got: show(crop) });
  }
  if (variety !== undefined) {
    if (typeof variety === 'string') answers.variety = variety;
    else faults.push({ code: 'bad-value', at: 'variety', got: show(variety), expected: 'text' });
  }
  if (date !== undefined) {
    if (isDate(date)) answers.date = date;
    else faults.push({ code: 'bad-date', at: 'date', got: show(date) });
  }
  if (overruled !== undefined) {
    if (Array.isArray(overruled) && overruled.every((id) => typeof id === 'string' && isAskable(id)))
      answers.overruled = overruled;
    else
      faults.push({ code: 'bad-value', at: 'overruled', got: show(overruled), expected: 'a list of signs' });
  }
  return { answers: answers as unknown as Answers, faults };
}
