import bayesjs from 'bayesjs';
import { describe, expect, it } from 'vitest';
import { benchLibrary, expandToTables } from '../../src/command/bench/bench-library.ts';
import { gatherEvidence } from '../../src/ranker/gather-evidence.ts';
import { findingFromEye } from '../../src/signs/findings-from-answers.ts';
import { ALL_SIGNS } from '../../src/signs/members-of.ts';
import { knowledgeModel } from '../../src/triage.ts';

const FINDINGS = Array.from({ length: 12 }, (_, i) =>
  findingFromEye(ALL_SIGNS[(i * 11) % ALL_SIGNS.length]!, i % 4 === 0 ? 'seen' : 'absent'),
);

describe('beside a general library (bayesjs, junction tree)', () => {
  it('a part of the knowledge base gives the same answers, many times sooner', () => {
    const model = knowledgeModel();
    const evidence = gatherEvidence(model, { findings: FINDINGS, circumstances: [] });
    // Throws where any chance differs by more than 1e-9.
    const [here, there] = benchLibrary(model.network, evidence);
    expect(there!.ms / here!.ms).toBeGreaterThan(50);
  });

  it('full tables hold one row for each choice of the causes that can show a sign', () => {
    const model = knowledgeModel();
    const evidence = gatherEvidence(model, { findings: FINDINGS.slice(0, 1), circumstances: [] });
    const network = { ...model.network, causes: model.network.causes.slice(0, 3) };
    const { library, given } = expandToTables(network, evidence);
    expect(Object.keys(library)).toHaveLength(3 + 1 + 1);
    const sum = network.causes.reduce(
      (total, id) => total + bayesjs.infer(library, { [id]: 'yes' }, given),
      0,
    );
    // At least one cause acts, and never more than three.
    expect(sum).toBeGreaterThanOrEqual(1);
    expect(sum).toBeLessThanOrEqual(3);
  });
});
