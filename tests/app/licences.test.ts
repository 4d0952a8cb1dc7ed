import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readLicences } from '../../src/app/licences/at-build/read-licences.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Licences that let a library be shipped with the notice kept (SPDX). A new one is looked at before it is put here. */
const FREE = ['MIT', 'BSD-3-Clause', 'Apache-2.0', 'ISC'];

describe('licences of the libraries in the app', () => {
  const found = readLicences(ROOT);

  it('are all known and free, each with its text', () => {
    for (const { name, version, licence, text } of found) {
      expect(FREE, name).toContain(licence);
      expect(version, name).toMatch(/^\d+\.\d+\.\d+/);
      expect(text.length, name).toBeGreaterThan(200);
    }
  });

  it('cover what stands in package.json, what that brings along, and the service worker', () => {
    const names = found.map(({ name }) => name);
    for (const name of ['preact', '@preact/signals', '@preact/signals-core', 'idb-keyval', 'workbox-core'])
      expect(names).toContain(name);
  });

  it('stop the build where there are none', () => {
    expect(() => readLicences('/nowhere')).toThrow();
  });
});
