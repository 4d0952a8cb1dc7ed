import './trial.css';
import '../../Ground/ground-place.css';
import { groundRecords } from '../../../state/garden.ts';
import type { Route } from '../../../state/route.ts';
import { trialOn } from '../../../state/trials.ts';
import { LayOutPage } from './lay-out-page.tsx';
import { MeasurePage } from './measure-page.tsx';
import { PlanPage } from './plan-page.tsx';
import { TrialPage } from './trial-page.tsx';

type TrialRoute = Extract<Route, { readonly place: 'book' }> & { readonly trial: string };

/** One trial: what is tried, its layout, its measuring, what came out. A page of a trial not begun yet makes it at the first touch. */
export function TrialPlace({ at }: { readonly at: TrialRoute }) {
  if (!groundRecords.value) return <h1 tabIndex={-1}>…</h1>;
  const trial = trialOn(at.trial);
  switch (at.step) {
    case 'plan':
      return <PlanPage key={trial.id} trial={trial} bed={at.bed} />;
    case 'lay-out':
      return <LayOutPage key={trial.id} trial={trial} bed={at.bed} />;
    case 'measure':
      return <MeasurePage key={trial.id} trial={trial} />;
    default:
      return <TrialPage key={trial.id} trial={trial} />;
  }
}
