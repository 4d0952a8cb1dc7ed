import { useState } from 'preact/hooks';
import type { PotTestResult } from '../../../../compare/pot-test/read-pot-test.ts';
import type { Garden } from '../../../../garden/gather-garden.ts';
import type { BatchRecord, PotTestRecord } from '../../../../garden/ground-records.ts';
import { Asking } from '../../../parts/Asking/asking.tsx';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { deleteGround, keepWithUndo, latest } from '../../../state/garden.ts';
import { givenUp, isScored, lookDay, looksOf, readingTold } from '../../../state/pot-tests.ts';
import { goTo, hashOf } from '../../../state/route.ts';
import { dayOf, describeDay, describeDayAndYear } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { sayVerdict } from '../../../words/pot-test-reading.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { PotPlots } from './pot-plots.tsx';
import { Reading } from './reading.tsx';
import { WhatFollows } from './what-follows.tsx';

const WORDS = POT_WORDS.test;

interface TestPageProps {
  readonly all: Garden;
  readonly test: PotTestRecord;
  readonly batch: BatchRecord | undefined;
}

/** One pot test: how it stands, what it says, what follows for the load, its looks. */
export function TestPage({ all, test, batch }: TestPageProps) {
  const today = dayOf(new Date());
  const result = readingTold(test);
  return (
    <article class="pots stack-wide">
      <div>
        <BackLink to={{ place: 'book', pots: 'list' }} says={POT_WORDS.toList} />
        <h1 tabIndex={-1}>{POT_WORDS.of(batch?.name ?? '')}</h1>
        <p class="soft">
          {POT_WORDS.questions[test.question]} {WORDS.sown(test)}
        </p>
      </div>
      <div class="open-pages">
        <div class="page-left stack-wide">
          {result && (
            <section class="stack-close" aria-labelledby="pot-verdict">
              <h2 class="verdict-headline" id="pot-verdict" data-verdict={result.verdict}>
                {sayVerdict(result, test.question, today)}
              </h2>
            </section>
          )}
          <ToDo test={test} today={today} result={result} />
          {result && <WhatFollows all={all} test={test} batch={batch} result={result} />}
        </div>
        <div class="page-right">
          {result ? (
            <Reading test={test} result={result}>
              <PotPlots test={test} />
            </Reading>
          ) : (
            <PotPlots test={test} />
          )}
        </div>
        <div class="page-left stack-wide">
          <Looks test={test} />
          <Actions test={test} />
        </div>
      </div>
    </article>
  );
}

/** What is due, and the one thing to do next. */
function ToDo({
  test,
  today,
  result,
}: {
  readonly test: PotTestRecord;
  readonly today: string;
  readonly result: PotTestResult | undefined;
}) {
  const { toSow, endedOn, lookOn, said } = test;
  const card = (
    <a class={toSow ? 'button next' : 'button'} href={hashOf({ place: 'book', pots: 'card', pot: test.id })}>
      {WORDS.openCard}
    </a>
  );
  if (endedOn)
    return (
      <div class="stack-close">
        <p class="soft">
          {said ? WORDS.endedOn(describeDay(endedOn, today)) : WORDS.gaveUp(describeDay(endedOn, today))}
        </p>
        <p class="pot-actions">
          {result?.next === 'sow-again' && (
            <a class="button next" href={hashOf({ place: 'book', pots: 'plan', pot: test.batchId })}>
              {WORDS.sowAgain}
            </a>
          )}
          {card}
        </p>
      </div>
    );
  const day = lookDay(test, today);
  const isOpen = day > (said?.on ?? '') && test.scores.some(({ date }) => date === day);
  const scored = test.pots.filter(({ id }) => isScored(test, day, id)).length;
  return (
    <div class="stack-close">
      {toSow && <p>{WORDS.toSow}</p>}
      {isOpen && <p>{WORDS.openLook(day, scored, test.pots.length, today)}</p>}
      {/* What lies ahead the verdict has said already. */}
      {!toSow && !isOpen && lookOn !== undefined && (!result || lookOn <= today) && (
        <p class={lookOn <= today ? 'case-due' : ''}>{WORDS.due(lookOn, today)}</p>
      )}
      <p class="pot-actions">
        {!toSow && (
          <a class="button next" href={hashOf({ place: 'book', pots: 'look', pot: test.id })}>
            {sayScore(isOpen, scored === test.pots.length)}
          </a>
        )}
        {card}
      </p>
    </div>
  );
}

const sayScore = (isOpen: boolean, isFull: boolean): string => {
  if (!isOpen) return WORDS.score;
  return isFull ? WORDS.endLook : WORDS.goOnScoring;
};

/** The looks, newest first, each to be put right. */
function Looks({ test }: { readonly test: PotTestRecord }) {
  const days = looksOf(test);
  if (days.length === 0) return null;
  return (
    <section class="stack-close">
      <h2>{WORDS.looks}</h2>
      <ul>
        {days.map((day) => {
          const scores = test.scores.filter(({ date }) => date === day);
          const seeds = test.pots
            .filter(({ id }) => scores.some(({ potId }) => potId === id))
            .reduce((sum, pot) => sum + pot.seeds, 0);
          const up = scores.reduce((sum, { emerged }) => sum + emerged, 0);
          const says = describeDayAndYear(day);
          return (
            <li class="pot-look-line" key={day}>
              <span>{WORDS.lookSays(says, scores.length, up, seeds)}</span>
              <a
                class="link-line small"
                aria-label={WORDS.correctThis(says)}
                href={hashOf({ place: 'book', pots: 'look', pot: test.id, on: day })}
              >
                {WORDS.correct}
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Actions({ test }: { readonly test: PotTestRecord }) {
  const [asking, setAsking] = useState(false);
  const [says, setSays] = useState('');
  const giveUp = async (): Promise<void> => {
    const saved = await keepWithUndo([givenUp(latest(test), dayOf(new Date()))], WORDS.givenUp);
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  const remove = async (): Promise<void> => {
    if (await deleteGround(test, WORDS.removed)) goTo({ place: 'book', pots: 'list' });
  };
  return (
    <div class="case-actions rule-above">
      <p role="alert" class="whole-line">
        {says}
      </p>
      <a class="button-plain" href={hashOf({ place: 'book', sheet: 'pots', of: test.id })}>
        {SHEET_WORDS.make}
      </a>
      {!test.endedOn && (
        <button type="button" class="button-plain" onClick={() => void giveUp()}>
          {WORDS.giveUp}
        </button>
      )}
      {!asking && (
        <button type="button" class="button-plain" onClick={() => setAsking(true)}>
          {WORDS.remove}
        </button>
      )}
      {asking && (
        <Asking
          label={WORDS.remove}
          asks={WORDS.removeAsk}
          yes={WORDS.removeYes}
          no={WORDS.removeNo}
          onYes={() => void remove()}
          onNo={() => setAsking(false)}
        />
      )}
    </div>
  );
}
