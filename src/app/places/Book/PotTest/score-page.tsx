import { useState } from 'preact/hooks';
import { PotTestError } from '../../../../compare/pot-test/types.ts';
import type { Garden } from '../../../../garden/gather-garden.ts';
import type { BatchRecord, PotSown, PotTestRecord } from '../../../../garden/ground-records.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { changeGround, keepWithUndo, latest } from '../../../state/garden.ts';
import { nowStamp } from '../../../state/kept.ts';
import {
  endLook,
  inPlace,
  isScored,
  lookDay,
  type ScorePatch,
  scoreAt,
  withoutScore,
  withScore,
} from '../../../state/pot-tests.ts';
import { goTo } from '../../../state/route.ts';
import { offerUndo } from '../../../state/undo-bar.ts';
import { dayOf } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { sayUndo, sayWhyOfBatch } from '../../../words/pot-test-reading.ts';
import { PotScore } from './pot-score.tsx';

const WORDS = POT_WORDS.look;

interface ScorePageProps {
  readonly all: Garden;
  readonly test: PotTestRecord;
  readonly batch: BatchRecord | undefined;
  /** Day of the look, `YYYY-MM-DD`; the open one, or today's, unless said. */
  readonly on: string | undefined;
}

/** One look at the pots: one after the other by its letter, in the order of the row. Nothing tells what a pot holds. */
export function ScorePage({ all, test, batch, on }: ScorePageProps) {
  const today = dayOf(new Date());
  const [day, setDay] = useState(() => on ?? lookDay(test, today));
  const pots = inPlace(test.pots);
  const scored = pots.filter(({ id }) => isScored(test, day, id));
  const [at, setAt] = useState(() =>
    Math.max(
      0,
      pots.findIndex(({ id }) => !isScored(test, day, id)),
    ),
  );
  const [says, setSays] = useState('');
  /** Grows when a pot is taken out or put back, so that its fields begin anew. */
  const [turn, setTurn] = useState(0);
  const pot = pots[at];
  const next = pots.find(({ id }, place) => place > at && !isScored(test, day, id));
  const following = next ?? pots.find(({ id }) => id !== pot?.id && !isScored(test, day, id));
  const score = (potId: string, patch: ScorePatch): void => {
    void changeGround(test, (found) => withScore(found, day, potId, patch));
  };
  const takeBack = async ({ id, label }: PotSown): Promise<void> => {
    const score = scoreAt(latest(test), day, id);
    if (!score || !(await changeGround(test, (found) => withoutScore(found, day, id)))) return;
    setTurn((before) => before + 1);
    offerUndo({
      says: WORDS.clear(label),
      undo: async () => {
        await changeGround(test, (found) => withScore(found, day, id, score));
        setTurn((before) => before + 1);
      },
    });
  };
  const end = async (): Promise<void> => {
    try {
      const ended = endLook(
        latest(test),
        batch && latest(batch),
        all.potTests,
        sayWhyOfBatch,
        today,
        nowStamp(),
      );
      const saved = await keepWithUndo(
        [ended.test, ...(ended.batch ? [ended.batch] : [])],
        sayUndo(ended.test.said, batch?.name ?? '', ended.batch !== undefined),
      );
      if (saved === 'stored') goTo({ place: 'book', pots: 'test', pot: test.id }, 'replace');
      else setSays(GROUND_WORDS.trouble[saved]);
    } catch (cause) {
      if (!(cause instanceof PotTestError)) throw cause;
      setSays(POT_WORDS.wrong[cause.code]);
    }
  };
  const isSound = !test.toSow && day >= test.sownOn;
  return (
    <div class="pots score-page stack">
      <div>
        <BackLink to={{ place: 'book', pots: 'test', pot: test.id }} says={POT_WORDS.toTest} />
        <h1 tabIndex={-1}>{WORDS.when(day, today)}</h1>
        <p class="small soft">{batch?.name}</p>
      </div>
      {!isSound && <p role="alert">{test.toSow ? WORDS.notSownYet : WORDS.beforeSowing}</p>}
      {isSound && (
        <ol class="pot-row" aria-label={WORDS.pots}>
          {pots.map(({ id, label, block }, place) => {
            const isDone = isScored(test, day, id);
            return (
              <li key={id} class={place > 0 && block !== pots[place - 1]?.block ? 'pair-begins' : ''}>
                <button
                  type="button"
                  class={isDone ? 'pot-tab done' : 'pot-tab'}
                  aria-label={isDone ? WORDS.potDone(label) : WORDS.pot(label)}
                  aria-current={place === at ? 'true' : undefined}
                  onClick={() => setAt(place)}
                >
                  {label}
                </button>
              </li>
            );
          })}
        </ol>
      )}
      {isSound && pot && (
        <PotScore
          key={`${pot.id} ${day} ${turn}`}
          test={test}
          pot={pot}
          day={day}
          onScore={(patch) => score(pot.id, patch)}
        />
      )}
      {isSound && (
        <p
          class={
            pot && isScored(test, day, pot.id) ? 'pot-actions score-next near' : 'pot-actions score-next'
          }
        >
          {following && scored.length < pots.length && (
            <button
              type="button"
              class="button next"
              onClick={() => {
                setAt(pots.indexOf(following));
                scrollTo(0, 0);
              }}
            >
              {WORDS.next(following.label)}
            </button>
          )}
          {scored.length === pots.length && (
            <button type="button" class="button next" onClick={() => void end()}>
              {WORDS.done}
            </button>
          )}
        </p>
      )}
      <p role="alert">{says}</p>
      {isSound && (
        <div class="rule-above stack-close">
          <p class="small soft">{WORDS.kept}</p>
          {pot && scoreAt(test, day, pot.id) && (
            <button type="button" class="button-plain" onClick={() => void takeBack(pot)}>
              {WORDS.clear(pot.label)}
            </button>
          )}
          {scored.length > 0 && scored.length < pots.length && (
            <button type="button" class="button-plain" onClick={() => void end()}>
              {WORDS.doneWith(scored.length, pots.length)}
            </button>
          )}
        </div>
      )}
      <details>
        <summary class="small">{WORDS.otherDay}</summary>
        <DayField
          label={WORDS.day}
          wide="pot-field"
          value={day}
          max={today}
          onDay={(chosen) => chosen && setDay(chosen)}
        />
      </details>
    </div>
  );
}
