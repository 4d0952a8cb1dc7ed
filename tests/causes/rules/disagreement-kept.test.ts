import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { EQUIVALENT_OBSERVATIONS, LEANING_LOG_ODDS } from '../../../src/causes/schema.ts';
import { disagreementKept } from './disagreement-kept.ts';
import { change, tryRule } from './rule.ts';

tryRule(disagreementKept, [
  {
    breaks: 'manganese settled on the young leaves',
    by: change('manganese-short', ({ signs }) => ({
      signs: signs.map((entry) => {
        if (!('mark' in entry)) return entry;
        const { old: _, ...young } = entry;
        return young;
      }),
    })),
    complaint: /manganese-short: yellow-between-veins@old has lost/,
  },
  {
    breaks: 'a disagreement that is no longer marked',
    by: change('sulphur-short', ({ signs }) => ({
      signs: signs.map((entry) => ({ ...entry, confidence: 'described' as const })),
    })),
    complaint: /sulphur-short: .* not marked/,
  },
]);

it('what is disputed is drawn from a wider distribution than what is described', () => {
  expect(EQUIVALENT_OBSERVATIONS.disputed).toBeLessThan(EQUIVALENT_OBSERVATIONS.described / 2);
});

// CHALKER-WC: a thin layer only; SPU-MULCH: down to 15 cm, with fine wood renewed each year.
it('wood on the surface keeps a small leaning, far below wood among the roots', () => {
  const { leanings } = KNOWLEDGE.find(({ id }) => id === 'nitrogen-locked')!;
  const of = (setting: string) =>
    LEANING_LOG_ODDS[
      leanings.find(({ when }) => 'setting' in when && when.setting === setting && when.is === 'yes')!.leans
    ];
  expect(of('wood-on-surface')).toBeGreaterThan(0);
  expect(of('wood-in-root-zone')).toBeGreaterThan(3 * of('wood-on-surface'));
});
