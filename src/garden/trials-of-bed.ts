import type { Garden } from './gather-garden.ts';
import type { TrialLayout, TrialRecord } from './trial-record.ts';

/** One thing of a trial in the year of a bed that it lies in. */
export interface TrialHappening {
  readonly id: string;
  readonly date: string;
  readonly trial: TrialRecord;
  readonly what: 'trial-laid-out' | 'trial-measured' | 'trial-ended';
}

const isIn = (layout: TrialLayout, bedId: string): boolean =>
  layout.units.some(({ at }) => layout.beds[at]?.bedId === bedId);

/** The trials that lie in a bed: laid out, measured there, ended. */
export function trialsOfBed({ trials }: Pick<Garden, 'trials'>, bedId: string): TrialHappening[] {
  return trials.flatMap((trial): TrialHappening[] => {
    const layouts = trial.layouts.filter((layout) => isIn(layout, bedId));
    if (layouts.length === 0) return [];
    const here = new Set(
      layouts.flatMap(({ beds, units }) =>
        units.filter(({ at }) => beds[at]?.bedId === bedId).map(({ id }) => id),
      ),
    );
    const days = new Set(trial.readings.filter(({ unitId }) => here.has(unitId)).map(({ date }) => date));
    const one = (what: TrialHappening['what'], date: string): TrialHappening => ({
      id: `${trial.id}:${what}:${date}`,
      date,
      trial,
      what,
    });
    return [
      ...layouts.map(({ date }) => one('trial-laid-out', date)),
      ...[...days].map((date) => one('trial-measured', date)),
      ...(trial.ended ? [one('trial-ended', trial.ended.date)] : []),
    ];
  });
}
