import { cpSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { ROOT } from './browser.ts';

/** By this a page tells which build it was loaded from. */
export const SECOND = 'data-build="second"';

/**
 * The build as it would be after a change that reaches every script and style: each has another name, all that name it
 * follow, and the service worker lists the new ones.
 */
export function makeSecondBuild(folder: string): void {
  cpSync(join(ROOT, 'dist'), folder, { recursive: true });
  const assets = join(folder, 'assets');
  const renamed = new Map<string, string>();
  for (const name of readdirSync(assets)) {
    const [, stem, hash, type] = /^(.*)-([\w-]{8})\.(js|css)$/.exec(name) ?? [];
    if (hash) renamed.set(name, `${stem}-${[...hash].reverse().join('')}.${type}`);
  }
  for (const [from, to] of renamed) renameSync(join(assets, from), join(assets, to));
  const named = /[\w.-]+-[\w-]{8}\.(?:js|css)/g;
  const texts = [folder, assets].flatMap((at) => readdirSync(at).map((name) => join(at, name)));
  for (const path of texts.filter((path) => ['.js', '.css', '.html', '.json'].includes(extname(path)))) {
    const before = readFileSync(path, 'utf8');
    const after = before.replace(named, (name) => renamed.get(name) ?? name);
    if (after !== before) writeFileSync(path, after);
  }
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<html', `<html ${SECOND}`));
  const worker = join(folder, 'service-worker.js');
  const listed = readFileSync(worker, 'utf8');
  const relisted = listed.replace(/(url:"index\.html",revision:")/, '$1second-');
  if (relisted === listed) throw new Error('the service worker does not list the page');
  writeFileSync(worker, relisted);
}
