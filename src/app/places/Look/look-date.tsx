import { useState } from 'preact/hooks';
import { DayField } from '../../parts/DayField/day-field.tsx';
import { change } from '../../state/change-look.ts';
import { dateOfLook } from '../../state/draft.ts';
import { draft } from '../../state/look-in-hand.ts';
import { dayOf, describeDay } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';

/** The day of the look: read from the photo where it says so, and correctable. */
export function LookDate() {
  const [open, setOpen] = useState(false);
  const { day, from } = dateOfLook(draft.value);
  const today = dayOf(new Date());
  return (
    <div class="look-date">
      <p class="small soft">
        {describeDay(day, today)}, {WORDS.dateFrom[from]}.{' '}
        {!open && (
          <button type="button" class="button-inline" onClick={() => setOpen(true)}>
            {WORDS.dateChange}
          </button>
        )}
      </p>
      {open && (
        <DayField
          label={WORDS.date}
          value={day}
          max={today}
          onDay={(said) => {
            if (said) change({ kind: 'set-date', day: said });
          }}
        />
      )}
    </div>
  );
}
