import { prefer, preferences } from '../../state/preferences.ts';

/** Shows or hides what was found on every photo; one switch for all of them. */
export function HatchingSwitch({ says }: { readonly says: string }) {
  return (
    <label class="switch">
      <input
        type="checkbox"
        checked={preferences.value.showHatching}
        onChange={(event) => prefer({ showHatching: event.currentTarget.checked })}
      />
      {says}
    </label>
  );
}
