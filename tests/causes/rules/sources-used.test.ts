import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { SOURCES } from '../../../src/causes/sources.ts';
import { unusedSources } from './sources-used.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** All code of the project but the list itself and this file. */
const code = ['src', 'tests']
  .flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  )
  .filter((name) => /\.tsx?$/.test(name) && !/causes\/(rules\/sources-used\.test|sources)\.ts$/.test(name))
  .map((name) => readFileSync(root + name, 'utf8'))
  .join('\n');

// A source that nothing rests on only looks learned.
it('every source of the list is cited somewhere', () => {
  expect(unusedSources(Object.keys(SOURCES), code)).toEqual([]);
});

it('finds out a source that nothing cites, also where its key is part of another', () => {
  expect(unusedSources(['AB-NMP', 'UMD'], "source: 'UMD-NUT' // AB-NMP")).toEqual(['UMD']);
});

it('every source says what it is, by whom and where to find it', () => {
  for (const [key, { title, by, year, at }] of Object.entries(SOURCES)) {
    expect(key).toMatch(/^[A-Z][A-Z0-9-]+$/);
    for (const text of [title, by, year, at]) expect(text, key).toMatch(/\S/);
    expect(at, key).toMatch(/https?:\/\/\S+|memory|seen|via/);
  }
});
