import type { LeafReading } from '../../../leaf/types.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeMeasures, type MeasureInWords } from '../../words/measures.ts';

/** The measures of one photo in words with their error, plain ones first. Also used for looks that were kept. */
export function PhotoFindings({ reading }: { readonly reading: LeafReading }) {
  const measures = describeMeasures(reading.measures);
  const plain = measures.filter(({ finer, speaks }) => !finer && speaks);
  const finer = measures.filter((measure) => !plain.includes(measure));
  if (measures.length === 0)
    return <p class="soft">{reading.role === 'whole' ? WORDS.wholeNotMeasured : WORDS.nothingMeasured}</p>;
  return (
    <div class="stack-close">
      <h3>{WORDS.found}</h3>
      {plain.length > 0 ? <MeasureList measures={plain} /> : <p>{WORDS.nothingStandsOut}</p>}
      <details>
        <summary class="small">{WORDS.finer}</summary>
        <MeasureList measures={finer} />
        <p class="small soft">{WORDS.giveOrTake}</p>
        {reading.white && <p class="small soft">{WORDS.white[reading.white.from]}</p>}
      </details>
    </div>
  );
}

/** The doubt stays on one line with its number. */
function KeptTogether({ says }: { readonly says: string }) {
  const at = says.indexOf('give or take');
  if (at < 0) return <>{says}</>;
  return (
    <>
      {says.slice(0, at)}
      <span class="together">{says.slice(at)}</span>
    </>
  );
}

function MeasureList({ measures }: { readonly measures: readonly MeasureInWords[] }) {
  return (
    <dl class="measures figures">
      {measures.map(({ id, name, says }) => (
        <div key={id}>
          <dt>{name}</dt>
          <dd>
            <KeptTogether says={says} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
