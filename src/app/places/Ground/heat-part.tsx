import { useRef, useState } from 'preact/hooks';
import { doubtReading, type ReadingDoubt } from '../../../garden/doubt-reading.ts';
import type { Garden } from '../../../garden/gather-garden.ts';
import type { BatchRecord, HeapReading } from '../../../garden/ground-records.ts';
import { heatCurve } from '../../../garden/judge-batch.ts';
import { airOf } from '../../../garden/list-today.ts';
import { CELSIUS_BOUNDS } from '../../../garden/repair-ground.ts';
import { putReading, readingFrom } from '../../state/edit-ground.ts';
import { keepWithUndo, latest } from '../../state/garden.ts';
import { dayOf, describeDayAndYear } from '../../words/dates.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { BATCH_WORDS as WORDS } from '../../words/ground-batches.ts';
import { figureShown, fromShown, shownUnit } from '../../words/units.ts';
import { GroundForm, sayYesNo, YES_NO } from './ground-form.tsx';
import { HeatCurve } from './heat-curve.tsx';

/** What a heap's thermometer shows, a tap each: every five degrees Celsius, or every ten Fahrenheit. */
const taps = (): number[] =>
  shownUnit('°C') === '°C'
    ? Array.from({ length: 15 }, (_, step) => 5 + step * 5)
    : Array.from({ length: 14 }, (_, step) => fromShown('°C', 40 + step * 10));

interface HeatProps {
  readonly all: Garden;
  readonly batch: BatchRecord;
  readonly onKeep: (changed: BatchRecord, done: string) => Promise<void>;
}

type NewReading = Omit<HeapReading, 'id'>;

/** A heap's readings: the curve, a tap for today, a form for the rest, and all of them in words. */
export function Heat({ all, batch, onKeep }: HeatProps) {
  const [open, setOpen] = useState(false);
  const [exact, setExact] = useState(false);
  const [changing, setChanging] = useState<HeapReading | undefined>(undefined);
  const today = dayOf(new Date());
  const airOn = airOf(all.weather);
  const curve = heatCurve(batch, airOn);
  const [doubted, setDoubted] = useState<NewReading | undefined>(undefined);
  const close = (): void => {
    setOpen(false);
    setExact(false);
    setDoubted(undefined);
  };
  const keepReading = (reading: NewReading): void => {
    void onKeep(putReading(latest(batch), reading), WORDS.readingKept(reading.celsius));
    close();
  };
  const doubtsOf = (reading: NewReading): readonly ReadingDoubt[] =>
    doubtReading(batch, reading, today, airOn(reading.date));
  return (
    <section class="stack-close">
      <h2 class="list-title">{WORDS.heat}</h2>
      {curve.length > 0 && <HeatCurve curve={curve} />}
      {!open && (
        <button type="button" class="button" onClick={() => setOpen(true)}>
          {WORDS.read}
        </button>
      )}
      {open && !exact && (
        <div class="stack-close">
          <p class="small">{WORDS.readHow()}</p>
          <ul class="heat-taps">
            {taps().map((celsius) => (
              <li key={celsius}>
                <button
                  type="button"
                  class="button figures"
                  aria-label={WORDS.degrees(celsius)}
                  onClick={() => {
                    const reading = { date: today, celsius };
                    if (doubtsOf(reading).length > 0) setDoubted(reading);
                    else keepReading(reading);
                  }}
                >
                  {figureShown('°C', celsius)}
                </button>
              </li>
            ))}
          </ul>
          <div role="alert">
            {doubted && doubtsOf(doubted).map((doubt) => <p key={doubt.code}>{WORDS.doubt(doubt)}</p>)}
          </div>
          {doubted && (
            <button type="button" class="button" onClick={() => keepReading(doubted)}>
              {WORDS.keepDoubted(doubted.celsius)}
            </button>
          )}
          <p class="ground-actions">
            <button type="button" class="button-plain" onClick={() => setExact(true)}>
              {WORDS.exact}
            </button>
            <button type="button" class="button-plain" onClick={close}>
              {WORDS.readClose}
            </button>
          </p>
        </div>
      )}
      {open && exact && <ReadingForm batch={batch} today={today} doubtsOf={doubtsOf} onClose={close} />}
      {changing && (
        <ReadingForm
          key={changing.id}
          batch={batch}
          today={today}
          doubtsOf={doubtsOf}
          reading={changing}
          onClose={() => setChanging(undefined)}
        />
      )}
      {batch.readings.length > 0 && (
        <details>
          <summary>{WORDS.readings}</summary>
          <ul>
            {batch.readings.map((reading, at) => {
              const { id, date, celsius, turned } = reading;
              const says = WORDS.reading(
                describeDayAndYear(date),
                celsius,
                curve[at]?.airCelsius,
                turned ?? false,
              );
              return (
                <li class="ground-line" key={id}>
                  <span>{says}</span>
                  <span class="line-actions">
                    <button
                      type="button"
                      class="button-plain small"
                      aria-label={GROUND_WORDS.changeThis(says)}
                      onClick={() => {
                        close();
                        setChanging(reading);
                      }}
                    >
                      {GROUND_WORDS.change}
                    </button>
                    <button
                      type="button"
                      class="button-plain small"
                      aria-label={`${GROUND_WORDS.remove}: ${says}`}
                      onClick={() => {
                        const now = latest(batch);
                        const readings = now.readings.filter((one) => one.id !== id);
                        void onKeep({ ...now, readings }, WORDS.readingGone);
                      }}
                    >
                      {GROUND_WORDS.remove}
                    </button>
                  </span>
                </li>
              );
            })}
          </ul>
        </details>
      )}
    </section>
  );
}

