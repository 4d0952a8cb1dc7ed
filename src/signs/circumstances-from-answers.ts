import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import type { Answers, Circumstance, Reporter } from './types.ts';
import type { WorkedLeanings } from './work-out-leanings.ts';

/** The band a number falls in; the last band is open. */
function bandOf(setting: Setting & { kind: 'number' }, value: number): string {
  const band = setting.bands.find(({ below }) => below === undefined || value < below);
  return (band ?? setting.bands[setting.bands.length - 1]!).id;
}

function outcomesOf(id: SettingId, value: unknown): Omit<Circumstance, 'from'>[] {
  const setting: Setting = SETTINGS[id];
  switch (setting.kind) {
    case 'yes-no':
      return [{ id, outcome: value ? 'yes' : 'no' }];
    case 'one-of':
      return [{ id, outcome: String(value) }];
    case 'number':
      return [{ id, outcome: bandOf(setting, Number(value)) }];
    case 'any-of': {
      // A list is the whole answer: what is not on it did not happen.
      const listed = new Set(value as readonly string[]);
      return setting.options.map((option) => ({
        id: `${id}:${option.id}` as const,
        outcome: listed.has(option.id) ? 'yes' : 'no',
      }));
    }
  }
}

/**
 * What the answers say about the circumstances, as settled outcomes of factors.
 * @param leanings what physics makes of the answers together (`workOutLeanings`)
 */
export function circumstancesFromAnswers(answers: Answers, leanings: WorkedLeanings): Circumstance[] {
  return Object.entries(answers.setting)
    .filter(([, value]) => value !== undefined)
    .flatMap(([id, value]) => {
      const from: Reporter = answers.recorded?.includes(id as SettingId) ? 'records' : 'eye';
      return outcomesOf(id as SettingId, value).map((outcome): Circumstance => {
        const leans = leanings.get(outcome.id);
        return { ...outcome, from, ...(leans ? { leans } : {}) };
      });
    });
}
