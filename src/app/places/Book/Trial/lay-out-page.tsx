import { useState } from 'preact/hooks';
import { TrialError } from '../../../../compare/side-by-side/trial-error.ts';
import { dayAfter } from '../../../../days/days.ts';
import { newBed } from '../../../../garden/name-beds.ts';
import type { TrialRecord } from '../../../../garden/trial-record.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { Segments } from '../../../parts/Choice/segments.tsx';
import { WithTerms } from '../../../parts/Terms/with-terms.tsx';
import { readNumber } from '../../../state/edit-ground.ts';
import { garden, keepRecords } from '../../../state/garden.ts';
import { nowStamp } from '../../../state/kept.ts';
import { howOf, layOutSeason, planNumbers } from '../../../state/plan-trial.ts';
import { goTo } from '../../../state/route.ts';
import { putLayout, setPlan, touchTrial } from '../../../state/trials.ts';
import { zone } from '../../../state/zone.ts';
import { dayOf } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { AddByName } from '../../Ground/add-by-name.tsx';

/** Until something else is said, the first measuring is so many days after laying out (common practice, no source). */
const FIRST_MEASURING = 28;
const MOST_PLACES = 400;

/** The beds and the places in them; then the lots are drawn, once. */
export function LayOutPage({
  trial,
  bed,
}: {
  readonly trial: TrialRecord;
  readonly bed: string | undefined;
}) {
  const beds = garden.value?.beds ?? [];
  const { plan = {}, unit = 'plant', ways } = trial;
  const how = howOf(trial);
  const numbers = planNumbers(trial);
  const needed = 'missing' in numbers ? undefined : numbers.needed;
  const wished = plan.each ?? needed ?? 6;
  const earlier = trial.layouts.at(-1)?.beds ?? [];
  const [places, setPlaces] = useState<Readonly<Record<string, string>>>(() =>
    earlier.length > 0
      ? Object.fromEntries(earlier.map(({ bedId, places: many }) => [bedId, String(many)]))
      : bed
        ? { [bed]: String(wished * ways.length) }
        : {},
  );
  const [says, setSays] = useState('');
  const chosen = beds.flatMap((one) => {
    const many = how === 'whole-beds' ? (places[one.id] ? 1 : 0) : (readNumber(places[one.id]) ?? 0);
    return Number.isInteger(many) && many > 0 && many <= MOST_PLACES ? [{ bed: one, places: many }] : [];
  });
  const each = eachOf(
    how,
    chosen.map(({ places: many }) => many),
    ways.length,
  );
  const draw = async (): Promise<void> => {
    const today = dayOf(new Date());
    const seed = crypto.getRandomValues(new Uint32Array(1))[0]!;
    try {
      const layout = layOutSeason(trial, chosen, seed, today, zone.value);
      const done = await touchTrial(trial.id, ({ ended: _ended, ...found }) => ({
        ...putLayout(found, layout),
        lookOn: dayAfter(today, FIRST_MEASURING),
      }));
      if (done) goTo({ place: 'book', trial: trial.id }, 'replace');
    } catch (cause) {
      if (!(cause instanceof TrialError)) throw cause;
      setSays(WORDS.placesTrouble[how](ways.length));
    }
  };
  const add = async (name: string): Promise<string> => {
    const saved = await keepRecords([newBed(name, nowStamp())]);
    return saved === 'stored' ? '' : GROUND_WORDS.trouble[saved];
  };
  return (
    <div class="trial stack-wide">
      <div>
        <BackLink to={{ place: 'book', trial: trial.id, step: 'plan' }} says={WORDS.plan} />
        <h1 tabIndex={-1}>{trial.layouts.length > 0 ? WORDS.layOutAgain : WORDS.layOut}</h1>
        <p class="soft">{WORDS.layOutLead}</p>
      </div>
      {how === 'whole-beds' ? (
        <p>{WORDS.howSays['whole-beds']}</p>
      ) : (
        <div class="stack-close">
          <Segments
            legend={WORDS.how}
            name="trial-how"
            options={(['blocks', 'random'] as const).map((id) => ({ id, says: WORDS.hows[id] }))}
            value={how}
            onChange={(id) => void setPlan(trial.id, { how: id })}
          />
          <p class="small soft">
            <WithTerms>{WORDS.howSays[how]}</WithTerms>
          </p>
        </div>
      )}
      <section class="stack-close">
        <h2>{WORDS.where}</h2>
        {beds.length === 0 && <p>{WORDS.noBed}</p>}
        <ul>
          {beds.map((one) => (
            <li key={one.id} class="ground-line">
              <label class="trial-bed" for={`places-${one.id}`}>
                <span>{one.name}</span>
                {how === 'whole-beds' ? (
                  <input
                    id={`places-${one.id}`}
                    type="checkbox"
                    checked={Boolean(places[one.id])}
                    onChange={({ currentTarget: { checked } }) =>
                      setPlaces({ ...places, [one.id]: checked ? '1' : '' })
                    }
                  />
                ) : (
                  <span class="trial-places">
                    <span class="small soft">{WORDS.places(unit)}</span>
                    <input
                      id={`places-${one.id}`}
                      type="text"
                      inputMode="numeric"
                      autocomplete="off"
                      class="day-number figures"
                      value={places[one.id] ?? ''}
                      onInput={({ currentTarget: { value } }) => {
                        setPlaces({ ...places, [one.id]: value });
                        setSays('');
                      }}
                    />
                  </span>
                )}
              </label>
            </li>
          ))}
        </ul>
        <details open={beds.length === 0}>
          <summary class="small">{WORDS.anotherBed}</summary>
          <AddByName label={GROUND_WORDS.addBed} onAdd={add} />
        </details>
      </section>
      <div aria-live="polite" class="stack-close">
        {how === 'whole-beds' && each === 1 && <p class="trial-loud">{WORDS.warnings['one-bed-a-side']}</p>}
        {each > 0 && needed !== undefined && each < needed && <p>{WORDS.fewer(each, needed)}</p>}
      </div>
      <p role="alert">{says}</p>
      <p>
        <button type="button" class={beds.length > 0 ? 'button next' : 'button'} onClick={() => void draw()}>
          {WORDS.draw}
        </button>
      </p>
    </div>
  );
}

/** So many of each way the places would hold. */
function eachOf(how: ReturnType<typeof howOf>, places: readonly number[], ways: number): number {
  if (how === 'whole-beds') return Math.floor(places.length / ways);
  if (how === 'random') return Math.floor(places.reduce((sum, many) => sum + many, 0) / ways);
  return places.reduce((sum, many) => sum + Math.floor(many / ways), 0);
}
