import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { readNumber } from '../../../state/edit-ground.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';

/** A pause in typing after which what stands there is kept, ms. */
const PAUSE = 400;

interface TypedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly as?: 'text' | 'number' | 'note';
  /** Given what was typed, after a pause and when the field is left: a sentence where it cannot be kept. */
  readonly onKeep: (typed: string) => string | undefined;
}

/** A line that is kept while it is typed. What is typed stays, whatever the store says meanwhile. */
export function TypedField({ label, value, hint, as = 'text', onKeep }: TypedFieldProps) {
  const { typed, wrong, type, keep } = useTyped(value, onKeep);
  const id = useId();
  const says = useId();
  const shared = {
    id,
    value: typed,
    ...(hint ? { placeholder: hint } : {}),
    ...(wrong ? { 'aria-invalid': true, 'aria-describedby': says } : {}),
    onInput: (event: { readonly currentTarget: { readonly value: string } }) =>
      type(event.currentTarget.value),
    onBlur: keep,
  };
  return (
    <div class={as === 'note' ? 'field wide' : 'field'}>
      <label class="field-label" for={id}>
        {label}
      </label>
      {as === 'note' ? (
        <textarea rows={2} {...shared} />
      ) : (
        <input
          type="text"
          autocomplete="off"
          {...(as === 'number' ? { inputMode: 'decimal' as const } : {})}
          {...shared}
        />
      )}
      <p class="small" id={says} role="alert">
        {wrong}
      </p>
    </div>
  );
}

/** What stands in a field that keeps itself. While nothing is being typed it follows the store. */
export function useTyped(value: string, onKeep: (typed: string) => string | undefined) {
  const [typed, setTyped] = useState(value);
  const [wrong, setWrong] = useState<string | undefined>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const waiting = useRef<string | undefined>(undefined);
  const latestKeep = useRef(onKeep);
  latestKeep.current = onKeep;
  const isBusy = useRef(false);
  useEffect(() => {
    if (!isBusy.current) setTyped(value);
  }, [value]);
  const keep = (): void => {
    clearTimeout(timer.current);
    isBusy.current = false;
    if (waiting.current === undefined) return;
    const said = waiting.current;
    waiting.current = undefined;
    setWrong(latestKeep.current(said));
  };
  // A page that is left keeps what was typed last.
  useEffect(() => keep, []);
  return {
    typed,
    wrong,
    keep,
    type: (said: string): void => {
      isBusy.current = true;
      waiting.current = said;
      setTyped(said);
      clearTimeout(timer.current);
      timer.current = setTimeout(() => {
        const now = waiting.current;
        waiting.current = undefined;
        if (now !== undefined) setWrong(latestKeep.current(now));
      }, PAUSE);
    },
  };
}

interface NumberFieldProps {
  readonly label: string;
  /** In the unit of the field; absent: nothing there. */
  readonly value: number | undefined;
  readonly within?: readonly [number, number];
  readonly whole?: boolean;
  readonly onKeep: (value: number | undefined) => void;
}

/** A number that is kept while it is typed; emptied, it is unsaid. */
export function NumberField({ label, value, within = [0, 1e6], whole = false, onKeep }: NumberFieldProps) {
  return (
    <TypedField
      label={label}
      as="number"
      value={value === undefined ? '' : String(Number(value.toPrecision(6)))}
      onKeep={(typed) => {
        const number = readNumber(typed);
        if (number === undefined) {
          onKeep(undefined);
          return undefined;
        }
        const isOff = Number.isNaN(number) || number < within[0] || number > within[1];
        if (isOff || (whole && !Number.isInteger(number))) return WORDS.numberWrong;
        onKeep(number);
        return undefined;
      }}
    />
  );
}
