import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const APP = fileURLToPath(new URL('../../src/app', import.meta.url));

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}

const files = filesUnder(APP).filter((file) => /\.(tsx?|css)$/.test(file));
const text = new Map(files.map((file) => [file, readFileSync(file, 'utf8')]));
const AT_ONCE = /(?:import|export)\s(?!type\b)[^'"()]*?from\s*'([^']+)'|import\s+'([^']+)'/g;
const ON_USE = /import\('([^']+)'\)/g;

const named = (file: string, pattern: RegExp): string[] =>
  [...(text.get(file) ?? '').matchAll(pattern)]
    .map((found) => join(dirname(file), found[1] ?? found[2] ?? ''))
    .filter((target) => text.has(target));

/** A file and all that comes with it at once. */
function withAll(start: string): Set<string> {
  const seen = new Set<string>();
  const open = [start];
  for (let file = open.pop(); file; file = open.pop()) {
    if (seen.has(file)) continue;
    seen.add(file);
    open.push(...named(file, AT_ONCE));
  }
  return seen;
}

/** Files that are fetched on use, by what fetches them. */
const roots = new Map<string, string[]>([[join(APP, 'main.tsx'), []]]);
for (const file of files)
  for (const target of named(file, ON_USE)) roots.set(target, [...(roots.get(target) ?? []), file]);
const parts = new Map([...roots.keys()].map((root) => [root, withAll(root)]));

/** Style sheets that are on the page for certain once a part is shown: its own, and those of whatever led to it. */
function sheetsOf(root: string, on: readonly string[] = []): Set<string> {
  const own = [...parts.get(root)!].filter((file) => file.endsWith('.css'));
  const ledBy = [...parts].filter(
    ([other, all]) => other !== root && !on.includes(other) && roots.get(root)!.some((file) => all.has(file)),
  );
  const each = ledBy.map(([other]) => sheetsOf(other, [...on, root]));
  const shared = [...(each[0] ?? [])].filter((sheet) => each.every((sheets) => sheets.has(sheet)));
  return new Set([...own, ...shared]);
}

const classesIn = (sheet: string): string[] =>
  [...text.get(sheet)!.matchAll(/\.([a-z][\w-]*)/g)].map(([, name]) => name!);

/** Words of the class attributes of a file; of a template only what stands in quotes or outside braces. */
const classesUsed = (file: string): Set<string> =>
  new Set(
    [...text.get(file)!.matchAll(/\bclass(?:Name)?=(?:"([^"]*)"|\{([^\n]*)\}?)/g)].flatMap(
      ([, plain, code]) =>
        plain !== undefined
          ? plain.split(/\s+/)
          : [...code!.matchAll(/['"`]([^'"`]*)['"`]/g)].flatMap(([, words]) => words!.split(/[\s${}]+/)),
    ),
  );

describe('style sheets', () => {
  const sheets = files.filter((file) => file.endsWith('.css'));
  const defined = new Map<string, string[]>();
  for (const sheet of sheets)
    for (const name of classesIn(sheet)) defined.set(name, [...(defined.get(name) ?? []), sheet]);

  it('come with every part that uses them, whichever page is opened first', () => {
    const missing = [...parts].flatMap(([root, all]) => {
      const there = sheetsOf(root);
      return [...all]
        .filter((file) => file.endsWith('.tsx'))
        .flatMap((file) =>
          [...classesUsed(file)]
            .filter((name) => defined.has(name) && !defined.get(name)!.some((sheet) => there.has(sheet)))
            .map((name) => `${relative(APP, root)}: ${relative(APP, file)} uses .${name}`),
        );
    });
    expect(missing).toEqual([]);
  });

  it('hold no class that nothing uses', () => {
    const said = files
      .filter((file) => /\.tsx?$/.test(file))
      .map((file) => text.get(file)!)
      .join('\n');
    const unused = [...defined.keys()].filter((name) => !new RegExp(`\\b${name}\\b`).test(said));
    // Made of a word and an id where they are used.
    const MADE = /^(tie|way|layer-swatch|band|tint)-/;
    expect(unused.filter((name) => !MADE.test(name))).toEqual([]);
  });
});
