import { SETTINGS, type Setting, type SettingId } from './settings.ts';
import type { FactorId } from './types.ts';

/** A setting as the network sees it: outcomes that exclude each other, with how often a grower would give them. */
export interface Factor {
  readonly id: FactorId;
  readonly setting: SettingId;
  /** For an option of an any-of list: its id. */
  readonly option?: string;
  readonly outcomes: readonly { readonly id: string; readonly rate: number }[];
}

const yesNo = (rate: number): Factor['outcomes'] => [
  { id: 'yes', rate },
  { id: 'no', rate: 1 - rate },
];

function factorsOf(id: SettingId, setting: Setting): Factor[] {
  switch (setting.kind) {
    case 'yes-no':
      return [{ id, setting: id, outcomes: yesNo(setting.rate) }];
    case 'one-of':
      return [{ id, setting: id, outcomes: setting.options }];
    case 'number':
      return [{ id, setting: id, outcomes: setting.bands }];
    case 'any-of':
      return setting.options.map((option) => ({
        id: `${id}:${option.id}`,
        setting: id,
        option: option.id,
        outcomes: yesNo(option.rate),
      }));
  }
}

/** Every factor of the network, in the order of the settings. */
export const FACTORS: readonly Factor[] = (Object.entries(SETTINGS) as [SettingId, Setting][]).flatMap(
  ([id, setting]) => factorsOf(id, setting),
);
