import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { howOftenWrong, potsTell, SIMULATED } from '../../../src/compare/pot-test/how-often-wrong.ts';
import { planPotTest, sowingCardOf } from '../../../src/compare/pot-test/plan-pot-test.ts';

/** The README's table as printed: crop, pots, pots alike or not, injury, then the four shares. */
const TABLE = readFileSync(new URL('../../../src/compare/pot-test/README.md', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => /^\| (french-bean|tomato|radish) \|/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .map(([, crop, pots, pair, injury, ...shares]) => ({
    at: `${crop} ${pots} ${pair} ${injury}`,
    shares: shares.slice(0, 4).map(Number),
  }));
const printed = (at: string): number[] | undefined => TABLE.find((row) => row.at === at)?.shares;

describe('how often a pot test goes wrong', () => {
  it('holds the numbers of the table that the simulation wrote', () => {
    expect(TABLE.length).toBeGreaterThan(40);
    let rows = 0;
    for (const [crop, byPots] of Object.entries(SIMULATED))
      for (const [pots, { harmless, harmful }] of Object.entries(byPots))
        for (const pair of ['alike', 'unlike'] as const)
          for (const [isHarmful, { [pair]: found }] of [
            [false, harmless],
            [true, harmful],
          ] as const) {
            const row =
              crop === 'radish'
                ? `${crop} ${pots} ${pair}, ${isHarmful ? 40 : 0} % fewer and smaller 0`
                : `${crop} ${pots} ${pair} ${isHarmful ? 30 : 0}`;
            expect([found.safe, found.stopped, found.goOn, found.void], row).toEqual(printed(row));
            rows++;
          }
    expect(rows).toBe(28);
  });

  it('answers with the setting that has no more pots, and with beans for what was not simulated', () => {
    expect(howOftenWrong('residue', 'pea', 5)).toEqual(howOftenWrong('residue', 'french-bean', 4));
    expect(howOftenWrong('residue', 'french-bean', 2)).toBeUndefined();
    expect(howOftenWrong('ripeness', 'radish', 4)).toEqual(SIMULATED.radish?.[4]);
    // 60.4 and 47.8, 85.7 and 66.1 of 100.
    expect(potsTell('residue', 'french-bean', 3)?.freesClean).toBeCloseTo(0.541, 4);
    expect(potsTell('residue', 'french-bean', 3)?.stopsHarmful).toBeCloseTo(0.759, 4);
  });

  it('is on the sowing card, which is the same from the pots as it was from the plan', () => {
    const card = planPotTest({ question: 'residue', sowOn: '2026-05-01', beds: 3, seed: 5 });
    expect(card.tells?.stopsHarmful).toBeGreaterThan(0.9);
    expect(
      sowingCardOf({ question: 'residue', crop: card.crop.id, sownOn: '2026-05-01', pots: card.pots }),
    ).toEqual(card);
    expect(() => sowingCardOf({ question: 'residue', crop: 'kale', sownOn: '2026-05-01', pots: [] })).toThrow(
      'no-such-crop',
    );
  });
});
