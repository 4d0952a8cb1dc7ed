import type { CaseRecord, LookPhoto } from '../../../../garden/records.ts';
import type { LeafReading } from '../../../../leaf/types.ts';
import type { RankedCause } from '../../../../ranker/types.ts';
import { cases, type KeptLook, type KeptRanking } from '../../../state/kept.ts';
import { usePicture } from '../../../state/pictures.ts';
import { useLooks } from '../../../state/use-looks.ts';
import { BOOK_WORDS } from '../../../words/book.ts';
import { capitalise, causeName } from '../../../words/causes.ts';
import { cropName } from '../../../words/crops.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { describeMeasures } from '../../../words/measures.ts';
import { describeOutcomeDetails, sayEnd } from '../../../words/outcome.ts';
import { describeReason } from '../../../words/reasons.ts';
import { roleName } from '../../../words/roles.ts';
import { saidIn } from '../../../words/said.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { describeVerdict, sayLook } from '../../../words/verdicts.ts';
import { sayChance } from '../../../words/weighing.ts';
import { Sheet, SheetPart } from './sheet.tsx';

const WORDS = SHEET_WORDS.case;
/** A page or two: the causes and reasons that carry the weight, not every one. */
const MOST_CAUSES = 4;
const MOST_REASONS = 4;

/** A case on a page or two: the plant, what to do, photos with what they show, reasons, looks, end, cautions. */
export function CaseSheet({ caseId }: { readonly caseId: string }) {
  const kept = cases.value?.find(({ id }) => id === caseId);
  const looks = useLooks(caseId);
  if (!cases.value || !looks) return <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>;
  const last = looks.find(({ id }) => id === kept?.looks.at(-1)?.id);
  if (!kept || kept.deletedAt || !last) return <h1 tabIndex={-1}>{SHEET_WORDS.notFound}</h1>;
  return (
    <Sheet title={kept.plant} back={{ place: 'book', caseId }} backSays={BOOK_WORDS.look.toCase}>
      <Facts kept={kept} last={last} />
      {last.ranking ? (
        <Weighed look={last} ranking={last.ranking} closed={kept.closedOn !== undefined} />
      ) : (
        <p>{WORDS.noVerdict}</p>
      )}
      <End kept={kept} />
      <Looks kept={kept} />
    </Sheet>
  );
}

function Facts({ kept, last }: { readonly kept: CaseRecord; readonly last: KeptLook }) {
  const crop = [cropName(kept.crop), kept.variety].filter(Boolean).join(', ');
  const facts = [
    [WORDS.crop, crop],
    [WORDS.bed, kept.bed],
    [WORDS.looked, describeDayAndYear(last.date)],
    [WORDS.note, last.note],
  ] as const;
  return (
    <dl class="sheet-facts">
      {facts.map(
        ([name, says]) =>
          says && (
            <div key={name}>
              <dt class="soft">{name}</dt>
              <dd>{says}</dd>
            </div>
          ),
      )}
    </dl>
  );
}

interface WeighedProps {
  readonly look: KeptLook;
  readonly ranking: KeptRanking;
  readonly closed: boolean;
}

function Weighed({ look, ranking, closed }: WeighedProps) {
  const verdict = describeVerdict(ranking, ranking.weighedOn ?? look.date);
  const doing = [...verdict.meanwhile, ...verdict.courses, ...verdict.byThen];
  const open = ranking.causes.filter(({ ruledOut }) => ruledOut === undefined).slice(0, MOST_CAUSES);
  return (
    <>
      {!closed && <p class="sheet-verdict">{verdict.headline}</p>}
      {!closed && doing.length > 0 && (
        <SheetPart title={WORDS.verdict}>
          <Lines lines={doing} />
        </SheetPart>
      )}
      <Photos look={look} />
      <SheetPart title={WORDS.seen}>
        <Said look={look} />
      </SheetPart>
      <SheetPart title={WORDS.weighed}>
        {open.map((cause) => (
          <Cause key={cause.id} cause={cause} look={look} ranking={ranking} />
        ))}
      </SheetPart>
      {verdict.cautions.length > 0 && (
        <SheetPart title={WORDS.cautions}>
          <Lines lines={verdict.cautions} />
        </SheetPart>
      )}
    </>
  );
}

function Lines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

interface CauseProps {
  readonly cause: RankedCause;
  readonly look: KeptLook;
  readonly ranking: KeptRanking;
}

function Cause({ cause, look, ranking }: CauseProps) {
  const reported = { answers: look.answers, findings: ranking.findings };
  const heaviest = (reasons: RankedCause['for']): string =>
    [...reasons]
      .sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans))
      .slice(0, MOST_REASONS)
      .map((reason) => describeReason(reason, reported).says)
      .join('; ');
  const [speaksFor, against] = [heaviest(cause.for), heaviest(cause.against)];
  return (
    <p>
      <strong>{capitalise(causeName(cause.id))}</strong>: {sayChance(cause, ranking.nothingSaid)}.
      {speaksFor && ` ${capitalise(WORDS.for)}: ${speaksFor}.`}
      {against && ` ${capitalise(WORDS.against)}: ${against}.`}
    </p>
  );
}

function Photos({ look }: { readonly look: KeptLook }) {
  if (look.photos.length === 0) return null;
  return (
    <ul class="sheet-photos">
      {look.photos.map((photo) => (
        <li key={photo.id}>
          <Photo photo={photo} />
        </li>
      ))}
    </ul>
  );
}

function Photo({ photo }: { readonly photo: LookPhoto<LeafReading> }) {
  const address = usePicture(photo.id);
  const role = roleName(photo.role);
  const shows = photo.reading
    ? describeMeasures(photo.reading.measures)
        .filter(({ finer, speaks }) => !finer && speaks)
        .map(({ name, says }) => `${name}: ${says}`)
    : [];
  return (
    <figure>
      {address && <img src={address} alt={role} />}
      <figcaption>{role}</figcaption>
      <Lines lines={shows} />
    </figure>
  );
}

function Said({ look: { answers } }: { readonly look: KeptLook }) {
  const said = saidIn(answers);
  return said.length === 0 ? (
    <p>{BOOK_WORDS.look.nothingSaid}</p>
  ) : (
    <Lines lines={said.map(([what, answer]) => `${what.replace(/\?$/, '')}: ${answer}`)} />
  );
}

function End({ kept: { outcome } }: { readonly kept: CaseRecord }) {
  if (!outcome) return null;
  return (
    <SheetPart title={WORDS.ended}>
      <p>{[sayEnd(outcome), describeOutcomeDetails(outcome), outcome.done].filter(Boolean).join(' ')}</p>
    </SheetPart>
  );
}

function Looks({ kept: { looks } }: { readonly kept: CaseRecord }) {
  if (looks.length < 2) return null;
  return (
    <SheetPart title={WORDS.looks}>
      <Lines lines={looks.map((look) => `${describeDayAndYear(look.date)}: ${sayLook(look)}`)} />
    </SheetPart>
  );
}
