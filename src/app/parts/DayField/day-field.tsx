import './day-field.css';
import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { dayOf, describeDay, NO_DAY } from '../../words/dates.ts';
import { FIRST_DAY, lastDay, sayDayFault } from '../../words/day-fault.ts';

type OwnProps = 'type' | 'value' | 'class' | 'min' | 'max' | 'onChange' | 'onInput' | 'onBlur';

interface DayInputProps extends Omit<JSX.InputHTMLAttributes, OwnProps> {
  /** `YYYY-MM-DD`, or empty. */
  readonly value: string;
  readonly min?: string;
  /** Today, where it is of what has happened; else some years ahead. */
  readonly max?: string;
  /** Hears of days that can be, and of the field being emptied. */
  readonly onDay: (day: string) => void;
}

/** A year half typed: browsers tell of every digit. */
const isHalfTyped = (day: string): boolean => day < '1000';

/**
 * A day to choose. Browsers write it in figures, each in an order of its own, so the day stands over these in words until the
 * field is entered. Read aloud it is the browser's own field. A day that cannot be is refused with a sentence, and the one
 * before stays.
 */
export function DayInput({ value, min, max, onDay, ...more }: DayInputProps) {
  const today = dayOf(new Date());
  const says = value ? describeDay(value, today) : NO_DAY;
  const [refused, setRefused] = useState('');
  // What was refused stands until the field is left: it may be half typed.
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const fault = sayDayFault(refused, { min, max }, value, today);
  const faultId = useId();
  return (
    <>
      <span class={value ? 'day-field' : 'day-field empty'} data-says={says}>
        <input
          type="date"
          value={typed ?? value}
          min={min ?? FIRST_DAY}
          max={max ?? lastDay(today)}
          {...(fault ? { 'aria-invalid': true, 'aria-describedby': faultId } : {})}
          {...more}
          onChange={({ currentTarget: { value: day } }) => {
            const isWrong = sayDayFault(day, { min, max }, value, today) !== undefined;
            setTyped(isWrong ? day : undefined);
            setRefused(isWrong && !isHalfTyped(day) ? day : '');
            if (!isWrong) onDay(day);
          }}
          onBlur={() => {
            if (typed) setRefused(typed);
            setTyped(undefined);
          }}
        />
      </span>
      {fault && (
        <span role="alert" id={faultId} class="day-fault">
          {fault}
        </span>
      )}
    </>
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
