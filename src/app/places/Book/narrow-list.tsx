import { useMemo } from 'preact/hooks';
import { CASE_STATES, causesOf, type Narrowing } from '../../../garden/narrow-cases.ts';
import { DayField } from '../../parts/DayField/day-field.tsx';
import { casesAlive, narrowing, placeOfCase } from '../../state/find-cases.ts';
import { capitalise } from '../../words/causes.ts';
import { cropName } from '../../words/crops.ts';
import { NARROW_WORDS as WORDS } from '../../words/find-cases.ts';
import { endName } from '../../words/outcome.ts';

type Options = readonly (readonly [id: string, says: string])[];

const inOrder = (options: Iterable<readonly [string, string]>): Options =>
  [...options].sort(([, a], [, b]) => a.localeCompare(b, 'en-GB', { numeric: true }));

function narrow(key: keyof Narrowing, value: string): void {
  const { [key]: _before, ...rest } = narrowing.value;
  narrowing.value = value === '' ? rest : { ...rest, [key]: value };
}

/** Bed, crop, cause, days and state, to narrow the list of cases to; only what some case has is offered. */
export function NarrowList() {
  const all = casesAlive.value;
  const placeOf = placeOfCase.value;
  const { beds, crops, causes } = useMemo(() => {
    const named = new Map(all.map((kept) => [placeOf(kept).key, placeOf(kept).name || WORDS.noBed]));
    const grown = new Set(all.flatMap(({ crop }) => crop ?? []));
    const met = new Set(all.flatMap(causesOf));
    return {
      beds: inOrder(named),
      crops: inOrder([...grown].map((id) => [id, cropName(id)])),
      causes: inOrder([...met].map((id) => [id, capitalise(endName(id))])),
    };
  }, [all, placeOf]);
  return (
    <fieldset class="narrow">
      <legend class="unseen">{WORDS.title}</legend>
      <Pick of="bed" says={WORDS.bed} options={beds} />
      <Pick of="crop" says={WORDS.crop} options={crops} />
      <Pick of="cause" says={WORDS.cause} options={causes} />
      <Pick of="state" says={WORDS.state} options={CASE_STATES.map((id) => [id, WORDS.states[id]])} />
      <Day of="from" says={WORDS.from} />
      <Day of="to" says={WORDS.to} />
    </fieldset>
  );
}

interface PickProps {
  readonly of: 'bed' | 'crop' | 'cause' | 'state';
  readonly says: string;
  readonly options: Options;
}

/** The bed without a name has an empty key, which must not be taken for "all". */
const NO_KEY = ' ';

function Pick({ of, says, options }: PickProps) {
  const value = narrowing.value[of];
  return (
    <label class="field">
      <span>{says}</span>
      <select
        value={value === undefined ? '' : value || NO_KEY}
        onChange={({ currentTarget }) => {
          if (currentTarget.value === NO_KEY) narrowing.value = { ...narrowing.value, [of]: '' };
          else narrow(of, currentTarget.value);
        }}
      >
        <option value="">{WORDS.all}</option>
        {options.map(([id, name]) => (
          <option key={id} value={id || NO_KEY}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function Day({ of, says }: { readonly of: 'from' | 'to'; readonly says: string }) {
  return <DayField label={says} value={narrowing.value[of] ?? ''} onDay={(day) => narrow(of, day)} />;
}
