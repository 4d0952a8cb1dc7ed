import type { BroadEvidence, Evidence } from './evidence.ts';

/**
 * Reports on ORs of signs, exactly. With a = P(report | all members absent) and b = P(report | some member there),
 *   P(report | set) = b + (a − b) ∏ P(member absent),
 * and several such reports on shared members expand by inclusion and exclusion into a sum over the subsets T of the
 * reports: ∏_{t∈T}(a_t − b_t) ∏_{t∉T} b_t · P(all members of ∪T absent). Reports that share no member are independent
 * and form components of their own, so the sums stay short.
 */
export interface BroadComponent {
  /** In a fixed order, narrow ones first: a broader report adds only what the narrower ones leave open. */
  readonly reports: readonly BroadEvidence[];
  /** For each subset T (bit mask, from 1): the members of its union. */
  readonly unions: readonly (readonly number[])[];
  /** `coefficients[m][T]` of the first m + 1 reports. */
  readonly coefficients: readonly Float64Array[];
}

function coefficientsOf(reports: readonly BroadEvidence[]): Float64Array {
  return Float64Array.from({ length: 2 ** reports.length }, (_, subset) =>
    reports.reduce(
      (product, { ifPresent, ifAbsent }, bit) =>
        product * (subset & (1 << bit) ? ifAbsent - ifPresent : ifPresent),
      1,
    ),
  );
}

function componentOf(reports: readonly BroadEvidence[]): BroadComponent {
  const ordered = [...reports].sort(
    (one, other) => one.members.length - other.members.length || (one.label < other.label ? -1 : 1),
  );
  const unions = Array.from({ length: 2 ** ordered.length }, (_, subset) => [
    ...new Set(ordered.flatMap(({ members }, bit) => (subset & (1 << bit) ? members : []))),
  ]);
  const coefficients = ordered.map((_, last) => coefficientsOf(ordered.slice(0, last + 1)));
  return { reports: ordered, unions, coefficients };
}

/** The broad reports of the evidence, grouped into components that share members. */
export function broadComponents(evidence: Evidence): BroadComponent[] {
  const groups: BroadEvidence[][] = [];
  for (const report of evidence.broad) {
    const touching = groups.filter((group) =>
      group.some(({ members }) => members.some((member) => report.members.includes(member))),
    );
    for (const group of touching) groups.splice(groups.indexOf(group), 1);
    groups.push([...touching.flat(), report]);
  }
  return groups.map(componentOf);
}

/** All members of a component's reports. */
export function signsOfComponent({ unions }: BroadComponent): readonly number[] {
  return unions[unions.length - 1]!;
}
