import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DIST = join(ROOT, 'dist');
const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** All that a policy may name as a source: this app's own files, pictures made on the device, and WebAssembly. */
const OWN = new Set(["'self'", "'none'", 'blob:', 'data:', "'wasm-unsafe-eval'"]);

// Needs a build (`npm test` makes one first).
describe.skipIf(!existsSync(join(DIST, 'index.html')))('the built pages', () => {
  const pages = existsSync(DIST) ? readdirSync(DIST).filter((name) => name.endsWith('.html')) : [];

  it.each(pages)('%s has a policy that lets no foreign or written-in script run', (name) => {
    const page = readFileSync(join(DIST, name), 'utf8');
    const policies = [
      ...page.matchAll(/<meta\s+http-equiv="Content-Security-Policy"\s+content="([^"]+)"/g),
    ].map((found) => found[1]!);
    expect(policies).toHaveLength(1);
    const rules = new Map(
      policies[0]!.split(';').map((rule) => {
        const [what = '', ...sources] = rule.trim().split(/\s+/);
        return [what, sources];
      }),
    );
    // Whatever is not named is not allowed (CSP level 3, `default-src`; the others do not fall back to it).
    expect(rules.get('default-src')).toEqual(["'none'"]);
    for (const what of ['base-uri', 'form-action']) expect(rules.get(what), what).toEqual(["'none'"]);
    for (const [what, sources] of rules)
      expect(
        sources.filter((source) => !OWN.has(source)),
        what,
      ).toEqual([]);
    const script = rules.get('script-src') ?? [];
    expect(script.filter((source) => source !== "'self'" && source !== "'wasm-unsafe-eval'")).toEqual([]);
    for (const what of ['style-src', 'connect-src', 'worker-src'])
      expect(rules.get(what), what).toEqual(["'self'"]);
    // It comes before anything that it should hold back, and nothing is written in that it would.
    expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.search(/<script|<link/));
    expect(page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>|<style|\son\w+=|\sstyle=|javascript:/i);
    for (const [, address] of page.matchAll(/\s(?:src|href)="([^"]+)"/g))
      expect(address).toMatch(/^\/(?!\/)/);
  });
});

describe('the source', () => {
  it('turns no text into markup or into script', () => {
    const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.(tsx?|js|mjs)$/.test(name),
    );
    expect(files.length).toBeGreaterThan(200);
    const paths =
      /\b(?:inner|outer)HTML\s*\+?=(?!=)|dangerouslySetInnerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function\(|srcdoc|DOMParser|createContextualFragment|setHTMLUnsafe/;
    for (const name of files) expect(paths.exec(read(join('src', name)))?.[0], name).toBeUndefined();
  });
});

describe('the libraries', () => {
  const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<
    'dependencies' | 'devDependencies',
    Record<string, string>
  >;
  const all = { ...dependencies, ...devDependencies };

  it('are pinned to one version each', () => {
    for (const [name, version] of Object.entries(all))
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
  });

  it('are few, and each has a line that says why', () => {
    const why = read('DEVELOPERS.md').split('## Dependencies')[1]!;
    const unsaid = Object.keys(all).filter((name) => !name.startsWith('@types/') && !why.includes(name));
    expect(unsaid).toEqual([]);
    expect(Object.keys(dependencies).length).toBeLessThanOrEqual(12);
  });
});
