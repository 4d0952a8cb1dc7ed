import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { openGardenStore } from '../../src/garden/store/garden-store.ts';
import { writesDone } from '../../src/garden/store/open-database.ts';
import { record } from './small-garden.ts';

it('waits for all that is being written, and for what waits its turn behind it', async () => {
  const store = openGardenStore(() => '2026-06-01T08:00:00.000Z');
  const stored: string[] = [];
  const drafts = ['one', 'two', 'three'].map((note) =>
    store.saveDraft(record('draft', 'd', { body: { note } })).then(() => stored.push(note)),
  );
  const picture = store.savePicture('p', new Blob(['x'])).then(() => stored.push('picture'));
  // Every write has begun once the store has been opened.
  await store.device();
  await writesDone();
  expect(stored.sort()).toEqual(['one', 'picture', 'three', 'two']);
  expect((await store.readDraft('d'))?.body).toEqual({ note: 'three' });
  await Promise.all([...drafts, picture]);
});

it('ends where nothing is being written, and where a write was refused', async () => {
  await writesDone();
  const store = openGardenStore(() => '2026-06-01T08:00:00.000Z');
  await store.saveDraft(record('draft', 'again', { body: {} }));
  const other = openGardenStore(() => '2026-06-01T08:00:00.000Z');
  const refused = other.saveRecords([record('bed', 'b', { name: 'x', revision: 7 })]);
  await expect(refused).rejects.toThrow();
  await writesDone();
});
