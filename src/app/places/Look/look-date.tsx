import { dateOfLook } from '../../state/draft.ts';
import { change, draft } from '../../state/look-session.ts';
import { dayOf, describeDay } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** The day of the look: read from the photo where it says so, and correctable. */
export function LookDate() {
  const { day, from } = dateOfLook(draft.value);
  const today = dayOf(new Date());
  return (
    <div class="look-date">
      <label class="field">
        <span>
          {WORDS.date}: <strong>{describeDay(day, today)}</strong>, {WORDS.dateFrom[from]}
        </span>
        <input
          type="date"
          value={day}
          max={today}
          onChange={(event) => {
            const { value } = event.currentTarget;
            if (value) change({ kind: 'set-date', day: value });
          }}
        />
      </label>
    </div>
  );
}
