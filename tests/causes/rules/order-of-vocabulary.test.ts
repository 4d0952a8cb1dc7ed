import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import { CAUSES } from '../../../src/signs/vocabulary.ts';

const folder = fileURLToPath(new URL('../../../src/causes/knowledge/', import.meta.url));

it('the knowledge base holds every cause of the vocabulary once, in its order', () => {
  expect(KNOWLEDGE.map(({ id }) => id)).toEqual(CAUSES.map(({ id }) => id));
});

it('one file a cause, named after it, exporting it by its id in camel case', async () => {
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'index.ts');
  expect(files.map((name) => name.replace(/\.ts$/, '')).sort()).toEqual(CAUSES.map(({ id }) => id).sort());
  for (const { id } of CAUSES) {
    const exported: Record<string, unknown> = await import(`../../../src/causes/knowledge/${id}.ts`);
    const name = id.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
    expect(exported[name], `${id}.ts exports ${name}`).toBe(KNOWLEDGE.find((cause) => cause.id === id));
  }
});
