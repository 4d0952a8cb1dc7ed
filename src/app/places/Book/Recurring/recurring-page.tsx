import './recurring.css';
import type { CauseInBed, MetCause } from '../../../../garden/count-causes.ts';
import { countCauses, NEVER_FOUND, yearOf } from '../../../../garden/count-causes.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { TermsOf } from '../../../parts/Terms/terms-of.tsx';
import { WithTerms } from '../../../parts/Terms/with-terms.tsx';
import { casesAlive, placeOfCase } from '../../../state/find-cases.ts';
import { cases } from '../../../state/kept.ts';
import { hashOf } from '../../../state/route.ts';
import { zone } from '../../../state/zone.ts';
import { BOOK_WORDS } from '../../../words/book.ts';
import { nameOfMet, sayMet, sayReturns, RECURRING_WORDS as WORDS } from '../../../words/recurring.ts';
import { CaseEntry } from '../case-entry.tsx';

interface RecurringPageProps {
  readonly cause?: string | undefined;
  readonly bed?: string | undefined;
  readonly year?: string | undefined;
}

/** Which causes were met in which bed, through the years; or the cases behind one of the numbers. */
export function RecurringPage({ cause, bed, year }: RecurringPageProps) {
  if (!cases.value) return <h1 tabIndex={-1}>{WORDS.title}</h1>;
  const all = countCauses(casesAlive.value, placeOfCase.value, zone.value);
  const met = all.find((one) => one.cause === cause);
  return met ? <CasesOf met={met} bed={bed} year={year} /> : <Overview all={all} />;
}

/** In an address a bed that has no name is a dash. */
const inAddress = (key: string): string => key || '-';

function Overview({ all }: { readonly all: readonly MetCause[] }) {
  const found = all.filter(({ cause }) => cause !== NEVER_FOUND);
  const never = all.find(({ cause }) => cause === NEVER_FOUND);
  const several = found.filter((one) => one.cases.length > 1);
  const once = found.filter((one) => one.cases.length === 1);
  const returns = found.flatMap((met) => sayReturns(met).map((line) => ({ ...line, cause: met.cause })));
  const settled = new Set(all.flatMap((one) => one.cases.map(({ id }) => id))).size;
  const years = [...new Set(all.flatMap((one) => one.years))].sort();
  return (
    <article class="recurring stack-wide">
      <div class="stack-close">
        <BackLink to={{ place: 'book' }} says={BOOK_WORDS.toBook} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        <p>{settled === 0 ? WORDS.none : WORDS.lead(settled, found.length, years)}</p>
      </div>
      {found.length > 0 && (
        <section class="stack-close">
          <h2>{WORDS.returns}</h2>
          {returns.length === 0 && (
            <p>{zone.value === 'tropics' ? WORDS.noReturnsWithoutWinter : WORDS.noReturns}</p>
          )}
          <ul>
            {returns.map(({ cause, bed, says }) => (
              <li key={`${cause} ${bed}`}>
                <a class="link-line" href={hashOf({ place: 'book', page: 'recurring', cause, bed })}>
                  {says}
                </a>
              </li>
            ))}
          </ul>
          <TermsOf says={returns.map(({ says }) => says)} />
        </section>
      )}
      {several.length > 0 && (
        <section class="stack-wide">
          <h2>{WORDS.several}</h2>
          {several.map((met) => (
            <OneCause key={met.cause} met={met} />
          ))}
        </section>
      )}
      {once.length > 0 && (
        <details class="rule-above" open={several.length === 0}>
          <summary>{WORDS.once(once.length)}</summary>
          <ul class="met-once">
            {once.map((met) => (
              <li key={met.cause}>
                <a class="link-line" href={hashOf({ place: 'book', page: 'recurring', cause: met.cause })}>
                  {nameOfMet(met.cause)}
                </a>
                <span class="small soft">{sayMet(met)}</span>
              </li>
            ))}
          </ul>
          <TermsOf says={once.map(({ cause }) => nameOfMet(cause))} />
        </details>
      )}
      {never && (
        <p>
          <a class="link-line" href={hashOf({ place: 'book', page: 'recurring', cause: NEVER_FOUND })}>
            {WORDS.never(never.cases.length)}
          </a>
        </p>
      )}
    </article>
  );
}

