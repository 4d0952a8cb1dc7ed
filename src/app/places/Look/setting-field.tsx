import { useState } from 'preact/hooks';
import { askSetting } from '../../../signs/ask-setting.ts';
import type { Setting, SettingId } from '../../../signs/settings.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { change } from '../../state/change-look.ts';
import { answersInHand } from '../../state/weigh-look.ts';
import { capitalise } from '../../words/causes.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { figureShown, fromShown, inUnits, shownUnit } from '../../words/units.ts';
import { bandOf, withinBand } from './bands.ts';
import { wordsOfOptions } from './words-on-answers.ts';

/** One circumstance in the list of all questions, answered or left open. */
export function SettingField({ id, setting }: { readonly id: SettingId; readonly setting: Setting }) {
  const { setting: said, crop, recorded } = answersInHand.value;
  const value: unknown = said[id];
  // Answering goes over the record.
  const asks = inUnits(askSetting(id, crop)) + (recorded?.includes(id) ? ` ${WORDS.recorded}` : '');
  const answer = (given: unknown): void => change({ kind: 'answer-setting', setting: id, value: given });
  if (setting.kind === 'yes-no')
    return (
      <div class="list-row">
        <Segments
          legend={asks}
          name={`setting-${id}`}
          options={[
            { id: 'yes', says: WORDS.yes },
            { id: 'no', says: WORDS.no },
            { id: 'open', says: WORDS.notSaid, open: true },
          ]}
          value={value === undefined ? 'open' : value ? 'yes' : 'no'}
          onChange={(given) => answer(given === 'open' ? undefined : given === 'yes')}
        />
      </div>
    );
  if (setting.kind === 'number')
    return (
      <div class="field list-row">
        <span class="list-ask">
          <WithTerms>{asks}</WithTerms>
        </span>
        <select
          aria-label={asks}
          value={bandOf(setting, value) ?? ''}
          onChange={({ currentTarget }) => {
            const band = setting.bands.findIndex((one) => one.id === currentTarget.value);
            answer(band < 0 ? undefined : withinBand(setting, band));
          }}
        >
          <option value="">{WORDS.notSaid}</option>
          {setting.bands.map((band) => (
            <option key={band.id} value={band.id}>
              {inUnits(band.says)}
            </option>
          ))}
        </select>
        <ExactNumber setting={setting} value={value} onAnswer={answer} />
      </div>
    );
  if (setting.kind === 'any-of') {
    const chosen: readonly string[] = Array.isArray(value) ? value : [];
    return (
      <fieldset class="list-row any-of">
        <legend>
          <WithTerms>{asks}</WithTerms>
        </legend>
        {setting.options.map((option) => (
          <label key={option.id} class="choosable">
            <input
              type="checkbox"
              checked={chosen.includes(option.id)}
              onChange={() => answer(withOption(chosen, option.id))}
            />
            {capitalise(option.says)}
          </label>
        ))}
        <TermsOf says={wordsOfOptions(setting)} />
      </fieldset>
    );
  }
  return (
    <>
      <label class="field list-row">
        <span class="list-ask">{asks}</span>
        <select
          value={typeof value === 'string' ? value : ''}
          onChange={(event) => answer(event.currentTarget.value || undefined)}
        >
          <option value="">{WORDS.notSaid}</option>
          {setting.options.map((option) => (
            <option key={option.id} value={option.id}>
              {option.says}
            </option>
          ))}
        </select>
      </label>
      <TermsOf says={[asks, ...wordsOfOptions(setting)]} />
    </>
  );
}

/** The list with an option put in or taken out; "nothing" and the rest exclude each other. Empty is not said. */
function withOption(chosen: readonly string[], id: string): readonly string[] | undefined {
  if (chosen.includes(id)) {
    const rest = chosen.filter((other) => other !== id);
    return rest.length > 0 ? rest : undefined;
  }
  return id === 'none' ? ['none'] : [...chosen.filter((other) => other !== 'none'), id];
}

interface ExactNumberProps {
  readonly setting: Extract<Setting, { kind: 'number' }>;
  readonly value: unknown;
  readonly onAnswer: (value: number | undefined) => void;
}

/** A number typed out. One that cannot be is refused with a sentence, and what was there before stays. */
function ExactNumber({ setting: { unit, least, most }, value, onAnswer }: ExactNumberProps) {
  const [fault, setFault] = useState('');
  const bounds = [figureShown(unit, least), figureShown(unit, most)] as const;
  const shown = typeof value === 'number' ? String(figureShown(unit, value)) : '';
  return (
    <>
      <label class="field">
        <span>{WORDS.exactly(shownUnit(unit))}</span>
        <input
          type="number"
          inputMode="decimal"
          min={bounds[0]}
          max={bounds[1]}
          step="any"
          placeholder={WORDS.notSaid}
          value={shown}
          onChange={({ currentTarget }) => {
            const { value: typed, validity } = currentTarget;
            if (validity.valid) {
              setFault('');
              onAnswer(typed === '' ? undefined : fromShown(unit, Number(typed)));
              return;
            }
            setFault(WORDS.numberFault(typed, ...bounds));
            currentTarget.value = shown;
          }}
        />
      </label>
      <p role="alert" class="small">
        {fault}
      </p>
    </>
  );
}
