import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { capitalise } from '../../src/app/words/causes.ts';
import { describeSign } from '../../src/app/words/signs.ts';
import { MARK_SCALES, NETWORK_MARKS, STRANGE } from '../../src/classifier/calibration.ts';
import { NETWORK_ID } from '../../src/classifier/network-file.ts';
import { OWN_MARKS } from '../../src/classifier/own-head/marks-said.ts';
import type { NormalLeafRecord } from '../../src/garden/ground-records.ts';
import type { CaseRecord, GardenRecord, LookRecord } from '../../src/garden/records.ts';
import type { SeenByNetwork } from '../../src/garden/seen-by-network.ts';
import { BROADER_MARKS } from '../../src/signs/vocabulary.ts';
import { record } from '../garden/small-garden.ts';
import { seededNormals } from '../seeded-normals.ts';
import { accessibilityFaults, appOnPhone, DESK, newPhone, PHONE, snap, snapBoth, watch } from './browser.ts';
import { makeBackup } from './make-backup.ts';
import { findSpottedLeaf, type KnownLeaf, lookAtLeaf, switchOn } from './network-steps.ts';

/** A mark that the network does not report as it came. */
const MARK = ['white-powder', 'stippled', 'silver-flecks'].find(
  (mark) => !MARK_SCALES.some((scale) => scale.mark === mark && scale.on),
)!;
const SAYS = describeSign(MARK).what;
const NAME = capitalise(SAYS);
const NOW = '2026-06-20T08:00:00.000Z';

/** Features of leaves like the known one, and of others that lie away from it, as the network would see them. */
function seenBy({ answer: { features } }: KnownLeaf): (isAlike: boolean) => SeenByNetwork {
  const normal = seededNormals(41);
  const typical = features.reduce((sum, value) => sum + Math.abs(value), 0) / features.length;
  const away = features.map(() => 1.5 * typical * normal());
  return (isAlike) => ({
    network: NETWORK_ID,
    reports: [],
    logits: NETWORK_MARKS.map(() => normal()),
    features: features.map((value, k) => value + (isAlike ? 0 : away[k]!) + 0.5 * typical * normal()),
    strangeness: 0.5 * STRANGE,
  });
}

const PLANTINGS = 16;

/**
 * A garden that has told about its leaves: every other planting has the mark, and its leaves look like the known one.
 * Of the other marks something was said everywhere, with no bearing on how the leaves look.
 */
function inventGarden(leaf: KnownLeaf): GardenRecord[] {
  const see = seenBy(leaf);
  const normal = seededNormals(97);
  const reading = (role: string) => ({ role, trouble: [], leaf: { found: true }, measures: {} });
  const others = OWN_MARKS.filter((mark) => mark !== MARK && !(mark in BROADER_MARKS));
  const all: GardenRecord[] = [];
  for (let at = 0; at < PLANTINGS; at++) {
    const isThere = at % 2 === 0;
    const said = (sees: boolean): string => (sees ? 'seen' : 'absent');
    const signs = {
      [`${MARK}@old`]: said(isThere),
      ...Object.fromEntries(others.map((mark) => [`${mark}@old`, said(normal() > 0)])),
    };
    const photos = [1, 2, 3].map((one) => ({
      id: `photo-${at}-${one}`,
      role: 'old',
      taps: {},
      reading: reading('old'),
      network: see(isThere),
    }));
    all.push(
      record<'case'>('case', `case-${at}`, {
        bed: `Bed ${at}`,
        plant: `Kale ${at}`,
        crop: 'kale',
        openedOn: '2026-05-01',
        closedOn: '2026-06-01',
        outcome: {
          settledOn: '2026-06-01',
          settledAt: NOW,
          causes: ['aphids'],
          sureness: 'seen',
          lost: '',
          done: '',
        },
        looks: [
          {
            id: `look-${at}`,
            date: '2026-05-01',
            verdict: 'watch',
            leading: [],
            photos: photos.map(({ id }) => id),
          },
        ],
      }) satisfies CaseRecord,
      record<'look'>('look', `look-${at}`, {
        caseId: `case-${at}`,
        date: '2026-05-01',
        photos,
        answers: { crop: 'kale', setting: {}, signs },
      }) satisfies LookRecord,
    );
  }
  for (const variety of ['Curly', 'Flat'])
    all.push(
      record<'normal-leaf'>('normal-leaf', `leaf-${variety}`, {
        crop: 'kale',
        variety,
        date: '2026-05-02',
        photoId: `photo-${variety}`,
        reading: reading('normal'),
        network: see(false),
      }) satisfies NormalLeafRecord,
    );
  return all;
}

