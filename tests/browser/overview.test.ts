import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appOnPhone, DESK, snapBoth, watch } from './browser.ts';

interface Invented {
  readonly plant: string;
  readonly bed: string;
  readonly crop: string;
  readonly openedOn: string;
  /** Open where there are none. */
  readonly causes?: readonly string[];
  readonly sureness?: string;
  readonly leading?: readonly string[];
  readonly lookAgain?: string;
  readonly closed?: boolean;
}

const INVENTED: readonly Invented[] = [
  { plant: 'Cabbages', bed: 'Long bed', crop: 'cabbage', openedOn: '2021-06-10', causes: ['clubroot'] },
  { plant: 'First kale', bed: 'Long bed', crop: 'kale', openedOn: '2022-06-10', causes: ['clubroot'] },
  { plant: 'Second kale', bed: 'Long bed', crop: 'kale', openedOn: '2023-06-10', causes: ['clubroot'] },
  {
    plant: 'Third kale',
    bed: 'Long bed',
    crop: 'kale',
    openedOn: '2024-07-02',
    causes: ['clubroot', 'aphids'],
  },
  {
    plant: 'Fourth kale',
    bed: 'Long bed',
    crop: 'kale',
    openedOn: '2024-07-09',
    causes: ['clubroot'],
    sureness: 'guess',
  },
  {
    plant: 'Swede',
    bed: 'The bed behind the old shed',
    crop: 'swede',
    openedOn: '2026-05-02',
    causes: ['clubroot'],
  },
  {
    plant: 'Broad beans',
    bed: 'By the gate',
    crop: 'broad-bean',
    openedOn: '2026-05-20',
    causes: ['aphids'],
  },
  { plant: 'Leeks', bed: 'By the gate', crop: 'leek', openedOn: '2026-08-02', causes: ['rust'] },
  { plant: 'Odd pea', bed: 'By the gate', crop: 'pea', openedOn: '2025-06-02', causes: [] },
  {
    plant: 'Pale tomato',
    bed: 'By the gate',
    crop: 'tomato',
    openedOn: '2026-06-03',
    leading: ['magnesium-short'],
    lookAgain: '2026-06-13',
  },
  {
    plant: 'Left lettuce',
    bed: 'Long bed',
    crop: 'lettuce',
    openedOn: '2025-04-03',
    leading: ['slugs-snails'],
    closed: true,
  },
];

/** Puts cases into the store as an earlier session would have left them. */
async function seed(page: Page, invented: readonly Invented[]): Promise<void> {
  const records = invented.map(({ plant, bed, crop, openedOn, causes, sureness, ...more }, at) => ({
    kind: 'case',
    id: `case-${at}`,
    schema: 3,
    changedAt: `${openedOn}T08:00:00.000Z`,
    bed,
    plant,
    crop,
    openedOn,
    looks: [
      {
        id: `look-${at}`,
        date: openedOn,
        verdict: 'watch',
        leading: more.leading ?? causes ?? [],
        photos: [],
        ...(more.lookAgain ? { lookAgain: more.lookAgain } : {}),
      },
    ],
    ...(causes || more.closed ? { closedOn: openedOn } : {}),
    ...(causes
      ? {
          outcome: {
            settledOn: openedOn,
            settledAt: `${openedOn}T12:00:00.000Z`,
            causes,
            sureness: causes.length > 0 ? (sureness ?? 'seen') : '',
            lost: '',
            done: '',
          },
        }
      : {}),
  }));
  await page.evaluate(async (all) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('bedside-records');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const transaction = database.transaction('records', 'readwrite');
    for (const record of all) transaction.objectStore('records').put(record, `case:${record.id}`);
    await new Promise((done) => {
      transaction.oncomplete = done;
    });
    database.close();
  }, records);
}

/* Not as laid out: an entry that is not near the screen is not laid out at all. */
const plants = (page: Page) => page.locator('.entries .entry-plant').allTextContents();
const heading = (page: Page) => page.getByRole('heading', { level: 1 });

