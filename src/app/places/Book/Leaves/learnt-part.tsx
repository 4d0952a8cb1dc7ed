import { fitsNetwork } from '../../../../classifier/own-head/reports-with-own-head.ts';
import type { OwnHeadRecord, OwnMark } from '../../../../garden/own-head-record.ts';
import { forgetOwnHead } from '../../../state/keep-own-head.ts';
import { isOwnHeadDamaged, ownHead } from '../../../state/own-head.ts';
import { capitalise } from '../../../words/causes.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { sayNumbers, sayTested, OWN_LEAVES_WORDS as WORDS } from '../../../words/own-leaves.ts';
import { describeSign } from '../../../words/signs.ts';

interface LearntPartProps {
  /** Photos that could teach now. */
  readonly photos: number | undefined;
}

/** What was learnt last, mark by mark with its numbers, and a way to forget it. Nothing where nothing was. */
export function LearntPart({ photos }: LearntPartProps) {
  const own = ownHead.value;
  if (!own) return isOwnHeadDamaged.value ? <p>{WORDS.damaged}</p> : null;
  const fits = fitsNetwork(own);
  const day = describeDayAndYear(dayOf(new Date(own.learntAt)));
  return (
    <section class="stack">
      <h2>{WORDS.learnt}</h2>
      <p>{WORDS.learntOn(day, own.photos, own.plantings)}</p>
      {!fits && <p>{WORDS.otherNetwork}</p>}
      {fits && photos !== undefined && photos !== own.photos && <p>{WORDS.moreSince}</p>}
      <Marks own={own} />
      <div class="stack-close">
        <button type="button" class="button" onClick={() => void forgetOwnHead(WORDS.forgotten)}>
          {WORDS.forget}
        </button>
        <p class="small soft">{WORDS.forgetWhy}</p>
      </div>
    </section>
  );
}

function Marks({ own: { marks } }: { readonly own: OwnHeadRecord }) {
  const used = marks.filter(({ end }) => end === 'used');
  const tried = marks.filter(({ end, tested }) => end !== 'used' && tested);
  return (
    <>
      {used.length === 0 && <p>{WORDS.usesNone}</p>}
      {used.length > 0 && (
        <section>
          <h3>{WORDS.used}</h3>
          <MarkList marks={used} />
        </section>
      )}
      {tried.length > 0 && (
        <details>
          <summary>{WORDS.notUsed(tried.length)}</summary>
          <MarkList marks={tried} />
        </details>
      )}
    </>
  );
}

function MarkList({ marks }: { readonly marks: readonly OwnMark[] }) {
  return (
    <ul class="leaves-marks">
      {marks.map((one) => (
        <li key={one.mark}>
          <p>
            <strong>{capitalise(describeSign(one.mark).what)}</strong>
          </p>
          <p>{sayTested(one)}</p>
          <details>
            <summary class="small">{WORDS.numbers}</summary>
            {sayNumbers(one).map((line) => (
              <p key={line} class="small soft">
                {line}
              </p>
            ))}
          </details>
        </li>
      ))}
    </ul>
  );
}
