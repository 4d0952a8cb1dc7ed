import { BackLink } from '../../parts/BackLink/back-link.tsx';
import './ground-place.css';
import { groupByBed, type NamedBed } from '../../../garden/group-by-bed.ts';
import type { CaseRecord } from '../../../garden/records.ts';
import { cases } from '../../state/kept.ts';
import { hashOf, route } from '../../state/route.ts';
import { causeName, joinWords } from '../../words/causes.ts';
import { describeDayAndYear } from '../../words/dates.ts';
import { GROUND_WORDS as WORDS } from '../../words/ground.ts';
import { sayEnd } from '../../words/outcome.ts';
import { verdictWord } from '../../words/verdicts.ts';
import { CaseEntry } from '../Book/case-entry.tsx';

/** Ground: the beds that the cases name, each with what happened there. */
export function GroundPlace() {
  const at = route.value;
  const beds = groupByBed(cases.value ?? []);
  if (at.place === 'ground' && at.bed !== undefined) {
    const bed = beds.find(({ key }) => (key || UNNAMED) === at.bed);
    return bed ? <BedPage bed={bed} /> : <h1 tabIndex={-1}>{cases.value ? WORDS.notFound : '…'}</h1>;
  }
  return (
    <div class="ground stack-wide">
      <h1 tabIndex={-1}>{WORDS.title}</h1>
      {cases.value && <p class="soft">{beds.length > 0 ? WORDS.lead : WORDS.none}</p>}
      <ul class="beds">
        {beds.map((bed) => (
          <BedLine key={bed.key} bed={bed} />
        ))}
      </ul>
    </div>
  );
}

/** Address of the cases without a bed. */
const UNNAMED = '-';

function BedLine({ bed }: { readonly bed: NamedBed }) {
  const open = bed.cases.filter(({ closedOn }) => !closedOn).length;
  return (
    <li>
      <a class="bed" href={hashOf({ place: 'ground', bed: bed.key || UNNAMED })}>
        <span class="bed-name">{bed.name || WORDS.unnamed}</span>
        <span class="soft">{joinWords([...new Set(bed.cases.map(({ plant }) => plant))].slice(0, 4))}</span>
        <span class="small soft">
          {WORDS.open(open)}, {WORDS.all(bed.cases.length)}
        </span>
      </a>
    </li>
  );
}

interface Happening {
  readonly date: string;
  readonly plant: string;
  readonly caseId: string;
  /** Of a look; the end of a case has none. */
  readonly lookId?: string;
  readonly says: string;
}

function endOf({ id, plant, closedOn, outcome }: CaseRecord): Happening[] {
  if (!closedOn || !outcome) return [];
  return [{ date: outcome.settledOn, plant, caseId: id, says: WORDS.ended(sayEnd(outcome)) }];
}

function BedPage({ bed }: { readonly bed: NamedBed }) {
  const happened: Happening[] = bed.cases
    .flatMap((kept) => [
      ...endOf(kept),
      ...kept.looks.map((look) => ({
        date: look.date,
        plant: kept.plant,
        caseId: kept.id,
        lookId: look.id,
        says: [verdictWord(look.verdict), joinWords(look.leading.slice(0, 2).map(causeName), 'or')]
          .filter(Boolean)
          .join(': '),
      })),
    ])
    .sort((a, b) => (a.date < b.date ? 1 : -1));
  return (
    <div class="ground stack-wide">
      <div>
        <BackLink to={{ place: 'ground' }} says={WORDS.toGround} />
        <h1 tabIndex={-1}>{bed.name || WORDS.unnamed}</h1>
      </div>
      <section>
        <h2 class="list-title">{WORDS.cases}</h2>
        <ul class="entries">
          {bed.cases.map((kept) => (
            <CaseEntry key={kept.id} kept={kept} />
          ))}
        </ul>
      </section>
      <section>
        <h2 class="list-title">{WORDS.history}</h2>
        <ol class="happenings">
          {happened.map((one) => (
            <li key={one.lookId ?? one.caseId}>
              <a
                href={hashOf({
                  place: 'book',
                  caseId: one.caseId,
                  ...(one.lookId ? { look: one.lookId } : {}),
                })}
              >
                <span class="small soft">{describeDayAndYear(one.date)}</span>
                <span>
                  {one.plant}. {one.says}
                </span>
              </a>
            </li>
          ))}
        </ol>
      </section>
    </div>
  );
}
