import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import type { Cause } from '../../../src/causes/schema.ts';
import type { CauseId } from '../../../src/signs/vocabulary.ts';

/** One rule over the whole knowledge base. */
export interface Rule {
  readonly name: string;
  readonly says: string;
  /** One complaint for each breach, naming what breaks it; none when the rule is kept. */
  check(causes: readonly Cause[]): string[];
}

/** A knowledge base that breaks a rule on purpose, and what the rule must complain of. */
export interface Breach {
  readonly breaks: string;
  readonly by: (causes: readonly Cause[]) => readonly Cause[];
  readonly complaint: RegExp;
}

/** The knowledge base with one cause changed. */
export function change(id: CauseId, by: (cause: Cause) => Partial<Cause>): Breach['by'] {
  return (causes) => causes.map((cause) => (cause.id === id ? { ...cause, ...by(cause) } : cause));
}

/** The knowledge base keeps the rule, and the rule finds out every breach: a rule that never complains checks nothing. */
export function tryRule({ name, says, check }: Rule, breaches: readonly Breach[]): void {
  it(`${name}: ${says}`, () => {
    expect(check(KNOWLEDGE)).toEqual([]);
  });
  it.each(breaches)(`${name} finds out: $breaks`, ({ by, complaint }) => {
    const complaints = check(by(KNOWLEDGE));
    expect(complaints.length).toBeGreaterThan(0);
    expect(complaints.join('\n')).toMatch(complaint);
  });
}
