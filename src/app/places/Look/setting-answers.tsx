import { useState } from 'preact/hooks';
import { SETTINGS, type Setting, type SettingId } from '../../../signs/settings.ts';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { change } from '../../state/change-look.ts';
import { capitalise } from '../../words/causes.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { figureShown, fromShown, inUnits, shownUnit } from '../../words/units.ts';
import { withinBand } from './bands.ts';

interface SettingAnswersProps {
  readonly setting: SettingId;
  /** Set when the setting is settled by a check that was made for it. */
  readonly check?: string;
}

/** The answers to a question about the setting, large enough for a thumb in a glove. */
export function SettingAnswers({ setting, check }: SettingAnswersProps) {
  const asked: Setting = SETTINGS[setting];
  const answer = (value: unknown): void =>
    change({ kind: 'answer-setting', setting, value, ...(check === undefined ? {} : { check }) });
  const cannotSay = (
    <button
      type="button"
      class="answer whole-row"
      onClick={() => change({ kind: 'cannot-say', id: check ?? setting })}
    >
      {check === undefined ? WORDS.cannotSay : WORDS.notNow}
    </button>
  );
  if (asked.kind === 'yes-no')
    return (
      <div class="answers">
        <button type="button" class="answer" onClick={() => answer(true)}>
          {WORDS.yes}
        </button>
        <button type="button" class="answer" onClick={() => answer(false)}>
          {WORDS.no}
        </button>
        {cannotSay}
      </div>
    );
  if (asked.kind === 'any-of') return <AnyOf {...{ setting, asked, cannotSay }} onAnswer={answer} />;
  if (asked.kind === 'number') return <NumberAnswer {...{ setting, asked, cannotSay }} onAnswer={answer} />;
  return (
    <div class={sideBySide(asked.options.length)}>
      {asked.options.map(({ id, says }) => (
        <button key={id} type="button" class="answer" onClick={() => answer(id)}>
          <Drawn of={`setting-${setting}-${id}`} />
          {capitalise(says)}
        </button>
      ))}
      {cannotSay}
    </div>
  );
}

/** Two or four answers stand in pairs, so that none is left alone in its row. */
const sideBySide = (count: number): string =>
  count === 2 || count === 4 ? 'answers drawn-answers in-pairs' : 'answers drawn-answers';

interface PartProps<Kind extends Setting['kind']> {
  readonly setting: SettingId;
  readonly asked: Extract<Setting, { kind: Kind }>;
  readonly onAnswer: (value: unknown) => void;
  readonly cannotSay: preact.JSX.Element;
}

/** "Nothing" excludes everything else that could have gone on the bed. */
const NONE = 'none';

function AnyOf({ setting, asked, onAnswer, cannotSay }: PartProps<'any-of'>) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const hasNone = asked.options.some(({ id }) => id === NONE);
  const toggle = (id: string): void => {
    const without = chosen.filter((other) => other !== id && (id === NONE ? false : other !== NONE));
    setChosen(chosen.includes(id) ? without : [...without, id]);
  };
  return (
    <div class={sideBySide(asked.options.length)}>
      {asked.options.map(({ id, says }) => (
        <label key={id} class={`answer choosable${chosen.includes(id) ? ' chosen' : ''}`}>
          <Drawn of={`setting-${setting}-${id}`} />
          {capitalise(says)}
          <input type="checkbox" checked={chosen.includes(id)} onChange={() => toggle(id)} />
        </label>
      ))}
      {!hasNone && chosen.length === 0 && (
        <button type="button" class="answer whole-row" onClick={() => onAnswer([])}>
          {WORDS.noneOfThese}
        </button>
      )}
      {chosen.length > 0 && (
        <button type="button" class="answer done whole-row" onClick={() => onAnswer(chosen)}>
          {WORDS.done}
        </button>
      )}
      {cannotSay}
    </div>
  );
}

function NumberAnswer({ setting, asked, onAnswer, cannotSay }: PartProps<'number'>) {
  const [typed, setTyped] = useState('');
  const value = fromShown(asked.unit, Number(typed.replace(',', '.')));
  const fits = typed.trim() !== '' && value >= asked.least && value <= asked.most;
  const [least, most] = [figureShown(asked.unit, asked.least), figureShown(asked.unit, asked.most)];
  const [fault, setFault] = useState('');
  return (
    <div class={sideBySide(asked.bands.length)}>
      <form
        class="number-answer whole-row"
        onSubmit={(event) => {
          event.preventDefault();
          if (fits) onAnswer(value);
          else setFault(WORDS.numberFault(Number.isNaN(value) ? '' : typed.trim(), least, most));
        }}
      >
        <label class="field">
          <span>
            {capitalise(shownUnit(asked.unit))}, {least} to {most}
          </span>
          <input
            class="figures"
            inputMode="decimal"
            value={typed}
            autocomplete="off"
            onInput={(event) => {
              setTyped(event.currentTarget.value);
              setFault('');
            }}
          />
        </label>
        <button type="submit" class="button">
          {WORDS.setNumber}
        </button>
        <p role="alert" class="number-fault">
          {fault}
        </p>
      </form>
      {asked.bands.map((band, index) => (
        <button key={band.id} type="button" class="answer" onClick={() => onAnswer(withinBand(asked, index))}>
          <Drawn of={`setting-${setting}-${band.id}`} />
          {capitalise(inUnits(band.says))}
        </button>
      ))}
      {cannotSay}
    </div>
  );
}