describe.each([
  ['small', { width: 360, height: 740 }, 4764],
  ['desk', DESK, 4765],
] as const)('the book of many years, at %s size', (name, size, port) => {
  const { phone, app } = appOnPhone(port);

  it('says which causes came back where, and leads from each number to its cases', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/book`);
    await page.getByText('No case yet').waitFor();
    await seed(page, INVENTED);
    await page.reload();
    await page.getByRole('link', { name: 'What comes back where' }).click();
    await page.getByText('9 cases settled, 3 causes, 2021 to 2026.').waitFor();
    await page.getByRole('link', { name: 'Clubroot in Long bed: 2021, 2022, 2023 and 2024' }).waitFor();
    await page
      .getByText('6 cases in 2 beds, in 5 years from 2021 to 2026. 1 of them rests on a guess.')
      .waitFor();
    const clubroot = page.getByRole('table', { name: 'Clubroot' });
    const longBed = clubroot.locator('tbody').first();
    expect(await longBed.getByRole('rowheader').innerText()).toBe('Long bed');
    expect((await longBed.locator('td').allInnerTexts()).map((cell) => cell.split('\n')[0])).toEqual([
      '1',
      '1',
      '1',
      '2',
      '·',
      '5',
    ]);
    await snapBoth(page, `recurring-${name}`);

    await clubroot.getByRole('link', { name: '2 cases, Long bed, 2024' }).click();
    await expect.poll(() => heading(page).innerText()).toBe('Clubroot: Long bed, 2024');
    expect(await plants(page)).toEqual(['Fourth kale', 'Third kale']);
    await snapBoth(page, `recurring-cases-${name}`);
    await page.goBack();
    await clubroot.getByRole('link', { name: '1 case, Long bed, before 2022' }).click();
    await expect.poll(() => plants(page)).toEqual(['Cabbages']);
    await page.goBack();
    await page.getByRole('link', { name: 'Never found out: 1 case' }).click();
    await expect.poll(() => plants(page)).toEqual(['Odd pea']);
    expect(complaints).toEqual([]);
  });

  it('finds cases by bed, crop, cause, day and state, and keeps what was asked', async () => {
    const { context, page } = await phone.open(size);
    const { complaints } = watch(context);
    await page.goto(`${app.url}#/book`);
    await expect.poll(async () => (await plants(page)).length).toBe(INVENTED.length);
    await page.getByText('By bed, crop, cause, day, state').click();
    const pick = async (name: string | RegExp, option: string): Promise<void> => {
      const exact = typeof name === 'string';
      await page.getByRole('combobox', { name, exact }).selectOption(option);
    };
    await pick('Bed', 'Long bed');
    await expect.poll(async () => (await plants(page)).length).toBe(6);
    await pick('Crop', 'Kale');
    await expect.poll(() => plants(page)).toEqual(['Fourth kale', 'Third kale', 'Second kale', 'First kale']);
    await pick(/^Cause/, 'Aphids');
    await expect.poll(() => plants(page)).toEqual(['Third kale']);
    await page.getByText('1 case found').waitFor();
    await snapBoth(page, `find-${name}`);

    // A case is read, and what was asked still stands.
    await page.locator('.entry').click();
    await expect.poll(() => heading(page).innerText()).toBe('Third kale');
    await page.goBack();
    await expect.poll(() => plants(page)).toEqual(['Third kale']);
    await page.getByRole('button', { name: 'Show the whole book again' }).click();
    await expect.poll(async () => (await plants(page)).length).toBe(INVENTED.length);

    await page.getByLabel('Went on from').fill('2025-01-01');
    await page.getByLabel('up to', { exact: true }).fill('2025-12-31');
    await expect.poll(() => plants(page)).toEqual(['Odd pea', 'Left lettuce']);
    await pick('How it stands', 'Closed without saying');
    await expect.poll(() => plants(page)).toEqual(['Left lettuce']);
    await page.getByRole('button', { name: 'Show the whole book again' }).click();
    await pick('How it stands', 'Open, and due a look');
    await expect.poll(() => plants(page)).toEqual(['Pale tomato']);
    await page.getByRole('button', { name: 'Show the whole book again' }).click();

    // The same five in words.
    for (const [words, wanted] of [
      ['gate bean', ['Broad beans']],
      ['rust', ['Leeks']],
      ['july 2024', ['Fourth kale', 'Third kale']],
      ['2026-05-02', ['Swede']],
      ['open tomato', ['Pale tomato']],
      ['settled pea', ['Odd pea']],
    ] as const) {
      await page.getByLabel('Find a case').fill(words);
      await expect.poll(() => plants(page)).toEqual(wanted);
    }
    await page.getByLabel('Find a case').fill('nowhere');
    await page.getByText('Nothing in the book has all of this.').waitFor();
    expect(complaints).toEqual([]);
  });
});