/** So many years stand side by side on a phone; what was before them stands in one column. */
const MOST_YEARS = 4;

/** One column of years; `until` where it holds all before that year. */
interface Column {
  readonly year: string;
  readonly says: string;
  readonly count: (here: CauseInBed) => number;
}

function columnsOf(years: readonly string[]): readonly Column[] {
  const shown = years.slice(-MOST_YEARS);
  const [first = ''] = shown;
  const columns = shown.map(
    (year): Column => ({ year, says: year, count: ({ byYear }) => byYear.get(year)?.length ?? 0 }),
  );
  if (shown.length === years.length) return columns;
  const before: Column = {
    year: `-${first}`,
    says: WORDS.before(first),
    count: (here) => here.cases.filter((kept) => yearOf(kept, zone.value) < first).length,
  };
  return [before, ...columns];
}

function OneCause({ met }: { readonly met: MetCause }) {
  const name = nameOfMet(met.cause);
  const columns = columnsOf(met.years);
  const to = (bed: string, year?: string): string =>
    hashOf({
      place: 'book',
      page: 'recurring',
      cause: met.cause,
      bed: inAddress(bed),
      ...(year ? { year } : {}),
    });
  return (
    <section class="stack-close">
      <h3>
        <WithTerms>{name}</WithTerms>
      </h3>
      <p class="small soft">{sayMet(met)}</p>
      <table class="met-table figures">
        <caption class="unseen">{name}</caption>
        <thead>
          <tr>
            {columns.map(({ year, says }) => (
              <th scope="col" key={year}>
                {says}
              </th>
            ))}
            {columns.length > 1 && <th scope="col">{WORDS.all}</th>}
          </tr>
        </thead>
        {met.beds.map((here) => {
          const bed = here.bed.name || WORDS.noBed;
          return (
            <tbody key={here.bed.key}>
              <tr>
                <th scope="rowgroup" colSpan={columns.length + 1}>
                  {bed}
                </th>
              </tr>
              <tr>
                {columns.map(({ year, says, count }) => (
                  <td key={year}>
                    <Cell count={count(here)} href={to(here.bed.key, year)} bed={bed} year={says} />
                  </td>
                ))}
                {columns.length > 1 && (
                  <td>
                    <Cell count={here.cases.length} href={to(here.bed.key)} bed={bed} year={WORDS.allYears} />
                  </td>
                )}
              </tr>
            </tbody>
          );
        })}
      </table>
    </section>
  );
}

interface CellProps {
  readonly count: number;
  readonly href: string;
  readonly bed: string;
  readonly year: string;
}

function Cell({ count, href, bed, year }: CellProps) {
  if (count === 0)
    return (
      <span class="met-none">
        <span aria-hidden="true">·</span>
        <span class="unseen">{WORDS.cellNone}</span>
      </span>
    );
  return (
    <a href={href} aria-label={WORDS.cell(count, bed, year)}>
      {count}
    </a>
  );
}

interface CasesOfProps {
  readonly met: MetCause;
  readonly bed: string | undefined;
  readonly year: string | undefined;
}

/** The cases behind one number. A year that begins with a dash stands for all before it. */
function CasesOf({ met, bed, year }: CasesOfProps) {
  const here = met.beds.find((one) => inAddress(one.bed.key) === bed);
  const isIn = (began: string): boolean =>
    year === undefined || (year.startsWith('-') ? began < year.slice(1) : began === year);
  const found = (bed === undefined ? met.cases : (here?.cases ?? [])).filter((kept) =>
    isIn(yearOf(kept, zone.value)),
  );
  const where = [
    bed === undefined ? '' : here?.bed.name || WORDS.noBed,
    year?.startsWith('-') ? WORDS.before(year.slice(1)) : year,
  ];
  return (
    <article class="recurring stack-wide">
      <div class="stack-close">
        <BackLink to={{ place: 'book', page: 'recurring' }} says={WORDS.toTable} />
        <h1 tabIndex={-1}>
          <WithTerms>{WORDS.casesOf(nameOfMet(met.cause), where.filter(Boolean).join(', '))}</WithTerms>
        </h1>
      </div>
      {found.length === 0 && <p>{WORDS.gone}</p>}
      <ul class="entries">
        {found.map((kept) => (
          <CaseEntry key={kept.id} kept={kept} />
        ))}
      </ul>
    </article>
  );
}
