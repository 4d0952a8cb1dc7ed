import type { LookPhoto } from '../../../garden/records.ts';
import type { LeafReading } from '../../../leaf/types.ts';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { HatchingSwitch } from '../../parts/Specimen/hatching-switch.tsx';
import { Specimen } from '../../parts/Specimen/specimen.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { VerdictWords } from '../../parts/Verdict/verdict.tsx';
import { Weighing } from '../../parts/Weighing/weighing.tsx';
import { cases, type KeptLook } from '../../state/kept.ts';
import { preferences } from '../../state/preferences.ts';
import { useLooks } from '../../state/use-looks.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { PHOTO_TROUBLE_WORDS } from '../../words/photo-troubles.ts';
import { roleName } from '../../words/roles.ts';
import { saidIn } from '../../words/said.ts';
import { PhotoFindings } from '../Look/photo-findings.tsx';

const WORDS = BOOK_WORDS.look;

/** A kept look: photos with what was read from them, what was said, and the ranking as it stood. */
export function LookPage({ caseId, lookId }: { readonly caseId: string; readonly lookId: string }) {
  const looks = useLooks(caseId);
  const look = looks?.find(({ id }) => id === lookId);
  const kept = cases.value?.find(({ id }) => id === caseId);
  if (looks === undefined) return <h1 tabIndex={-1}>…</h1>;
  if (look === undefined) return <h1 tabIndex={-1}>{BOOK_WORDS.notFound}</h1>;
  const heading = [kept?.plant, kept?.bed].filter(Boolean).join(' · ');
  return (
    <article>
      <BackLink to={{ place: 'book', caseId }} says={WORDS.toCase} />
      <h1 tabIndex={-1}>{WORDS.title(describeDayAndYear(look.date))}</h1>
      <p class="soft look-title">{heading}</p>
      <div class="look">
        <KeptPhotos look={look} bed={kept?.bed ?? ''} />
        <div class="look-side look-result stack-wide">
          {look.ranking ? (
            <>
              <p class="small soft">{WORDS.asItStood}.</p>
              <VerdictWords judged={look.ranking} today={look.ranking.weighedOn ?? look.date} />
              <Weighing result={look.ranking} answers={look.answers} />
              {look.knowledge && <p class="small soft">{WORDS.knowledge(look.knowledge)}</p>}
            </>
          ) : (
            <p>{WORDS.noRanking}</p>
          )}
        </div>
        <div class="look-side stack-wide">
          {look.note && (
            <section class="stack-close">
              <h2>{WORDS.note}</h2>
              <p class="kept-note">{look.note}</p>
            </section>
          )}
          <SaidList look={look} />
        </div>
      </div>
    </article>
  );
}

function KeptPhotos({ look, bed }: { readonly look: KeptLook; readonly bed: string }) {
  const { showHatching } = preferences.value;
  if (look.photos.length === 0) return <div class="look-side" />;
  return (
    <section class="look-side stack-wide">
      <h2 class="unseen">{WORDS.photos}</h2>
      {look.photos.map((photo) => (
        <KeptPhoto key={photo.id} photo={photo} day={look.date} bed={bed} showOutline={showHatching} />
      ))}
      <HatchingSwitch says={WORDS.hatching} />
    </section>
  );
}

interface KeptPhotoProps {
  readonly photo: LookPhoto<LeafReading>;
  readonly day: string;
  readonly bed: string;
  readonly showOutline: boolean;
}

function KeptPhoto({ photo, day, bed, showOutline }: KeptPhotoProps) {
  const { reading } = photo;
  const role = roleName(photo.role);
  return (
    <div class="stack-close">
      <Specimen
        photoId={photo.id}
        caption={[role, describeDayAndYear(day), bed].filter(Boolean).join(' · ')}
        showFindings={showOutline}
        unshown={reading?.trouble.includes('too-large') ?? false}
        {...(reading?.leaf.outline ? { outline: reading.leaf.outline } : {})}
      />
      {reading?.trouble.map((code) => (
        <p key={code} class="photo-trouble">
          {PHOTO_TROUBLE_WORDS[code]}
        </p>
      ))}
      {reading && <PhotoFindings reading={reading} network={photo.network} />}
    </div>
  );
}

function SaidList({ look }: { readonly look: KeptLook }) {
  const lines = saidIn(look.answers);
  return (
    <section class="stack-close">
      <h2>{WORDS.said}</h2>
      {lines.length === 0 && <p class="soft">{WORDS.nothingSaid}</p>}
      <dl class="measures said">
        {lines.map(([what, answer]) => (
          <div key={what}>
            <dt>
              <WithTerms>{what}</WithTerms>
            </dt>
            <dd>
              <WithTerms>{answer}</WithTerms>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
