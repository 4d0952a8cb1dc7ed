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

/** Brought along by others, but in no built file: types, and what only Node asks for. */
const NOT_SHIPPED = /^(@types\/.*|@webgpu\/types|node-fetch)$/;

/** Libraries without a file: the notice at the head of their sources, and a library whose file holds the same licence. */
const TEXT_OF: Readonly<Record<string, { readonly notice: string; readonly library: string }>> =
  Object.fromEntries(
    ['core', 'backend-cpu', 'backend-wasm'].map((part) => [
      `@tensorflow/tfjs-${part}`,
      { notice: 'Copyright 2017–2024 Google LLC. All Rights Reserved.', library: 'long' },
    ]),
  );

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
    if (found.has(name) || NOT_SHIPPED.test(name) || !existsSync(folder)) continue;
    const { version, license, dependencies = {} } = manifestOf(folder);
    const text = textIn(folder) ?? textElsewhere(name, root);
    if (!license || !text) throw new Error(`${name} ${version} comes without a licence`);
    found.set(name, { name, version, licence: license, text });
    open.push(...Object.keys(dependencies));
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The file of a library, or the last part of what it says of itself where that holds the licence. */
function textIn(folder: string): string | undefined {
  const names = readdirSync(folder);
  const file = names.find((one) => /^licen[cs]e(\.(md|txt))?$/i.test(one));
  if (file) return readFileSync(join(folder, file), 'utf8').trim();
  const about = names.find((one) => /^readme\.md$/i.test(one));
  const said = about && readFileSync(join(folder, about), 'utf8');
  return said && /^LICENSE\b.*\n-+\n([\s\S]*Permission is hereby granted[\s\S]*)/m.exec(said)?.[1]?.trim();
}

function textElsewhere(name: string, root: string): string | undefined {
  const { notice, library } = TEXT_OF[name] ?? {};
  const text = library && textIn(join(root, 'node_modules', library));
  return text && `${notice}\n\n${text}`;
}
