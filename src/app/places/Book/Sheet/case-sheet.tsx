import type { CaseRecord } from '../../../../garden/records.ts';
import { cases, type KeptLook, type KeptRanking } from '../../../state/kept.ts';
import { useLooks } from '../../../state/use-looks.ts';
import { BOOK_WORDS } from '../../../words/book.ts';
import { cropName } from '../../../words/crops.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { describeOutcomeDetails, sayEnd } from '../../../words/outcome.ts';
import { saidIn } from '../../../words/said.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { SHEET_PARTS } from '../../../words/sheet-parts.ts';
import { describeVerdict, sayLook } from '../../../words/verdicts.ts';
import { CauseLine, openCauses } from './cause-line.tsx';
import { Lines } from './lines.tsx';
import { Sheet, SheetPart } from './sheet.tsx';
import { ofLook, SheetPhoto } from './sheet-photo.tsx';

const WORDS = SHEET_PARTS.case;
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
  return (
    <>
      {!closed && <p class="sheet-verdict">{verdict.headline}</p>}
      <Photos look={look} />
      {!closed && doing.length > 0 && (
        <SheetPart title={WORDS.verdict}>
          <Lines lines={doing} />
        </SheetPart>
      )}
      <SheetPart title={WORDS.seen} long>
        <Said look={look} />
      </SheetPart>
      <SheetPart title={WORDS.weighed} long>
        {openCauses(ranking)
          .slice(0, MOST_CAUSES)
          .map((cause) => (
            <CauseLine key={cause.id} cause={cause} look={look} ranking={ranking} reasons={MOST_REASONS} />
          ))}
      </SheetPart>
      {verdict.cautions.length > 0 && (
        <SheetPart title={SHEET_PARTS.cautions}>
          <Lines lines={verdict.cautions} />
        </SheetPart>
      )}
    </>
  );
}

function Photos({ look }: { readonly look: KeptLook }) {
  const [first, ...others] = look.photos;
  if (!first) return null;
  return (
    <>
      <SheetPhoto {...ofLook(first)} size="large" />
      {others.length > 0 && (
        <div class="sheet-photos wide">
          {others.map((photo) => (
            <SheetPhoto key={photo.id} {...ofLook(photo)} size="small" />
          ))}
        </div>
      )}
    </>
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
