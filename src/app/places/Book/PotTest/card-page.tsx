import { useState } from 'preact/hooks';
import { CAUTIONS } from '../../../../causes/cautions.ts';
import { SOWING_STEPS, type SowingCard } from '../../../../compare/pot-test/plan-pot-test.ts';
import type { BatchRecord, PotTestRecord } from '../../../../garden/ground-records.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { DayField } from '../../../parts/DayField/day-field.tsx';
import { keepWithUndo, latest } from '../../../state/garden.ts';
import { cardOf, inPlace, sownOnDay } from '../../../state/pot-tests.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { PotPlan } from './pot-plan.tsx';

const WORDS = POT_WORDS.card;

interface CardPageProps {
  readonly test: PotTestRecord;
  readonly batch: BatchRecord | undefined;
}

/** Everything that is needed at the potting bench, on one sheet; made to be printed. */
export function CardPage({ test, batch }: CardPageProps) {
  const card = cardOf(test);
  return (
    <article class="pots sowing-card stack-wide">
      <div class="stack-close">
        <div class="unprinted">
          <BackLink to={{ place: 'book', pots: 'test', pot: test.id }} says={POT_WORDS.toTest} />
        </div>
        <h1 tabIndex={-1}>{WORDS.of(batch?.name ?? POT_WORDS.theLoad)}</h1>
        <p>
          {test.toSow ? WORDS.sowOn(test.sownOn) : WORDS.sownOn(test.sownOn)}{' '}
          {POT_WORDS.questions[test.question]}
        </p>
        <p class="small soft">{WORDS.hide}</p>
      </div>
      <Sowing test={test} />
      {card ? <Sheet card={card} /> : <p>{POT_WORDS.wrong['no-such-crop']}</p>}
    </article>
  );
}

/** Says on which day it was sown; prints the card. */
function Sowing({ test }: { readonly test: PotTestRecord }) {
  const [open, setOpen] = useState(false);
  const [says, setSays] = useState('');
  const today = dayOf(new Date());
  const sow = async (day: string): Promise<void> => {
    const saved = await keepWithUndo([sownOnDay(latest(test), day)], WORDS.sownKept);
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  return (
    <div class="unprinted stack-close">
      <p class="pot-actions">
        {test.toSow && (
          <button type="button" class="button next" onClick={() => void sow(today)}>
            {WORDS.sownToday}
          </button>
        )}
        <button type="button" class="button" onClick={() => print()}>
          {WORDS.print}
        </button>
        {!open && (
          <button type="button" class="button-plain" onClick={() => setOpen(true)}>
            {WORDS.otherDay}
          </button>
        )}
      </p>
      {open && (
        <DayField
          label={WORDS.day}
          wide="pot-field"
          value={test.sownOn}
          onDay={(day) => day && void sow(day)}
        />
      )}
      <p role="alert">{says}</p>
    </div>
  );
}

function Sheet({ card }: { readonly card: SowingCard }) {
  const pots = inPlace(card.pots);
  const labels = (role: 'test' | 'control'): string =>
    pots.flatMap((pot) => (pot.role === role ? [pot.label] : [])).join(', ');
  return (
    <div class="card-sheet">
      <section class="stack-close">
        <h2>{WORDS.needs}</h2>
        <ul class="card-list">
          <li>{WORDS.pots(card)}</li>
          <li>{WORDS.seeds(card)}</li>
          <li>{WORDS.labels(pots[0]?.label ?? '', pots.at(-1)?.label ?? '')}</li>
        </ul>
        <h2>{WORDS.mixes}</h2>
        <ul class="card-list">
          <li>{WORDS.inTest(card)}</li>
          <li>{WORDS.inControl}</li>
        </ul>
      </section>
      <section class="stack-close card-plan">
        <h2>{WORDS.places}</h2>
        <p class="small">{WORDS.placesHow}</p>
        <PotPlan pots={pots} />
        <p class="small">{WORDS.inWords(labels('test'), labels('control'))}</p>
        <p class="small">{WORDS.ownSaucer}</p>
      </section>
      <section class="stack-close">
        <h2>{WORDS.looks}</h2>
        <ul class="card-list">
          {card.looks.map(({ on, what }) => (
            <li key={on}>
              {describeDayAndYear(on)}: {WORDS.lookWords[what]}
            </li>
          ))}
        </ul>
        <p class="small">{POT_WORDS.tells(card)}</p>
      </section>
      <section class="stack-close">
        <h2>{WORDS.steps}</h2>
        <ol class="card-list numbered">
          {card.steps.map((id) => (
            <li key={id}>{SOWING_STEPS.find((step) => step.id === id)?.says}</li>
          ))}
        </ol>
      </section>
      <section class="stack-close small card-mind">
        <h2>{WORDS.mind}</h2>
        <ul class="card-list plain">
          {card.question === 'residue' && <li>{POT_WORDS.keepAside}</li>}
          {card.cautions
            .filter((id) => card.question === 'residue' || (id !== 'residue' && id !== 'local-rules'))
            .map((id) => (
              <li key={id}>{CAUTIONS[id]}</li>
            ))}
        </ul>
      </section>
    </div>
  );
}
