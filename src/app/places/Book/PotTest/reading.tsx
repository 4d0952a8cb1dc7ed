import type { PotTestResult } from '../../../../compare/pot-test/read-pot-test.ts';
import type { PotTestRecord } from '../../../../garden/ground-records.ts';
import {
  sayCautions,
  sayHarm,
  sayHarms,
  sayHowOftenWrong,
  sayLimits,
  sayNext,
  saySeen,
  sayStillBefore,
  sayVoid,
  READING_WORDS as WORDS,
} from '../../../words/pot-test-reading.ts';

interface ReadingProps {
  readonly test: PotTestRecord;
  readonly result: PotTestResult;
  /** Stands after what is seen. */
  readonly children?: preact.ComponentChildren;
}

/** What the pots say: whether the test holds comes first, then what is seen, what it means, what to do, and how sure it is. */
export function Reading({ test, result, children }: ReadingProps) {
  const { question } = test;
  const isVoid = result.verdict === 'invalid';
  const harm = sayHarm(result, question);
  return (
    <div class="stack">
      {isVoid && <Part title={WORDS.whyVoid} lines={sayVoid(result).map(({ why }) => why)} />}
      <Part title={WORDS.next} lines={sayNext(result, question)} />
      <Part title={WORDS.seen} lines={saySeen(test, result.on)} />
      {children}
      {!isVoid && (
        <Part title={WORDS.means} lines={[harm, ...sayStillBefore(result, question), ...sayHarms(result)]}>
          {harm.includes('(') && <p class="small soft">{WORDS.range}</p>}
        </Part>
      )}
      <Part title={WORDS.wrong} lines={sayHowOftenWrong(test)} />
      <Part title={WORDS.cannot} lines={sayLimits(question)} />
      <Part title={WORDS.mind} lines={sayCautions(result)} quiet />
    </div>
  );
}

interface PartProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly quiet?: boolean;
  readonly children?: preact.ComponentChildren;
}

function Part({ title, lines, quiet = false, children }: PartProps) {
  if (lines.length === 0) return null;
  return (
    <section class="reading-part">
      <h3>{title}</h3>
      <ul class={quiet ? 'stack-close small' : 'stack-close'}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {children}
    </section>
  );
}
