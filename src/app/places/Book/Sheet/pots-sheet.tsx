import '../PotTest/pot-test.css';
import { garden } from '../../../state/garden.ts';
import { readingTold } from '../../../state/pot-tests.ts';
import { dayOf } from '../../../words/dates.ts';
import { POT_WORDS } from '../../../words/pot-test.ts';
import { sayVerdict } from '../../../words/pot-test-reading.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { PotPlots } from '../PotTest/pot-plots.tsx';
import { Reading } from '../PotTest/reading.tsx';
import { Sheet } from './sheet.tsx';

/** A pot test of a load: what was asked and sown, what it says, how sure that is, and what to mind. */
export function PotsSheet({ testId }: { readonly testId: string }) {
  const all = garden.value;
  if (!all) return <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>;
  const test = all.potTests.find(({ id }) => id === testId);
  if (!test) return <h1 tabIndex={-1}>{SHEET_WORDS.notFound}</h1>;
  const batch = all.batches.find(({ id }) => id === test.batchId);
  const result = readingTold(test);
  return (
    <Sheet
      title={POT_WORDS.of(batch?.name ?? '')}
      back={{ place: 'book', pots: 'test', pot: test.id }}
      backSays={POT_WORDS.toTest}
    >
      <p>
        {POT_WORDS.questions[test.question]} {POT_WORDS.test.sown(test)}
      </p>
      {result && <p class="sheet-verdict">{sayVerdict(result, test.question, dayOf(new Date()))}</p>}
      {result ? (
        <Reading test={test} result={result}>
          <PotPlots test={test} />
        </Reading>
      ) : (
        <PotPlots test={test} />
      )}
    </Sheet>
  );
}
