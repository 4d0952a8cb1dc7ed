import { useState } from 'preact/hooks';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';

interface AddByNameProps {
  readonly label: string;
  readonly hint?: string;
  /** Keeps it; a sentence where it could not, the empty one where it is done. */
  readonly onAdd: (name: string) => Promise<string>;
  readonly children?: preact.ComponentChildren;
}

/** One field and a thumb. */
export function AddByName({ label, hint, onAdd, children }: AddByNameProps) {
  const [name, setName] = useState('');
  const [says, setSays] = useState('');
  const add = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (name.trim() === '') return setSays(WORDS.nameFirst);
    const trouble = await onAdd(name);
    setSays(trouble);
    if (trouble === '') setName('');
  };
  return (
    <form class="add-by-name" noValidate onSubmit={(event) => void add(event)}>
      <label class="field">
        <span>{label}</span>
        <input
          type="text"
          value={name}
          autocomplete="off"
          enterkeyhint="done"
          {...(hint ? { placeholder: hint } : {})}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      {children}
      <button type="submit" class="button next">
        {WORDS.add}
      </button>
      <p role="alert">{says}</p>
    </form>
  );
}
