import { type BroadComponent, broadComponents, signsOfComponent } from './broad-components.ts';
import type { Evidence, SignEvidence } from './evidence.ts';
import { scalePair } from './likelihoods.ts';

/** A report on one sign, or on the OR of several, that shares no sign with another report. */
export interface LoneReport {
  readonly report: Pick<SignEvidence, 'ifPresent' | 'ifAbsent'>;
  readonly signs: readonly number[];
}

export const reportsBySign = (evidence: Evidence): ReadonlyMap<number, SignEvidence> =>
  new Map(evidence.signs.map((report) => [report.sign, report]));

/** Reports that stand alone, and those that share signs, which can only be weighed together. */
export function partReports(evidence: Evidence): {
  readonly lone: readonly LoneReport[];
  readonly tied: readonly BroadComponent[];
} {
  const reported = reportsBySign(evidence);
  const components = broadComponents(evidence);
  const isLone = (component: BroadComponent): boolean =>
    component.reports.length === 1 && !signsOfComponent(component).some((sign) => reported.has(sign));
  const inComponents = new Set(components.flatMap(signsOfComponent));
  return {
    lone: [
      ...evidence.signs
        .filter(({ sign }) => !inComponents.has(sign))
        .map((report) => ({ report: scalePair(report), signs: [report.sign] })),
      ...components
        .filter(isLone)
        .map(({ reports: [report] }) => ({ report: report!, signs: report!.members })),
    ],
    tied: components.filter((component) => !isLone(component)),
  };
}
