import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Licence } from '../licence.ts';

interface Manifest {
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** The service worker is put together from these by the build. */
const IN_SERVICE_WORKER = ['workbox-core', 'workbox-precaching', 'workbox-routing', 'workbox-strategies'];

/**
 * Every library in the built app, with those that it brings along, and its licence. Runs at build time.
 * @param root folder of `package.json` and `node_modules`
 * @throws where a library names no licence or brings no text of it: then it may not be shipped
 */
export function readLicences(root: string): Licence[] {
  const manifestOf = (folder: string): Manifest =>
    JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;
  const open = [...Object.keys(manifestOf(root).dependencies ?? {}), ...IN_SERVICE_WORKER];
  const found = new Map<string, Licence>();
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    const folder = join(root, 'node_modules', name);
    // What is bundled into another library, or optional and not there, has its notice in that library's text.
    if (found.has(name) || !existsSync(folder)) continue;
    const { version, license, dependencies = {} } = manifestOf(folder);
    const file = readdirSync(folder).find((one) => /^licen[cs]e(\.(md|txt))?$/i.test(one));
    if (!license || !file) throw new Error(`${name} ${version} comes without a licence`);
    const text = readFileSync(join(folder, file), 'utf8').trim();
    found.set(name, { name, version, licence: license, text });
    open.push(...Object.keys(dependencies));
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
}
