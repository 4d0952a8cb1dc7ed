import './ground-place.css';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { route } from '../../state/route.ts';
import { GROUND_PLACES as WORDS } from '../../words/ground-places.ts';

const waiting = (says: string) => <h1 tabIndex={-1}>{says}</h1>;
const BedsPage = onUse(() => import('./beds-page.tsx').then((part) => part.BedsPage), waiting(WORDS.beds));
const BedPage = onUse(() => import('./bed-page.tsx').then((part) => part.BedPage), waiting('…'));
const BatchesPage = onUse(
  () => import('./batches-page.tsx').then((part) => part.BatchesPage),
  waiting(WORDS.batches),
);
const BatchPage = onUse(() => import('./batch-page.tsx').then((part) => part.BatchPage), waiting('…'));
const WeatherPage = onUse(
  () => import('./weather-page.tsx').then((part) => part.WeatherPage),
  waiting(WORDS.weather),
);
const NormalLeavesPage = onUse(
  () => import('./NormalLeaves/normal-leaves-page.tsx').then((part) => part.NormalLeavesPage),
  waiting(WORDS.normal),
);

/** Ground: the beds in the order of the walk, what went on them, what grows there, and the weather over them. */
export function GroundPlace() {
  const at = route.value;
  if (at.place !== 'ground') return null;
  if (at.page === 'normal-leaves')
    return <NormalLeavesPage key={`${at.crop} ${at.variety}`} crop={at.crop} variety={at.variety} />;
  if (at.page === 'weather') return <WeatherPage />;
  if (at.page === 'batches' && at.batch) return <BatchPage key={at.batch} batchId={at.batch} />;
  if (at.page === 'batches') return <BatchesPage />;
  if (at.bed !== undefined) return <BedPage key={at.bed} bedId={at.bed} />;
  return <BedsPage />;
}
