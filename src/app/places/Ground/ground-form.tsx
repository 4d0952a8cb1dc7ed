import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { GroundRecord } from '../../../garden/ground-records.ts';
import { DayInput } from '../../parts/DayField/day-field.tsx';
import { goBackTo, landOn, lastPressed } from '../../parts/OnUse/keep-focus.ts';
import { readNumber, type Typed } from '../../state/edit-ground.ts';
import { bringBackGround, keepWithUndo, latest, onRecord, type Saved } from '../../state/garden.ts';
import { joinWords } from '../../words/causes.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { namePlanting } from '../../words/name-planting.ts';
import { figureShown, fromShown, type RecordUnit, shownUnit } from '../../words/units.ts';

export interface Option {
  readonly id: string;
  readonly says: string;
}

export interface FormField {
  readonly id: string;
  readonly label: string;
  /** `several`: any number of the options; what was typed is their ids, one a line (a bed's id may hold spaces). */
  readonly as: 'text' | 'day' | 'number' | 'choice' | 'several' | 'note';
  /** Of a choice; an empty one is put before them unless the field must be said. */
  readonly options?: readonly Option[];
  readonly must?: boolean;
  readonly hint?: string;
  /** Short enough to share a line of a phone with its neighbour. */
  readonly half?: true;
  /** Said by few: it waits in a fold, which stands open where something is said in it. */
  readonly rare?: true;
  /** Of a number: least and most that make sense; the store would drop what lies beyond. */
  readonly within?: readonly [number, number];
  /** Of a number: the unit of the record. It is shown and typed in the unit that was chosen. */
  readonly unit?: RecordUnit;
}

const labelOf = ({ label, unit }: FormField): string => (unit ? `${label}, ${shownUnit(unit)}` : label);

/** What was typed, or is to be typed over, with the numbers of fields that have a unit turned. */
function turned(
  fields: readonly FormField[],
  typed: Typed,
  turn: (unit: RecordUnit, value: number) => number,
): Typed {
  const units = new Map(fields.flatMap(({ id, unit }) => (unit ? [[id, unit] as const] : [])));
  return Object.fromEntries(
    Object.entries(typed).map(([id, value]) => {
      const unit = units.get(id);
      const number = unit && readNumber(value);
      return number === undefined || Number.isNaN(number) ? [id, value] : [id, String(turn(unit!, number))];
    }),
  );
}

export const YES_NO: readonly Option[] = [
  { id: 'yes', says: WORDS.yes },
  { id: 'no', says: WORDS.no },
];
export const sayYesNo = (said: boolean | undefined): string =>
  said === undefined ? '' : said ? 'yes' : 'no';

export interface Needed {
  readonly kind: GroundRecord['kind'];
  readonly id: string | undefined;
}

interface GroundFormProps {
  readonly title: string;
  /** As a function where what is offered in one field hangs on another. */
  readonly fields: readonly FormField[] | ((typed: Typed) => readonly FormField[]);
  readonly initial: Typed;
  /** Keeps what was typed: how it went, or a sentence on what is missing. `changed`: only the fields that differ. */
  readonly onSave: (typed: Typed, changed: Typed) => Promise<Saved | { readonly missing: string }>;
  /** What has to be on record for this to make sense; where another tab deleted it, keeping the form brings it back. */
  readonly needs?: (typed: Typed) => readonly Needed[];
  readonly onClose: () => void;
  readonly onDelete?: () => void;
}

/** A few fields on paper. What was typed stays when the store does not take it, and a sentence says why. */
export function GroundForm(props: GroundFormProps) {
  const { title, initial, onSave, onDelete } = props;
  const [opener] = useState(lastPressed);
  const onClose = (): void => {
    props.onClose();
    goBackTo(opener);
  };
  const fieldsOf = (said: Typed): readonly FormField[] =>
    typeof props.fields === 'function' ? props.fields(said) : props.fields;
  const [typed, setTyped] = useState<Typed>(() => turned(fieldsOf(initial), initial, figureShown));
  const fields = fieldsOf(typed);
  const gone = (props.needs?.(typed) ?? []).flatMap(({ kind, id }) => {
    const found = onRecord(kind, id);
    return found?.deletedAt ? [found] : [];
  });
  const [says, setSays] = useState('');
  const [busy, setBusy] = useState(false);
  // Where the store refuses, another tab may have changed the record: what counts as changed is measured from the start.
  const start = useRef(typed);
  const form = useRef<HTMLFormElement>(null);
  const told = useRef('');
  // It may open far from the button that asked for it.
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' });
    landOn(form.current?.querySelector('h2'));
  }, []);
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const wrong = faultOf(fields, typed);
    if (wrong) return setSays(wrong);
    // A day that was refused is told once more beside the button; pressed again, what stays in its place is kept.
    const refused = form.current?.querySelector('.day-fault')?.textContent ?? '';
    if (refused !== told.current) {
      told.current = refused;
      if (refused) return setSays(refused);
    }
    setBusy(true);
    const changed = Object.fromEntries(
      Object.entries(typed).filter(([id, value]) => value !== (start.current[id] ?? '')),
    );
    for (const record of gone) await bringBackGround(record);
    const inRecordUnits = (said: Typed): Typed => turned(fields, said, fromShown);
    const saved = await onSave(inRecordUnits(typed), inRecordUnits(changed));
    setBusy(false);
    if (saved === 'stored') onClose();
    else setSays(typeof saved === 'string' ? WORDS.trouble[saved] : saved.missing);
  };
  const rare = fields.filter((field) => field.rare);
  const fieldOf = (field: FormField) => (
    <Field
      key={field.id}
      field={field}
      value={typed[field.id] ?? ''}
      onInput={(value) => {
        setTyped((before) => ({ ...before, [field.id]: value }));
        setSays('');
      }}
    />
  );
  return (
    <form
      ref={form}
      class="ground-form stack"
      aria-label={title}
      noValidate
      onSubmit={(event) => void save(event)}
    >
      <h2>{title}</h2>
      <div class="ground-fields">
        {fields.filter(({ rare }) => !rare).map(fieldOf)}
        {rare.length > 0 && (
          <details class="rarely-said wide" open={rare.some(({ id }) => (start.current[id] ?? '') !== '')}>
            <summary class="small">{rare.map(({ label }) => label).join(' · ')}</summary>
            <div class="ground-fields">{rare.map(fieldOf)}</div>
          </details>
        )}
      </div>
      <p role="alert">{gone.length > 0 ? WORDS.goneMeanwhile(joinWords(gone.map(nameOf))) : says}</p>
      <p class="ground-actions">
        <button type="submit" class="button next" disabled={busy}>
          {busy ? WORDS.saving : gone.length > 0 ? WORDS.saveAnew : WORDS.save}
        </button>
        <button type="button" class="button" onClick={onClose}>
          {WORDS.cancel}
        </button>
        {onDelete && (
          <button type="button" class="button-plain" onClick={onDelete}>
            {WORDS.remove}
          </button>
        )}
      </p>
    </form>
  );
}