interface ReadingFormProps {
  readonly batch: BatchRecord;
  readonly today: string;
  readonly doubtsOf: (reading: NewReading) => readonly ReadingDoubt[];
  /** To be changed. */
  readonly reading?: HeapReading;
  readonly onClose: () => void;
}

const figure = (value: number | undefined): string => (value === undefined ? '' : String(value));

function ReadingForm({ batch, today, doubtsOf, reading: before, onClose }: ReadingFormProps) {
  // What was asked about once is kept at the second press, as long as it still reads the same.
  const asked = useRef('');
  return (
    <GroundForm
      title={before ? WORDS.readChange : WORDS.read}
      needs={() => [batch]}
      fields={[
        {
          id: 'celsius',
          label: WORDS.celsius,
          as: 'number',
          unit: '°C',
          must: true,
          within: CELSIUS_BOUNDS.heap,
        },
        { id: 'airCelsius', label: WORDS.air, as: 'number', unit: '°C', within: CELSIUS_BOUNDS.air },
        { id: 'date', label: GROUND_WORDS.day, as: 'day', must: true },
        { id: 'turned', label: WORDS.turned, as: 'choice', options: YES_NO },
        { id: 'smells', label: WORDS.smells, as: 'choice', options: YES_NO },
      ]}
      initial={{
        celsius: figure(before?.celsius),
        airCelsius: figure(before?.airCelsius),
        date: before?.date ?? today,
        turned: sayYesNo(before?.turned),
        smells: sayYesNo(before?.smellsOfAmmonia),
      }}
      onClose={onClose}
      onSave={async (typed) => {
        const reading = readingFrom(typed, today);
        if (!reading) return { missing: WORDS.needsCelsius };
        const doubts = doubtsOf(reading);
        const question = doubts.map(WORDS.doubt).join(' ');
        if (doubts.some(({ code }) => code === 'future')) return { missing: question };
        if (question !== asked.current) {
          asked.current = question;
          if (question) return { missing: `${question} ${WORDS.keepAgain}` };
        }
        return keepWithUndo(
          [putReading(latest(batch), reading, before?.id)],
          before ? WORDS.readingChanged : WORDS.readingKept(reading.celsius),
        );
      }}
    />
  );
}
