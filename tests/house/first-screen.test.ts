import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
/** What a phone on a weak signal waits for at the first visit, bytes packed (our own measure). */
const MOST_BYTES = 70_000;

/** Every script that the page asks for before it can show anything: those it names, and what they import without waiting for use. */
function firstScripts(): string[] {
  const page = readFileSync(join(DIST, 'index.html'), 'utf8');
  const named = [...page.matchAll(/(?:src|href)="\/([^"]+\.js)"/g)].map((match) => match[1]!);
  const all = new Set(named);
  // A set that grows while it is gone through is gone through to its end.
  for (const script of all)
    for (const [, , path] of readFileSync(join(DIST, script), 'utf8').matchAll(
      /(?:\bfrom|\bimport)\s*(["'`])(\.\.?\/[^"'`]+\.js)\1/g,
    ))
      all.add(normalize(join(dirname(script), path!)));
  return [...all];
}

// Needs a build (`npm test` makes one first).
describe.skipIf(!existsSync(join(DIST, 'index.html')))('the first screen', () => {
  it('asks for no more than 70 kB of script, packed', () => {
    const scripts = firstScripts();
    // One file: each more costs a start from the home screen another answer of the service worker.
    expect(scripts).toHaveLength(1);
    const sizes = scripts.map((script) => [
      script.replace(/-[\w-]{8}\.js$/, ''),
      gzipSync(readFileSync(join(DIST, script))).length,
    ]);
    const sum = sizes.reduce((total, [, bytes]) => total + (bytes as number), 0);
    expect(sum, JSON.stringify(sizes)).toBeLessThanOrEqual(MOST_BYTES);
    expect(sum).toBeGreaterThan(MOST_BYTES / 4);
  });

  it('leaves to later what is heavy: weighing, measuring, packing, tables, plots, the network and what it learns', () => {
    const first = firstScripts();
    const later = readdirSync(join(DIST, 'assets'))
      .filter((name) => name.endsWith('.js') && !first.includes(`assets/${name}`))
      .map((name) => readFileSync(join(DIST, 'assets', name), 'utf8'));
    // One word of each, that nothing else holds.
    for (const word of [
      'whole-colour-golden@new',
      'the outline network has no',
      'deflate-raw',
      'Papa',
      'plot-rule',
      'network-of-signs',
      'setWasmPaths',
      'the fit does not settle',
    ]) {
      expect(
        later.some((text) => text.includes(word)),
        word,
      ).toBe(true);
      for (const script of first)
        expect(readFileSync(join(DIST, script), 'utf8').includes(word), `${script} holds ${word}`).toBe(
          false,
        );
    }
  });
});