function nameOf(record: GroundRecord): string {
  if (record.kind === 'bed' || record.kind === 'batch') return record.name;
  if (record.kind === 'planting') return namePlanting(record);
  return record.kind === 'event' ? WORDS.events[record.what] : WORDS.gone;
}

/** The first number that is none, or lies beyond what makes sense, in a sentence. */
function faultOf(fields: readonly FormField[], typed: Typed): string | undefined {
  for (const field of fields) {
    const { id, as, within, unit } = field;
    const number = as === 'number' ? readNumber(typed[id]) : undefined;
    if (number === undefined) continue;
    if (Number.isNaN(number)) return WORDS.numberWrong(labelOf(field));
    const [least, most] = within?.map((bound) => (unit ? figureShown(unit, bound) : bound)) ?? [];
    if (least !== undefined && most !== undefined && (number < least || number > most))
      return WORDS.numberBeyond(labelOf(field), least, most);
  }
  return undefined;
}

interface FieldProps {
  readonly field: FormField;
  readonly value: string;
  readonly onInput: (value: string) => void;
}

/** The options picked in a field of several. */
export const idsIn = (typed: string | undefined): string[] => typed?.split('\n').filter(Boolean) ?? [];

function Several({ field: { label, options = [] }, value, onInput }: FieldProps) {
  const picked = idsIn(value);
  return (
    <fieldset class="field wide">
      <legend class="field-label">{label}</legend>
      <div class="pick-several">
        {options.map(({ id, says }) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={picked.includes(id)}
              onChange={({ currentTarget: { checked } }) =>
                onInput([...picked.filter((one) => one !== id), ...(checked ? [id] : [])].join('\n'))
              }
            />
            {says}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Field(props: FieldProps) {
  return props.field.as === 'several' ? <Several {...props} /> : <OneField {...props} />;
}

function OneField({ field, value, onInput }: FieldProps) {
  const { as, options = [], must = false, hint } = field;
  const said = (event: { readonly currentTarget: { readonly value: string } }): void =>
    onInput(event.currentTarget.value);
  const id = useId();
  return (
    <div class={`field${as === 'note' ? ' wide' : ''}${field.half ? ' half' : ''}`}>
      <label class="field-label" for={id}>
        {labelOf(field)}
      </label>
      {as === 'choice' ? (
        <select id={id} value={value} onChange={said}>
          {!must && <option value="">{WORDS.notSaid}</option>}
          {must && value === '' && <option value="" />}
          {value !== '' && !options.some((one) => one.id === value) && (
            <option value={value}>{WORDS.gone}</option>
          )}
          {options.map(({ id: one, says }) => (
            <option key={one} value={one}>
              {says}
            </option>
          ))}
        </select>
      ) : as === 'note' ? (
        <textarea id={id} rows={2} value={value} onInput={said} />
      ) : as === 'day' ? (
        <DayInput id={id} value={value} autocomplete="off" onDay={onInput} />
      ) : (
        <input
          id={id}
          type="text"
          {...(as === 'number' ? { inputMode: 'decimal' as const } : {})}
          {...(hint ? { placeholder: hint } : {})}
          value={value}
          autocomplete="off"
          onInput={said}
        />
      )}
    </div>
  );
}

/**
 * Saves changes to a record as it was when the form was opened. After a conflict, and where another tab deleted it, the next
 * save goes over what the other tab stored.
 */
export function useEdit<R extends GroundRecord>(
  record: R,
  says: string = WORDS.kept,
): (change: (base: R) => R) => Promise<Saved> {
  const base = useRef(record);
  const wasGone = useRef(false);
  if (latest(record).deletedAt) wasGone.current = true;
  return async (change) => {
    if (wasGone.current) base.current = latest(base.current);
    const saved = await keepWithUndo([change(base.current)], says);
    if (saved === 'conflict') base.current = latest(base.current);
    return saved;
  };
}
