import type { TrialLayout, TrialRecord } from '../../../../garden/trial-record.ts';
import { garden } from '../../../state/garden.ts';
import { type BedToWalk, bedsToWalk } from '../../../state/read-kept-trial.ts';
import { wayNameOf } from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';

interface BedPlanProps {
  readonly trial: TrialRecord;
  readonly layout: TrialLayout;
}

/** The beds of a layout seen from above, a letter at every place; told apart by letter and hatching. */
export function BedPlan({ trial, layout }: BedPlanProps) {
  const beds = bedsToWalk(layout, garden.value?.beds ?? []);
  const hasSpare = layout.how !== 'whole-beds' && beds.some(({ places, units }) => units.length < places);
  return (
    <div class="stack-close">
      <ul class="way-key">
        {trial.ways.map(({ id }) => (
          <li key={id}>
            <span class={`way-mark way-${id}`}>{id}</span> {wayNameOf(trial, id)}
          </li>
        ))}
      </ul>
      {beds.map((bed) => (
        <PlannedBed key={bed.at} bed={bed} whole={layout.how === 'whole-beds'} />
      ))}
      {layout.how === 'blocks' && <p class="small soft">{WORDS.bracketSays}</p>}
      {hasSpare && <p class="small soft">{WORDS.spareSays}</p>}
    </div>
  );
}

function PlannedBed({ bed, whole }: { readonly bed: BedToWalk; readonly whole: boolean }) {
  if (bed.units.length === 0) return null;
  if (whole)
    return (
      <div class="planned-bed whole">
        <p class="planned-name">{bed.name}</p>
        <span class={`way-mark large way-${bed.units[0]!.way}`}>{bed.units[0]!.way}</span>
      </div>
    );
  return (
    <div class="planned-bed">
      <p class="planned-name">{bed.name}</p>
      <ol class="planned-row">
        {setsOf(bed).map(({ block, places }) => (
          <li key={places[0]!.place} class={block === undefined ? 'planned-set' : 'planned-set tied'}>
            {places.map(({ place, way }) => (
              <span key={place} class="planned-place">
                <span class={`way-mark ${way ? `way-${way}` : 'spare'}`}>{way ?? '–'}</span>
                <span class="planned-number figures">{place}</span>
              </span>
            ))}
          </li>
        ))}
      </ol>
    </div>
  );
}

interface PlannedSet {
  readonly block: string | undefined;
  readonly places: { readonly place: number; readonly way: string | undefined }[];
}

/** The places of a bed in their order, those of one set together; a place without a unit is spare. */
function setsOf({ places, units }: BedToWalk): PlannedSet[] {
  const at = new Map(units.map((unit) => [unit.place, unit]));
  const sets: PlannedSet[] = [];
  for (let place = 1; place <= places; place += 1) {
    const unit = at.get(place);
    const last = sets.at(-1);
    const stands = { place, way: unit?.way };
    if (last && unit?.block !== undefined && last.block === unit.block) last.places.push(stands);
    else sets.push({ block: unit?.block, places: [stands] });
  }
  return sets;
}

/** The plan as a page to take out: on paper only. Beside every place room for what is measured. */
export function PlanSheet({ trial, layout }: BedPlanProps) {
  const beds = bedsToWalk(layout, garden.value?.beds ?? []);
  const unit = trial.unit === 'plot' ? 'plot' : 'plant';
  return (
    <section class="plan-sheet" aria-hidden="true">
      <h1>{trial.name || WORDS.title}</h1>
      <p>{WORDS.seasonOf(WORDS.season(layout.id))}</p>
      <BedPlan trial={trial} layout={layout} />
      <p>{WORDS.printSheet}</p>
      {beds.map((bed) => (
        <table key={bed.at}>
          <caption>{bed.name}</caption>
          <thead>
            <tr>
              <th>{WORDS.place}</th>
              {[1, 2, 3].map((column) => (
                <th key={column}>{WORDS.onDay}</th>
              ))}
              <th>{WORDS.note}</th>
            </tr>
          </thead>
          <tbody>
            {bed.units.map(({ id, place }) => (
              <tr key={id}>
                <td>{WORDS.plantAt(unit, place)}</td>
                <td />
                <td />
                <td />
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}
