import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { SOURCES } from '../../../src/causes/sources.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** All code of the project but the list itself. */
const code = ['src', 'tests']
  .flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  )
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('causes/sources.ts'))
  .map((name) => readFileSync(root + name, 'utf8'))
  .join('\n');

// A source that nothing rests on only looks learned. A citation beside a formula or a test counts as use.
it.each(Object.keys(SOURCES).map((key) => [key]))('%s is cited somewhere', (key) => {
  expect(code).toMatch(new RegExp(`(?<![A-Z0-9-])${key}(?![A-Z0-9-])`));
});
