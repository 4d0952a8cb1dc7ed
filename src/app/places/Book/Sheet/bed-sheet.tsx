import { growingYearOf } from '../../../../days/growing-year.ts';
import { bedKey } from '../../../../garden/group-by-bed.ts';
import { garden } from '../../../state/garden.ts';
import { historyOf, inYear } from '../../../state/year-of-bed.ts';
import { zone } from '../../../state/zone.ts';
import { dayOf, describeDayAndYear } from '../../../words/dates.ts';
import { sayHappening } from '../../../words/say-happening.ts';
import { SHEET_WORDS } from '../../../words/sheet.ts';
import { Sheet, SheetPart } from './sheet.tsx';

const WORDS = SHEET_WORDS.bed;

/** The year of a bed: all that happened at it, oldest first, as one tells it. */
export function BedSheet({ bedId, year = growingYearOf(dayOf(new Date()), zone.value) }: BedSheetProps) {
  const all = garden.value;
  if (!all) return <h1 tabIndex={-1}>{SHEET_WORDS.waiting}</h1>;
  const bed = all.beds.find(({ id, name }) => id === bedId || bedKey(name) === bedKey(bedId));
  if (!bed) return <h1 tabIndex={-1}>{SHEET_WORDS.notFound}</h1>;
  const happened = inYear(historyOf(all, bed), year, zone.value).reverse();
  return (
    <Sheet title={WORDS.title(bed.name, year)} back={{ place: 'ground', bed: bedId }} backSays={bed.name}>
      {bed.note && <p>{bed.note}</p>}
      <SheetPart title={WORDS.happened}>
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
    </Sheet>
  );
}

interface BedSheetProps {
  readonly bedId: string;
  readonly year: string | undefined;
}
