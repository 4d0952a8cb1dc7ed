import type { SettingId } from './settings.ts';

const WOOD: readonly SettingId[] = ['wood-in-root-zone', 'wood-on-surface'];

const saysNothing = (kinds: unknown): boolean => Array.isArray(kinds) && kinds.includes('none');

/**
 * "Nothing went on the bed" and "there is wood in it" cannot both stand: what was said last holds, and the other is open again.
 * @param settings the answers, the newest among them
 * @param newest what was answered last
 */
export function settleWood<Settings extends Readonly<Partial<Record<string, unknown>>>>(
  settings: Settings,
  newest: SettingId,
): Partial<Settings> {
  const denied = (id: string, value: unknown): boolean => {
    if (newest === 'compost-kinds' && saysNothing(settings[newest]))
      return WOOD.includes(id as SettingId) && value === true;
    return WOOD.includes(newest) && settings[newest] === true && id === 'compost-kinds' && saysNothing(value);
  };
  return Object.fromEntries(
    Object.entries(settings).filter(([id, value]) => !denied(id, value)),
  ) as Partial<Settings>;
}
