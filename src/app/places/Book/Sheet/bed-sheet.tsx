import type { CautionId } from '../../../../causes/cautions.ts';
import { growingYearOf } from '../../../../days/growing-year.ts';
import { bedKey } from '../../../../garden/group-by-bed.ts';
import type { CaseRecord } from '../../../../garden/records.ts';
import { garden } from '../../../state/garden.ts';
import type { KeptLook } from '../../../state/kept.ts';
import { readingTold } from '../../../state/pot-tests.ts';
import { useLooksOf } from '../../../state/use-looks.ts';
import { type Happening, historyOf, inYear } from '../../../state/year-of-bed.ts';
import { zone } from '../../../state/zone.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { sayCautions } from '../../../words/pot-test-reading.ts';
import { sayHappening } from '../../../words/say-happening.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { SHEET_PARTS, TRIAL_CAUTIONS } from '../../../words/sheet-parts.ts';
import { describeVerdict } from '../../../words/verdicts.ts';
import { CaseOfYear } from './case-of-year.tsx';
import { Lines } from './lines.tsx';
import { Sheet, SheetPart } from './sheet.tsx';

const WORDS = SHEET_PARTS.bed;

/** The year of a bed: all that happened at it, oldest first, as one tells it; its cases with photos and reasons; what to mind. */
export function BedSheet({ bedId, year = growingYearOf(dayOf(new Date()), zone.value) }: BedSheetProps) {
  const all = garden.value;
  const bed = all?.beds.find(({ id, name }) => id === bedId || bedKey(name) === bedKey(bedId));
  const happened = all && bed ? inYear(historyOf(all, bed), year, zone.value).reverse() : [];
  const cases = casesIn(happened);
  const looks = useLooksOf(cases);
  if (all && !bed) return <h1 tabIndex={-1}>{SHEET_WORDS.notFound}</h1>;
  if (!bed || !looks) return <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>;
  const looksOf = ({ id }: CaseRecord): KeptLook[] =>
    (looks.get(id) ?? []).filter(({ date }) => growingYearOf(date, zone.value) === year);
  const cautions = [
    ...cautionsOfLooks(
      cases.flatMap((kept) =>
        looksOf(kept)
          .filter(({ ranking }) => ranking)
          .slice(-1),
      ),
    ),
    ...cautionsOfTests(happened),
  ];
  return (
    <Sheet
      title={WORDS.title(bed.name, year)}
      back={{ place: 'ground', bed: bedId }}
      backSays={bed.name}
      hint={WORDS.long}
    >
      {bed.note && <p>{bed.note}</p>}
      <SheetPart title={WORDS.happened} long>
        {happened.length === 0 && <p>{WORDS.nothing}</p>}
        <dl class="sheet-facts">
          {happened.map((one) => (
            <div key={one.id}>
              <dt class="soft">{describeDayAndYear(one.date)}</dt>
              <dd>{sayHappening(one)}</dd>
            </div>
          ))}
        </dl>
      </SheetPart>
      {cases.length > 0 && (
        <SheetPart title={WORDS.cases} long>
          {cases.map((kept) => (
            <CaseOfYear key={kept.id} kept={kept} looks={looksOf(kept)} />
          ))}
        </SheetPart>
      )}
      {cautions.length > 0 && (
        <SheetPart title={SHEET_PARTS.cautions}>
          <Lines lines={[...new Set(cautions)]} />
        </SheetPart>
      )}
    </Sheet>
  );
}

interface BedSheetProps {
  readonly bedId: string;
  readonly year: string | undefined;
}

/** The cases that were looked at or ended in the year, in the order in which they first come up. */
const casesIn = (happened: readonly Happening[]): CaseRecord[] => [
  ...new Map(
    happened.flatMap((one) =>
      one.what === 'look' || one.what === 'ended' ? [[one.kept.id, one.kept] as const] : [],
    ),
  ).values(),
];

/** Each caution once: of two wordings the one without an "if" in front, which is the shorter. */
function cautionsOfLooks(looks: readonly KeptLook[]): string[] {
  const said = new Map<CautionId, string>();
  for (const { ranking, date } of looks) {
    if (!ranking) continue;
    const { cautions } = describeVerdict(ranking, date);
    for (const [at, id] of ranking.verdict.cautions.entries()) {
      const [before, now] = [said.get(id), cautions[at] ?? ''];
      if (before === undefined || now.length < before.length) said.set(id, now);
    }
  }
  return [...said.values()];
}

function cautionsOfTests(happened: readonly Happening[]): string[] {
  const pots = happened.flatMap((one) => {
    const result = one.what === 'pots-told' ? readingTold(one.test) : undefined;
    return result ? sayCautions(result) : [];
  });
  const hasTrial = happened.some(({ what }) => what === 'trial-measured' || what === 'trial-ended');
  return hasTrial ? [...pots, ...TRIAL_CAUTIONS] : pots;
}
