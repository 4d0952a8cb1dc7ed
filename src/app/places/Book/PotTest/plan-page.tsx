import { useState } from 'preact/hooks';
import { planPotTest, type SowingCard } from '../../../../compare/pot-test/plan-pot-test.ts';
import { TEST_CROPS } from '../../../../compare/pot-test/test-crops.ts';
import { PotTestError, TEST_QUESTIONS, type TestQuestion } from '../../../../compare/pot-test/types.ts';
import type { Garden } from '../../../../garden/gather-garden.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { Segments } from '../../../parts/Choice/segments.tsx';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { WithTerms } from '../../../parts/Terms/with-terms.tsx';
import { keepRecords } from '../../../state/garden.ts';
import { nowStamp } from '../../../state/kept.ts';
import { isLeftOpen, newPotTest } from '../../../state/pot-tests.ts';
import { goTo, hashOf } from '../../../state/route.ts';
import { cropName } from '../../../words/crops.ts';
import { dayOf } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';

const WORDS = POT_WORDS.plan;

/** Warmth of the place, °C: what test crops need lies between these (`TEST_CROPS`). */
const WARMTH = { warm: 18, cool: 10, cold: 6 } as const;
type Warmth = keyof typeof WARMTH;

interface Wish {
  readonly question: TestQuestion;
  readonly sowOn: string;
  readonly several: boolean;
  readonly follows: boolean;
  readonly warmth: Warmth;
  /** Crops of which there is no seed. */
  readonly without: readonly string[];
}

/** The same numbers for the same place on the page, until the test is laid out. */
const anySeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0]!;

function plan(wish: Wish, again: boolean, seed: number): SowingCard | undefined {
  try {
    return planPotTest({
      question: wish.question,
      sowOn: wish.sowOn,
      beds: wish.several ? 2 : 1,
      sensitiveFollows: wish.follows,
      again,
      seedsAtHand: TEST_CROPS.map(({ id }) => id).filter((id) => !wish.without.includes(id)),
      celsius: WARMTH[wish.warmth],
      seed,
    });
  } catch (cause) {
    if (cause instanceof PotTestError) return undefined;
    throw cause;
  }
}

/** Asks what the plan hangs on, shows what it comes to and what that can tell, and lays the test out. */
export function PlanPage({ all, batchId }: { readonly all: Garden; readonly batchId: string | undefined }) {
  const loads = all.batches.filter(({ usedUpOn, id }) => !usedUpOn || id === batchId);
  const [load, setLoad] = useState(batchId ?? (loads.length === 1 ? loads[0]!.id : ''));
  const [wish, setWish] = useState<Wish>({
    question: 'residue',
    sowOn: dayOf(new Date()),
    several: false,
    follows: true,
    warmth: 'warm',
    without: [],
  });
  const [seed] = useState(anySeed);
  const [says, setSays] = useState('');
  const batch = all.batches.find(({ id }) => id === load);
  const again = isLeftOpen(all.potTests, load);
  const card = plan(wish, again, seed);
  const change = (part: Partial<Wish>): void => setWish((before) => ({ ...before, ...part }));
  const layOut = async (): Promise<void> => {
    if (!card || !batch) return;
    const test = newPotTest(card, batch.id, wish.sowOn, nowStamp());
    const saved = await keepRecords([test]);
    if (saved === 'stored') goTo({ place: 'book', pots: 'card', pot: test.id }, 'replace');
    else setSays(GROUND_WORDS.trouble[saved]);
  };
  const residue = wish.question === 'residue';
  return (
    <div class="pots stack-wide">
      <div class="stack-close">
        <BackLink
          to={batch ? { place: 'ground', page: 'batches', batch: batch.id } : { place: 'book', pots: 'list' }}
          says={batch ? batch.name : POT_WORDS.toList}
        />
        <h1 tabIndex={-1}>{batch ? WORDS.of(batch.name) : WORDS.title}</h1>
      </div>
      {loads.length === 0 && (
        <p>
          {WORDS.noBatch}{' '}
          <a class="link-line" href={hashOf({ place: 'ground', page: 'batches' })}>
            {WORDS.toBatches}
          </a>
        </p>
      )}
      {loads.length > 0 && (
        <div class="stack">
          {!batchId && (
            <label class="field pot-field">
              <span>{WORDS.which}</span>
              <select value={load} onChange={({ currentTarget }) => setLoad(currentTarget.value)}>
                {load === '' && <option value="" />}
                {loads.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
          <Segments
            legend={WORDS.question}
            name="question"
            options={TEST_QUESTIONS.map((id) => ({ id, says: POT_WORDS.questions[id] }))}
            value={wish.question}
            onChange={(question) => change({ question })}
          />
          <DayField
            label={WORDS.sowOn}
            wide="pot-field"
            value={wish.sowOn}
            onDay={(day) => day && change({ sowOn: day })}
          />
          {residue && again && <p>{WORDS.again}</p>}
          {residue && !again && (
            <>
              <Segments
                legend={WORDS.beds}
                name="beds"
                options={(['one', 'several'] as const).map((id) => ({ id, says: WORDS.bedsWords[id] }))}
                value={wish.several ? 'several' : 'one'}
                onChange={(beds) => change({ several: beds === 'several' })}
              />
              {!wish.several && (
                <Segments
                  legend={WORDS.follows}
                  name="follows"
                  options={(['yes', 'no'] as const).map((id) => ({ id, says: WORDS[id] }))}
                  value={wish.follows ? 'yes' : 'no'}
                  onChange={(follows) => change({ follows: follows === 'yes' })}
                />
              )}
            </>
          )}
          {residue && (
            <fieldset class="pot-seeds">
              <legend class="small soft">{WORDS.seeds}</legend>
              {TEST_CROPS.filter(({ questions }) => questions.includes('residue')).map(({ id }) => (
                <label key={id} class="pot-tick">
                  <input
                    type="checkbox"
                    checked={!wish.without.includes(id)}
                    onChange={({ currentTarget: { checked } }) =>
                      change({
                        without: checked ? wish.without.filter((one) => one !== id) : [...wish.without, id],
                      })
                    }
                  />
                  <span>{cropName(id)}</span>
                </label>
              ))}
            </fieldset>
          )}
          <Segments
            legend={WORDS.warmth}
            name="warmth"
            options={(Object.keys(WARMTH) as Warmth[]).map((id) => ({ id, says: WORDS.warmthWords[id]() }))}
            value={wish.warmth}
            onChange={(warmth) => change({ warmth })}
          />
        </div>
      )}
      {loads.length > 0 && (
        <section class="stack-close rule-above" aria-live="polite">
          <h2>{WORDS.comesTo}</h2>
          {card ? (
            <>
              <p>
                <WithTerms>{WORDS.sowing(card)}</WithTerms>
              </p>
              <p>
                <WithTerms>{POT_WORDS.tells(card)}</WithTerms>
              </p>
              <p class="soft">{WORDS.takes(card.looks.at(-1)?.on ?? '', wish.sowOn)}</p>
            </>
          ) : (
            <p>{WORDS.impossible}</p>
          )}
        </section>
      )}
      <p role="alert">{says}</p>
      {card && batch && (
        <p>
          <button type="button" class="button next" onClick={() => void layOut()}>
            {WORDS.layOut}
          </button>
        </p>
      )}
    </div>
  );
}
