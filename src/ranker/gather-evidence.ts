import type { Season } from '../causes/schema.ts';
import { membersOf } from '../signs/members-of.ts';
import type { Circumstance, FactorId, Finding, WorkedLeaning } from '../signs/types.ts';
import type { CropId, SignId } from '../signs/vocabulary.ts';
import type { BroadEvidence, ContextEvidence, Evidence, FactorEvidence, SignEvidence } from './evidence.ts';
import { cropOdds, type KnowledgeModel, seasonOdds } from './knowledge-model.ts';

/** What is known about a plant, before it becomes numbers. */
export interface Known {
  readonly findings: readonly Finding[];
  readonly circumstances: readonly Circumstance[];
  readonly crop?: CropId;
  readonly season?: Season;
  /** What this garden has taught: odds multipliers, one a cause. */
  readonly garden?: Float64Array;
  /** Leanings worked out for factors that nobody has answered yet: what asking would be worth. */
  readonly openLeanings?: ReadonlyMap<FactorId, readonly WorkedLeaning[]>;
}

/** Reports on the same thing combine on it: their likelihoods multiply, their reporters are listed. */
function combine<T extends Pick<SignEvidence, 'ifPresent' | 'ifAbsent' | 'from'>>(one: T, other: T): T {
  return {
    ...one,
    ifPresent: one.ifPresent * other.ifPresent,
    ifAbsent: one.ifAbsent * other.ifAbsent,
    from: [...new Set([...one.from, ...other.from])],
  };
}

function gatherSigns(model: KnowledgeModel, findings: readonly Finding[]): Pick<Evidence, 'signs' | 'broad'> {
  const signs = new Map<string, SignEvidence>();
  const broad = new Map<string, BroadEvidence>();
  for (const { sign, from, ifPresent, ifAbsent } of findings) {
    const members = membersOf(sign).map((member) => model.signIndex.get(member)!);
    const shared = { label: sign, ifPresent, ifAbsent, from: [from] };
    if (members.length === 1) {
      const made: SignEvidence = { ...shared, sign: members[0]! };
      const before = signs.get(sign);
      signs.set(sign, before ? combine(before, made) : made);
    } else {
      const made: BroadEvidence = { ...shared, members };
      const before = broad.get(sign);
      broad.set(sign, before ? combine(before, made) : made);
    }
  }
  // In the order of the network, so that the order of the answers cannot matter even in the last digit.
  return {
    signs: [...signs.values()].sort((a, b) => a.sign - b.sign),
    broad: [...broad.values()].sort((a, b) => (a.label < b.label ? -1 : 1)),
  };
}

/** The odds multipliers of a factor with those that were worked out in place of the general ones. */
export function workedLean(
  model: KnowledgeModel,
  factor: number,
  leans: readonly WorkedLeaning[],
): Float64Array {
  const lean = model.network.factors[factor]!.lean.slice();
  const width = model.network.factors[factor]!.outcomes.length;
  for (const { cause, odds } of leans) {
    const row = model.network.causes.indexOf(cause);
    if (row >= 0) lean.set(odds, row * width);
  }
  return lean;
}

function workedBecause(model: KnowledgeModel, leans: readonly WorkedLeaning[]): Map<number, string> {
  return new Map(
    leans.flatMap(({ cause, because }) =>
      because === undefined ? [] : [[model.network.causes.indexOf(cause), because] as const],
    ),
  );
}

/**
 * Several options of one list, all named: horse manure and straw and green waste. For each cause only the one that
 * leans strongest counts, because they are ways of the same thing and would otherwise carry a cause by mere number.
 */
function strongestOfList(model: KnowledgeModel, named: readonly FactorEvidence[]): FactorEvidence[] {
  if (named.length < 2) return [...named];
  const leanings = named.map(({ factor, lean }) =>
    Float64Array.from(lean ?? model.network.factors[factor]!.lean),
  );
  const strength = (option: number, cause: number): number =>
    Math.abs(Math.log(leanings[option]![cause * 2]!));
  for (let cause = 0; cause < model.causes.length; cause++) {
    let strongest = 0;
    for (let option = 1; option < named.length; option++) {
      if (strength(option, cause) > strength(strongest, cause)) strongest = option;
    }
    leanings.forEach((lean, option) => {
      if (option !== strongest) lean[cause * 2] = 1;
    });
  }
  return named.map((evidence, option) => ({ ...evidence, lean: leanings[option]! }));
}

function gatherFactors(model: KnowledgeModel, circumstances: readonly Circumstance[]): FactorEvidence[] {
  const byId = new Map<string, FactorEvidence>();
  for (const { id, outcome, from, leans } of circumstances) {
    const factor = model.factorIndex.get(id);
    if (factor === undefined) throw new RangeError(`expected a factor of the network, got "${id}"`);
    const at = model.network.factors[factor]!.outcomes.indexOf(outcome);
    if (at < 0) throw new RangeError(`expected an outcome of ${id}, got "${outcome}"`);
    // What a person says later about the same thing replaces what the records said.
    byId.set(id, {
      label: `${id}=${outcome}`,
      factor,
      outcome: at,
      from: [from],
      ...(leans ? { lean: workedLean(model, factor, leans), because: workedBecause(model, leans) } : {}),
    });
  }
  const named = [...byId].filter(([id, { outcome }]) => id.includes(':') && outcome === 0);
  const lists = new Set(named.map(([id]) => id.split(':')[0]!));
  for (const list of lists) {
    const ofList = named.filter(([id]) => id.startsWith(`${list}:`));
    strongestOfList(
      model,
      ofList.map(([, evidence]) => evidence),
    ).forEach((evidence, i) => {
      byId.set(ofList[i]![0], evidence);
    });
  }
  return [...byId.values()].sort((a, b) => a.factor - b.factor);
}

/** All that is known, in the indices of the network, in an order of its own. */
export function gatherEvidence(model: KnowledgeModel, known: Known): Evidence {
  const context: ContextEvidence[] = [];
  if (known.crop) context.push({ label: `crop=${known.crop}`, oddsFactor: cropOdds(model, known.crop) });
  if (known.season)
    context.push({ label: `season=${known.season}`, oddsFactor: seasonOdds(model, known.season) });
  if (known.garden?.some((odds) => odds !== 1))
    context.push({ label: 'garden=settled', oddsFactor: known.garden });
  return {
    ...gatherSigns(model, known.findings),
    factors: gatherFactors(model, known.circumstances),
    context,
  };
}

/** Causes that what is known makes impossible, each with the evidence that does. */
export function ruledOut(model: KnowledgeModel, evidence: Evidence): Map<number, string> {
  const out = new Map<number, string>();
  for (const { label, oddsFactor } of evidence.context) {
    oddsFactor.forEach((odds, cause) => {
      if (odds === 0) out.set(cause, label);
    });
  }
  for (const { label, factor, outcome } of evidence.factors) {
    const { lean, outcomes } = model.network.factors[factor]!;
    for (let cause = 0; cause < model.causes.length; cause++) {
      if (lean[cause * outcomes.length + outcome] === 0) out.set(cause, label);
    }
  }
  return out;
}

/** Signs that a person has answered for themselves, alone or as all members of a broader "absent". */
export function answeredByEye(findings: readonly Finding[]): ReadonlySet<SignId> {
  return new Set(
    findings.flatMap(({ sign, from, ifPresent, ifAbsent }) =>
      from === 'eye' && (membersOf(sign).length === 1 || ifPresent < ifAbsent) ? [...membersOf(sign)] : [],
    ),
  );
}
