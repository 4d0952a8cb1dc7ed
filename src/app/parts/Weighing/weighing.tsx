import './weighing.css';
import type { RankedCause } from '../../../ranker/types.ts';
import type { Answers } from '../../../signs/types.ts';
import type { KeptRanking } from '../../state/kept.ts';
import { capitalise, causeName, FAMILY_NAMES } from '../../words/causes.ts';
import { describeReason, type Reported } from '../../words/reasons.ts';
import { describeAssumption, sayChance, sayTogether, WEIGHING_WORDS as WORDS } from '../../words/weighing.ts';
import { WithTerms } from '../Terms/with-terms.tsx';
import { Unfold } from '../Unfold/unfold.tsx';
import { Beam } from './beam.tsx';
import { CausePage } from './cause-page.tsx';
import { layOutWeighing, type WeighedLine } from './lay-out-weighing.ts';
import { ReasonsInWords } from './reasons-in-words.tsx';

interface WeighingProps {
  readonly result: KeptRanking;
  readonly answers: Answers;
  readonly newest?: readonly string[];
}

/** The weighing: every leading cause with its beam, its range in gardens, its reasons, and what was assumed. */
export function Weighing({ result, answers, newest = [] }: WeighingProps) {
  const layout = layOutWeighing(result.causes, result.together);
  const reported: Reported = { answers, findings: result.findings };
  const said = layout.families.some(({ lines }) =>
    lines.some((line) => line.for.length + line.against.length > 0),
  );
  return (
    <section class="weighing stack" aria-labelledby="weighing-title" id="weighing">
      <h2 id="weighing-title">{WORDS.title}</h2>
      {result.nothingSaid && <p>{said ? WORDS.onlySetting : WORDS.nothingSaid}</p>}
      <Key network={result.findings.some(({ from }) => from === 'network')} />
      <div
        class="weighing-grid"
        style={{ '--span': layout.mostFor + layout.mostAgainst, '--left': layout.mostAgainst }}
      >
        {layout.families.map(({ family, row, lines }) => [
          <h3 key={family} class="family" style={{ gridRow: row }}>
            {FAMILY_NAMES[family]}
          </h3>,
          ...lines.map((line) => (
            <CauseLine
              key={line.cause.id}
              line={line}
              reported={reported}
              newest={newest}
              nothingSaid={result.nothingSaid}
            />
          )),
        ])}
        {layout.ties.map(({ together, rows }, index) => (
          <div
            key={together.causes.join()}
            class={`tie tie-${index}`}
            style={{ gridRow: `${rows[0]} / ${(rows.at(-1) ?? 0) + 1}` }}
            aria-hidden="true"
          />
        ))}
      </div>
      {layout.ties.length > 0 && (
        <div class="stack-close">
          <h3>{WORDS.together}</h3>
          <ul>
            {layout.ties.map(({ together }) => (
              <li key={together.causes.join()}>
                {capitalise(sayTogether(together.causes, together.probability))}
              </li>
            ))}
          </ul>
        </div>
      )}
      <Others result={result} rest={layout.rest} ruledOut={layout.ruledOut} />
      <Assumed result={result} />
    </section>
  );
}

/** @param network whether the network of signs is one of the voices */
function Key({ network }: { readonly network: boolean }) {
  return (
    <div class="weighing-key small">
      <p>{WORDS.key}</p>
      <p class="weighing-scale">
        <span class="weighing-hand" aria-hidden="true" /> {WORDS.scale}
      </p>
      <ul>
        <li>
          <span class="swatch eye" aria-hidden="true" /> {WORDS.keyEye}
        </li>
        <li>
          <span class="swatch camera" aria-hidden="true" />{' '}
          {network ? WORDS.keyCameraOrNetwork : WORDS.keyCamera}
        </li>
        <li>
          <span class="swatch circumstance" aria-hidden="true" /> {WORDS.keyCircumstance}
        </li>
      </ul>
    </div>
  );
}

/** Row 1 is the first family's heading. */
const FIRST_ROW = 2;

interface CauseLineProps {
  readonly line: WeighedLine;
  readonly reported: Reported;
  readonly newest: readonly string[];
  readonly nothingSaid: boolean;
}

function CauseLine({ line, reported, newest, nothingSaid }: CauseLineProps) {
  const { cause, row } = line;
  const name = causeName(cause.id);
  return (
    <article class="cause" style={{ gridRow: row }} aria-label={name}>
      <h4 class="cause-name">
        <WithTerms>{capitalise(name)}</WithTerms>
      </h4>
      <p class="cause-chance figures">{sayChance(cause, nothingSaid, row === FIRST_ROW)}</p>
      <Beam line={line} name={name} reported={reported} newest={newest} />
      <div class="cause-more">
        <Unfold summary={WORDS.reasons} small>
          {() => <ReasonsInWords cause={cause} reported={reported} />}
        </Unfold>
        <CausePage cause={cause.id} />
      </div>
    </article>
  );
}

interface OthersProps {
  readonly result: KeptRanking;
  readonly rest: readonly RankedCause[];
  readonly ruledOut: readonly RankedCause[];
}

function Others({ result, rest, ruledOut }: OthersProps) {
  return (
    <div>
      {rest.length > 0 && (
        <Unfold summary={WORDS.rest(rest.length)}>
          {() => (
            <ul class="others">
              {rest.map((cause) => (
                <li key={cause.id}>
                  {capitalise(causeName(cause.id))}
                  <span class="small soft figures">{sayChance(cause, result.nothingSaid, false)}</span>
                </li>
              ))}
            </ul>
          )}
        </Unfold>
      )}
      {ruledOut.length > 0 && (
        <Unfold summary={WORDS.ruledOut(ruledOut.length)}>
          {() => (
            <ul class="others">
              {ruledOut.map((cause) => (
                <li key={cause.id}>
                  {capitalise(causeName(cause.id))}
                  <span class="small soft">{sayRuledOut(cause)}</span>
                </li>
              ))}
            </ul>
          )}
        </Unfold>
      )}
    </div>
  );
}

/** What rules a cause out, in the words of a reason. */
const sayRuledOut = ({ ruledOut = '' }: RankedCause): string =>
  describeReason({ sign: ruledOut, decibans: 0, from: [] }, { answers: { signs: {} }, findings: [] }).says;

function Assumed({ result }: { readonly result: KeptRanking }) {
  if (result.assumed.length === 0) return <p class="rule-above small soft">{WORDS.assumedNothing}</p>;
  return (
    <Unfold class="rule-above" summary={`${WORDS.assumed} (${result.assumed.length})`}>
      {() => (
        <ul class="others small">
          {result.assumed.map((assumption) => (
            <li key={assumption.setting}>{capitalise(describeAssumption(assumption))}</li>
          ))}
        </ul>
      )}
    </Unfold>
  );
}
