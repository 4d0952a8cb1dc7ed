import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { CAUSES } from '../../../src/signs/vocabulary.ts';
import { orderOfVocabulary } from './order-of-vocabulary.ts';
import { tryRule } from './rule.ts';

const folder = fileURLToPath(new URL('../../../src/causes/knowledge/', import.meta.url));

tryRule(orderOfVocabulary, [
  {
    breaks: 'a missing cause',
    by: (causes) => causes.slice(0, -1),
    complaint: /expected unlisted, got undefined/,
  },
  { breaks: 'another order', by: (causes) => [...causes].reverse(), complaint: /got unlisted/ },
]);

it('one file a cause, named after it, exporting it by its id in camel case', async () => {
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'index.ts');
  expect(files.map((name) => name.replace(/\.ts$/, '')).sort()).toEqual(CAUSES.map(({ id }) => id).sort());
  for (const { id } of CAUSES) {
    const exported: Record<string, unknown> = await import(`../../../src/causes/knowledge/${id}.ts`);
    const name = id.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
    expect(exported[name], `${id}.ts exports ${name}`).toBe(KNOWLEDGE.find((cause) => cause.id === id));
  }
});
