import type { CaseRecord } from '../../../../garden/records.ts';
import type { KeptLook } from '../../../state/kept.ts';
import { describeDayAndYear, describeDayShortly } from '../../../words/dates.ts';
import { describeOutcomeDetails, sayEnd } from '../../../words/outcome.ts';
import { SHEET_PARTS as WORDS } from '../../../words/sheet-parts.ts';
import { describeVerdict, verdictWord } from '../../../words/verdicts.ts';
import { CauseLine, openCauses } from './cause-line.tsx';
import { ofLook, SheetPhoto } from './sheet-photo.tsx';

/** Room on a year's page: what carries the weight, not everything. */
const MOST_PHOTOS = 4;
const MOST_MEASURES = 2;
const MOST_REASONS = 2;

interface CaseOfYearProps {
  readonly kept: CaseRecord;
  /** Those of the year, oldest first. */
  readonly looks: readonly KeptLook[];
}

/** A case as the year of its bed tells it: its photos from look to look with measures, what the last look said and why, how it ended. */
export function CaseOfYear({ kept, looks }: CaseOfYearProps) {
  const judged = looks.filter(({ ranking }) => ranking).at(-1);
  const photos = looks.flatMap((look) => look.photos.map((photo) => ({ photo, date: look.date })));
  const shown = photos.slice(-MOST_PHOTOS);
  const more = photos.length - shown.length;
  return (
    <section class="sheet-case">
      <h3>{kept.plant}</h3>
      {shown.length > 0 && (
        <div class="sheet-photos">
          {shown.map(({ photo, date }) => {
            const { photoId, caption, lines } = ofLook(photo);
            return (
              <SheetPhoto
                key={photoId}
                photoId={photoId}
                caption={`${caption}, ${describeDayShortly(date)}`}
                lines={lines.slice(0, MOST_MEASURES)}
                size="small"
              />
            );
          })}
        </div>
      )}
      {more > 0 && <p class="small soft">{WORDS.morePhotos(more, 'case')}</p>}
      {judged && <Judged look={judged} closed={kept.closedOn !== undefined} />}
      {kept.closedOn && kept.outcome && (
        <p>
          {WORDS.bed.ended}: {sayEnd(kept.outcome)}. {describeOutcomeDetails(kept.outcome)}{' '}
          {kept.outcome.done}
        </p>
      )}
    </section>
  );
}

function Judged({ look, closed }: { readonly look: KeptLook; readonly closed: boolean }) {
  const { ranking, date } = look;
  if (!ranking) return null;
  const { id, headline } = describeVerdict(ranking, ranking.weighedOn ?? date);
  const [leading] = openCauses(ranking);
  return (
    <>
      <p>
        {describeDayAndYear(date)}: {closed ? `${verdictWord(id)}.` : headline}
      </p>
      {leading && <CauseLine cause={leading} look={look} ranking={ranking} reasons={MOST_REASONS} />}
    </>
  );
}
