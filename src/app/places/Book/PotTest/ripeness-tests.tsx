import { useState } from 'preact/hooks';
import type { BatchRecord } from '../../../../garden/ground-records.ts';
import {
  RIPENESS_BOUNDS,
  RIPENESS_WAYS,
  type RipenessTest,
  type RipenessWay,
} from '../../../../garden/ripeness-test.ts';
import { WithTerms } from '../../../parts/Terms/with-terms.tsx';
import { keepWithUndo, latest } from '../../../state/garden.ts';
import { putRipeness, ripenessFrom, withoutRipeness } from '../../../state/ripeness.ts';
import { dayOf } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { howToMake, sayRipeness, sayTest, RIPENESS_WORDS as WORDS } from '../../../words/ripeness.ts';
import { type FormField, GroundForm } from '../../Ground/ground-form.tsx';

interface OfBatch {
  readonly batch: BatchRecord;
}

/** Home tests of ripeness of a batch: how each is made, what came out, and how little it proves. */
export function RipenessTests({ batch }: OfBatch) {
  const [open, setOpen] = useState<RipenessWay | RipenessTest | undefined>(undefined);
  const [says, setSays] = useState('');
  const tests = [...(batch.ripeness ?? [])].reverse();
  const remove = async (id: string): Promise<void> => {
    const saved = await keepWithUndo([withoutRipeness(latest(batch), id)], WORDS.removed);
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  return (
    <section class="stack-close rule-above">
      <h2>{WORDS.title}</h2>
      <p role="alert">{says}</p>
      <ul class="stack">
        {tests.map((test) => (
          <li key={test.id} class="reading-part">
            <p>
              <WithTerms>{sayTest(test)}</WithTerms>
            </p>
            <ul class="small">
              {sayRipeness(test).map((line) => (
                <li key={line}>
                  <WithTerms>{line}</WithTerms>
                </li>
              ))}
            </ul>
            <span class="line-actions">
              <button
                type="button"
                class="button-plain small"
                aria-label={WORDS.changeThis(sayTest(test))}
                onClick={() => setOpen(test)}
              >
                {WORDS.change}
              </button>
              <button
                type="button"
                class="button-plain small"
                aria-label={WORDS.removeThis(sayTest(test))}
                onClick={() => void remove(test.id)}
              >
                {WORDS.remove}
              </button>
            </span>
          </li>
        ))}
      </ul>
      {open && (
        <RipenessForm
          key={typeof open === 'string' ? open : open.id}
          batch={batch}
          how={typeof open === 'string' ? open : open.how}
          before={typeof open === 'string' ? undefined : open}
          onClose={() => setOpen(undefined)}
        />
      )}
      <details>
        <summary>{WORDS.how}</summary>
        <p class="small">
          <WithTerms>{WORDS.lead}</WithTerms>
        </p>
        <ul class="stack">
          {RIPENESS_WAYS.map((how) => (
            <li key={how} class="stack-close">
              <h3>{WORDS.ways[how]}</h3>
              <p>
                <WithTerms>{howToMake(how).says}</WithTerms>{' '}
                <span class="soft">{WORDS.takes(howToMake(how).days)}</span>
              </p>
              <button
                type="button"
                class="button"
                aria-label={WORDS.enterThis(WORDS.ways[how])}
                onClick={() => setOpen(how)}
              >
                {WORDS.enter}
              </button>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const SEEDS = [0, RIPENESS_BOUNDS.seeds] as const;
const ROOTS = [0, RIPENESS_BOUNDS.rootMm] as const;
const FIELDS: Readonly<Record<RipenessWay, readonly FormField[]>> = {
  'radish-pots': [
    { id: 'sown', label: WORDS.fields.sown, as: 'number', must: true, within: SEEDS },
    { id: 'grown', label: WORDS.fields.grown, as: 'number', must: true, within: SEEDS },
  ],
  'water-extract': [
    { id: 'sown', label: WORDS.fields.extractSown, as: 'number', must: true, within: SEEDS },
    { id: 'grown', label: WORDS.fields.extractGrown, as: 'number', must: true, within: SEEDS },
    { id: 'waterSown', label: WORDS.fields.waterSown, as: 'number', must: true, within: SEEDS },
    { id: 'waterGrown', label: WORDS.fields.waterGrown, as: 'number', must: true, within: SEEDS },
    { id: 'rootMm', label: WORDS.fields.rootMm, as: 'number', unit: 'mm', within: ROOTS },
    { id: 'waterRootMm', label: WORDS.fields.waterRootMm, as: 'number', unit: 'mm', within: ROOTS },
  ],
  'self-heating': [
    {
      id: 'riseCelsius',
      label: WORDS.fields.riseCelsius,
      as: 'number',
      must: true,
      within: RIPENESS_BOUNDS.riseCelsius,
    },
  ],
};
/** As the protocols have it (`MATURITY_TESTS`). */
const USUAL: Readonly<Record<RipenessWay, Readonly<Record<string, string>>>> = {
  'radish-pots': { sown: '20' },
  'water-extract': { sown: '15', waterSown: '15' },
  'self-heating': {},
};

interface RipenessFormProps extends OfBatch {
  readonly how: RipenessWay;
  readonly before: RipenessTest | undefined;
  readonly onClose: () => void;
}

function RipenessForm({ batch, how, before, onClose }: RipenessFormProps) {
  const today = dayOf(new Date());
  const fields = FIELDS[how];
  const initial = before
    ? Object.fromEntries(fields.map(({ id }) => [id, String(before[id as keyof RipenessTest] ?? '')]))
    : USUAL[how];
  return (
    <GroundForm
      title={WORDS.ways[how]}
      needs={() => [batch]}
      fields={[...fields, { id: 'date', label: GROUND_WORDS.day, as: 'day', must: true }]}
      initial={{ ...initial, date: before?.date ?? today }}
      onClose={onClose}
      onSave={async (typed) => {
        const test = ripenessFrom(how, typed, today, before?.id);
        if (typeof test === 'string') return { missing: WORDS.faults[test] };
        return keepWithUndo([putRipeness(latest(batch), test)], WORDS.kept);
      }}
    />
  );
}
