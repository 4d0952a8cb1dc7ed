import './segments.css';
import { WithTerms } from '../Terms/with-terms.tsx';

interface SegmentsProps<Id extends string> {
  readonly legend: string;
  readonly name: string;
  readonly options: readonly {
    readonly id: Id;
    readonly says: string;
    /** Stands for no answer: chosen, it stays pale. */
    readonly open?: boolean;
  }[];
  readonly value: Id | undefined;
  readonly onChange: (value: Id) => void;
  /** Hides the legend from the eye where the text beside it says the same. */
  readonly quiet?: boolean;
}

/** One of a few short answers, side by side. */
export function Segments<Id extends string>(props: SegmentsProps<Id>) {
  const { legend, name, options, value, onChange, quiet = false } = props;
  return (
    <fieldset class="segments-set">
      <legend class={quiet ? 'unseen' : ''}>{quiet ? legend : <WithTerms>{legend}</WithTerms>}</legend>
      <div class="segments">
        {options.map(({ id, says, open }) => (
          <label key={id} class={open ? 'segment open' : 'segment'}>
            <input type="radio" name={name} checked={value === id} onChange={() => onChange(id)} />
            <span>{says}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
