import { expect, it } from 'vitest';
import { dayOf, describeDay } from '../../src/app/words/dates.ts';
import { LOOK_WORDS } from '../../src/app/words/look.ts';
import { dayAfter } from '../../src/days/days.ts';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { appOnPhone, PHONE, snap, watch } from './browser.ts';

const { phone, app } = appOnPhone(4735);

/** The second of five; the others were taken nobody knows when. */
const TELLS_ITS_DAY = 1;
const today = dayOf(new Date());
const lastWeek = dayAfter(today, -7);

it('takes photos that another app shares, offline, and keeps those that find no place', async () => {
  const { context, page } = await phone.open(PHONE);
  const { complaints } = watch(context);
  await page.goto(app.url);
  await page.getByText('works without signal now').waitFor();
  const photos = await Promise.all(
    Array.from({ length: 5 }, async (_, seed) => ({
      name: `leaf ${seed + 1}.jpg`,
      mimeType: 'image/jpeg',
      buffer: Buffer.from(
        await writeJpeg(
          drawLeaf({ seed, length: 0.8 }).pixels,
          seed === TELLS_ITS_DAY ? { takenAt: `${lastWeek}T12:00:00` } : {},
        ),
      ),
    })),
  );
  await context.setOffline(true);
  // The system's share sheet posts a form to the app's address, as any page outside it can.
  const other = await context.newPage();
  await other.setContent(
    `<form method="post" enctype="multipart/form-data" action="${app.url}shared-photos"><input type="file" name="photos" multiple><button>Share</button></form>`,
  );
  await other.locator('input').setInputFiles(photos);
  await other.getByRole('button', { name: 'Share' }).click();
  await expect.poll(() => other.locator('.slot.filled').count()).toBe(4);
  await expect.poll(() => other.locator('.layer').count()).toBeGreaterThan(0);
  await snap(other, 'shared-photos');
  const draftOf = () => other.evaluate(() => location.hash);
  expect(await draftOf()).toMatch(/^#\/look\/[0-9a-f-]{36}$/);
  // The look has the day on which its photo was taken, not the one on which it was shared.
  await other.getByText(`${describeDay(lastWeek, today)}, ${LOOK_WORDS.dateFrom.photo}`).waitFor();
  // The fifth waits for a look of its own, over a restart too.
  await other.reload();
  await expect.poll(() => other.locator('.slot.filled').count()).toBe(4);
  await other.goto(`${app.url}#/walk`);
  await other.getByRole('link', { name: 'A photo from another app waits' }).click();
  await expect.poll(() => other.locator('.slot.filled').count()).toBe(1);
  await other.getByText(`${describeDay(today, today)}, ${LOOK_WORDS.dateFrom.begun}`).waitFor();
  await other.goto(`${app.url}#/walk`);
  await expect.poll(() => other.locator('.begun').count()).toBe(2);
  expect(await other.getByRole('link', { name: 'A photo from another app waits' }).count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});
