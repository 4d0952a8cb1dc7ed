import type { SeenByNetwork } from '../../../garden/seen-by-network.ts';
import type { LeafReading } from '../../../leaf/types.ts';
import { Swatch } from '../../parts/Specimen/swatch.tsx';
import { LAYER_WORDS, LAYERS_OF } from '../../words/layers.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeMeasures, type MeasureInWords } from '../../words/measures.ts';
import type { LayerId } from '../../workers/lay-layers.ts';
import { NetworkFindings } from './network-findings.tsx';

/** Layers that are drawn on the photo beside these measures: a measure that is picked points out its own. */
export interface Pointing {
  readonly there: readonly LayerId[];
  readonly picked: readonly LayerId[];
  readonly onPick: (layers: readonly LayerId[]) => void;
}

interface PhotoFindingsProps {
  readonly reading: LeafReading;
  readonly network: SeenByNetwork | undefined;
  readonly pointing?: Pointing | undefined;
  /** The list of layers, which holds the numbers of all that is drawn. */
  readonly children?: preact.ComponentChildren;
}

/** The measures of one photo in words with their error, plain ones first. Also used for looks that were kept. */
export function PhotoFindings({ reading, network, pointing, children }: PhotoFindingsProps) {
  const measures = describeMeasures(reading.measures);
  const drawn = pointing?.there.map((id) => LAYER_WORDS[id].measure) ?? [];
  const speaking = measures.filter(({ finer, speaks }) => !finer && speaks);
  const plain = speaking.filter(({ id }) => !drawn.includes(id));
  const finer = measures.filter((measure) => !speaking.includes(measure));
  if (measures.length === 0)
    return <p class="soft">{reading.role === 'whole' ? WORDS.wholeNotMeasured : WORDS.nothingMeasured}</p>;
  return (
    <div class="stack-close">
      <h3>{WORDS.found}</h3>
      {speaking.length === 0 && <p>{WORDS.nothingStandsOut}</p>}
      {children && !isWide() ? (
        <>
          {speaking.length > 0 && <MeasureList measures={speaking} pointing={pointing} />}
          <details>
            <summary class="small">{WORDS.drawn}</summary>
            {children}
          </details>
        </>
      ) : (
        <>
          {children}
          {plain.length > 0 && <MeasureList measures={plain} pointing={pointing} />}
        </>
      )}
      {network && <NetworkFindings seen={network} role={reading.role} />}
      <details>
        <summary class="small">{WORDS.finer}</summary>
        <MeasureList measures={finer} pointing={pointing} />
        <p class="small soft">{WORDS.giveOrTake}</p>
        {reading.white && <p class="small soft">{WORDS.white[reading.white.from]}</p>}
      </details>
    </div>
  );
}

/** On a phone the list of layers is folded, so that the questions and the reasons are not pushed off. */
const isWide = (): boolean => matchMedia('(min-width: 60rem)').matches;

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

interface MeasureListProps {
  readonly measures: readonly MeasureInWords[];
  readonly pointing: Pointing | undefined;
}

function MeasureList({ measures, pointing }: MeasureListProps) {
  return (
    <dl class="measures figures">
      {measures.map(({ id, name, says }) => (
        <div key={id}>
          <dt>
            <MeasureName layers={LAYERS_OF[id] ?? []} name={name} pointing={pointing} />
          </dt>
          <dd>
            <KeptTogether says={says} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface MeasureNameProps {
  readonly layers: readonly LayerId[];
  readonly name: string;
  readonly pointing: Pointing | undefined;
}

/** A name to press where the measure is drawn on the photo, else a plain one. */
function MeasureName({ layers, name, pointing }: MeasureNameProps) {
  const own = pointing ? layers.filter((id) => pointing.there.includes(id)) : [];
  if (!pointing || own.length === 0) return <>{name}</>;
  const isPicked = own.every((id) => pointing.picked.includes(id));
  return (
    <button
      type="button"
      class="button-words measure-name"
      aria-pressed={isPicked}
      onClick={() => pointing.onPick(isPicked ? [] : own)}
    >
      <Swatch of={own[0]!} />
      {name}
    </button>
  );
}
