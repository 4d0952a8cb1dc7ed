import './day-field.css';
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { dayOf, describeDay, NO_DAY } from '../../words/dates.ts';

interface DayInputProps extends Omit<JSX.InputHTMLAttributes, 'type' | 'value' | 'class'> {
  /** `YYYY-MM-DD`, or empty. */
  readonly value: string;
}

/**
 * A day to choose. Browsers write it in figures, each in an order of its own, so the day stands over these in words until the
 * field is entered. Read aloud it is the browser's own field.
 */
export function DayInput({ value, ...more }: DayInputProps) {
  const says = value ? describeDay(value, dayOf(new Date())) : NO_DAY;
  return (
    <span class={value ? 'day-field' : 'day-field empty'} data-says={says}>
      <input type="date" value={value} {...more} />
    </span>
  );
}

interface DayFieldProps extends DayInputProps {
  readonly label: string;
  /** Of the field as a whole, for its width. */
  readonly wide?: string;
}

/** The same with its label. */
export function DayField({ label, wide, ...more }: DayFieldProps) {
  const id = useId();
  return (
    <div class={wide ? `field ${wide}` : 'field'}>
      <label class="field-label" for={id}>
        {label}
      </label>
      <DayInput id={id} {...more} />
    </div>
  );
}
