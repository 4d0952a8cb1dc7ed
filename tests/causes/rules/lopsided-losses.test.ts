import { expect, it } from 'vitest';
import { COURSES } from '../../../src/causes/courses.ts';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';

const byId = (id: string) => KNOWLEDGE.find((cause) => cause.id === id)!;

it('nothing is dearer to leave alone than a load with weedkiller residue', () => {
  const residue = byId('residue-in-compost').losses.leave;
  const others = KNOWLEDGE.filter(({ id }) => id !== 'residue-in-compost');
  expect(residue).toBeGreaterThan(100);
  for (const { id, losses } of others) expect(losses.leave, id).toBeLessThan(residue);
});

it('acting costs something everywhere, so acting against the harmless never pays', () => {
  for (const { id, needless } of COURSES) expect(needless, id).toBeGreaterThan(0);
  const harmless = KNOWLEDGE.filter(({ losses }) => losses.leave === 0);
  expect(harmless.map(({ id }) => id)).toContain('variety-colour');
  for (const { id, remedies } of harmless) expect(remedies, id).toEqual([]);
});