let leaf: KnownLeaf;
let garden: Buffer<ArrayBuffer>;
let folder = '';
beforeAll(async () => {
  leaf = await findSpottedLeaf();
  garden = await makeBackup(NOW, (store) => store.saveRecords(inventGarden(leaf)));
  folder = mkdtempSync(join(tmpdir(), 'bedside-own-head-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function readBackup(page: Page, url: string, buffer: Buffer): Promise<void> {
  await page.goto(`${url}#/help`);
  await page
    .getByLabel('Read a backup file')
    .setInputFiles([{ name: 'garden.bedside.zip', mimeType: 'application/zip', buffer }]);
  await page.getByText(/^Read: \d+ new/).waitFor();
}

async function openLeaves(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/book/leaves`);
  await page.getByRole('heading', { level: 1, name: 'What the network learns from your leaves' }).waitFor();
  await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const listUnder = (page: Page, title: string) =>
  page.locator('section', { has: page.getByRole('heading', { level: 3, name: title, exact: true }) }).last();

describe.each([
  ['phone', PHONE, 4811],
  ['desk', DESK, 4812],
] as const)('what the network learns from a garden’s leaves, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);
  const elsewhere = newPhone();
  afterAll(() => elsewhere.throwAway());

  it('learns, shows what came of it, is used in a look, travels in the backup, and can be forgotten', {
    timeout: 600_000,
  }, async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(app.url);
    await page.getByText('works without signal now').waitFor();

    // Nothing to learn from, and the network off: it says so.
    await page.goto(`${app.url}#/book/taught`);
    await page.getByRole('link', { name: 'What the network learns from your leaves' }).click();
    await page.getByText(/^Nothing yet\. Photos count when the network looked at them/).waitFor();
    await page.getByText(/^The network is not switched on/).waitFor();
    expect(await button(page, 'Learn from these photos').count()).toBe(0);
    await snapBoth(page, `own-head-empty-${name}`);

    await readBackup(page, app.url, garden);
    await switchOn(page, app.url);
    await openLeaves(page, app.url);
    await page.getByText('50 photos from 18 plantings; 2 of them healthy leaves.').waitFor();
    const row = page.getByRole('row', { name: new RegExp(`^${NAME}`) });
    expect(await row.getByRole('cell').allInnerTexts()).toEqual(['24', '26']);
    await row.getByText('Enough to try.').waitFor();
    await snapBoth(page, `own-head-ready-${name}`);

    // Stopped half-way nothing is learnt.
    await button(page, 'Learn from these photos').click();
    const progress = page.getByRole('progressbar', { name: 'Learning' });
    await expect.poll(() => progress.getAttribute('value').then(Number)).toBeGreaterThan(0);
    await button(page, 'Stop').click();
    await page.getByText('Stopped. What was learnt before stays as it was.').waitFor();
    expect(await page.getByRole('heading', { name: 'What it learnt' }).count()).toBe(0);

    // Learnt: the mark that the leaves show is used, those that were said at random are not.
    await button(page, 'Learn from these photos').click();
    await snap(page, `own-head-learning-${name}`);
    await page.getByRole('heading', { name: 'What it learnt' }).waitFor({ timeout: 120_000 });
    await page.getByText(/^Learnt on .* from 50 photos of 18 plantings\.$/).waitFor();
    const used = listUnder(page, 'Used in every look');
    await used.getByText(NAME).waitFor();
    const [, own, before] = /^Of 50 photos kept aside it told (\d+) right, the camera alone (\d+)\.$/m
      .exec(await used.innerText())!
      .map(Number) as [number, number, number];
    expect(own).toBeGreaterThan(45);
    expect(own).toBeGreaterThan(before);
    const unused = page
      .locator('details', { has: page.locator('summary', { hasText: 'Tried and not used' }) })
      .first();
    expect(await unused.getByText(/not clearly better\.$/).count()).toBeGreaterThan(5);
    await used.getByText('All numbers').click();
    await used.getByText(/^Mean surprise a photo kept aside/).waitFor();
    await snapBoth(page, `own-head-learnt-${name}`);

    // A new look hears it, though the network as it came is silent on that mark.
    const voice = page.getByText(new RegExp(`^The network sees on the oldest leaves: ${SAYS}`));
    await lookAtLeaf(page, app.url, leaf.jpeg, 'leaf');
    await voice.first().waitFor();
    await page
      .getByText(/as it learnt in this garden/)
      .first()
      .waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, `own-head-look-${name}`);

    // It is in the backup: another device has it, and can forget it by itself.
    await page.goto(`${app.url}#/help`);
    const downloading = page.waitForEvent('download');
    await button(page, 'Write a backup file').click();
    const file = join(folder, `${name}.zip`);
    await (await downloading).saveAs(file);
    const other = await elsewhere.open(size);
    const heard = watch(other.context);
    await other.page.goto(app.url);
    await readBackup(other.page, app.url, readFileSync(file));
    await openLeaves(other.page, app.url);
    await listUnder(other.page, 'Used in every look').getByText(NAME).waitFor();
    expect(await listUnder(other.page, 'Used in every look').innerText()).toContain(`told ${own} right`);
    await button(other.page, 'Forget what was learnt').click();
    await expect.poll(() => other.page.getByRole('heading', { name: 'What it learnt' }).count()).toBe(0);
    expect(heard.complaints).toEqual([]);
    await other.context.close();

    // Forgotten here it is gone from the look as well, is brought back, and forgotten for good stays so.
    await openLeaves(page, app.url);
    await button(page, 'Forget what was learnt').click();
    await expect.poll(() => page.getByRole('heading', { name: 'What it learnt' }).count()).toBe(0);
    await button(page, 'Undo').click();
    await listUnder(page, 'Used in every look').getByText(NAME).waitFor();
    await page.reload();
    await listUnder(page, 'Used in every look').getByText(NAME).waitFor();
    await button(page, 'Forget what was learnt').click();
    await expect.poll(() => page.getByRole('heading', { name: 'What it learnt' }).count()).toBe(0);
    await page.reload();
    await button(page, 'Learn from these photos').waitFor();
    expect(await page.getByRole('heading', { name: 'What it learnt' }).count()).toBe(0);
    await lookAtLeaf(page, app.url, leaf.jpeg, 'another leaf');
    expect(await voice.count()).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
