import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

/** What each folder may import besides itself. No arrow runs back up. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  days: [],
  photo: [],
  leaf: ['photo'],
  season: ['days'],
  garden: ['days'],
  signs: ['days', 'leaf', 'season', 'garden'],
  causes: ['signs'],
  ranker: ['days', 'causes', 'signs'],
  classifier: ['photo', 'signs', 'garden'],
  compare: ['days', 'photo', 'leaf'],
};
const CORE = [...Object.keys(MAY_IMPORT), 'triage.ts'];
MAY_IMPORT['triage.ts'] = Object.keys(MAY_IMPORT);
MAY_IMPORT.app = CORE;
MAY_IMPORT.command = CORE;

/** Files below the faces that may know the DOM or Node. */
const knowsARuntime = (file: string): boolean =>
  /^(photo\/decode-in-(browser|node)\.ts|garden\/(store|backup)\/.*|classifier\/session\/.*)$/.test(
    relative(SRC, file),
  );
/** What is drawn when the app is built comes from the renderer that training uses; nothing of it is shipped. */
const drawsAtBuild = (file: string, target: string): boolean =>
  /^app\/demo\/at-build\//.test(relative(SRC, file)) &&
  relative(SRC, join(dirname(file), target)).startsWith('../training/rendered-leaves/');
const PACKAGES_OF_THE_CORE = new Set(['exifr', 'image-size', 'papaparse']);

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : /\.(ts|tsx|mjs)$/.test(name) ? [path] : [];
  });
}

const IMPORT =
  /(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|import\s+['"]([^'"]+)['"]/g;

function importsOf(file: string): string[] {
  return [...readFileSync(file, 'utf8').matchAll(IMPORT)].map((match) => match[1] ?? match[2] ?? match[3]!);
}

const roomOf = (file: string): string => relative(SRC, file).split('/')[0]!;
const files = filesUnder(SRC);

describe('floor plan', () => {
  it('sees the imports of this house', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(importsOf(join(SRC, 'triage.ts'))).toContain('./ranker/rank.ts');
  });

  it('has no arrow that runs back up', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((target) => target.startsWith('.') && !drawsAtBuild(file, target))
        .map((target) => roomOf(join(dirname(file), target.replace(/\?.*$/, ''))))
        .filter((room) => room !== roomOf(file) && !(MAY_IMPORT[roomOf(file)] ?? []).includes(room))
        .map((room) => `${relative(SRC, file)} imports from ${room}`),
    );
    expect(wrong).toEqual([]);
  });

  it('knows every folder of src', () => {
    const unknown = readdirSync(SRC).filter((name) => !(name in MAY_IMPORT) && !name.startsWith('tsconfig'));
    expect(unknown).toEqual([]);
  });

  it('keeps packages that know a runtime out of the core', () => {
    const wrong = files
      .filter((file) => CORE.includes(roomOf(file)) && !knowsARuntime(file))
      .flatMap((file) =>
        importsOf(file)
          .filter((target) => !target.startsWith('.') && !PACKAGES_OF_THE_CORE.has(target.split('/')[0]!))
          .map((target) => `${relative(SRC, file)} imports ${target}`),
      );
    expect(wrong).toEqual([]);
  });
});
