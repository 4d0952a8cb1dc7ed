import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHELL_WORDS } from '../../src/app/words/shell.ts';
import { newPhone, PHONE, type Phone, type Served } from './browser.ts';
import { serveBuild } from './serve-build.ts';

/* The first visit, and the signal goes before every part has been fetched. */
describe('walking off before everything was fetched', () => {
  let phone: Phone;
  let served: Served;
  /** One file of the build does not come on the first visit, so that it is never through before the signal goes. */
  let isSlow = true;
  beforeAll(async () => {
    phone = newPhone();
    served = await serveBuild(4881, (path, body) =>
      isSlow && path.includes('/licences-part-') ? 'answered' : body,
    );
  });
  afterAll(async () => {
    await phone.throwAway();
    await served.stop();
  });

  it('says so, says once what is missing, and mends itself where the signal comes back', async () => {
    const { context, page } = await phone.open(PHONE);
    await page.goto(served.url);
    await page.getByText(SHELL_WORDS.fetching).waitFor();
    await context.setOffline(true);
    await page.getByText(SHELL_WORDS.brokenOff).waitFor();
    await page.getByRole('link', { name: 'A plant looks wrong' }).click();
    await page.getByText(SHELL_WORDS.partMissing).waitFor();
    await page.getByRole('button', { name: 'Kale', exact: true }).click();
    // Every part had its time to fail.
    await page.waitForTimeout(1000);
    expect(await page.getByText(SHELL_WORDS.partMissing).count()).toBe(1);

    isSlow = false;
    await context.setOffline(false);
    await page.getByText(SHELL_WORDS.worksOffline).waitFor();
    await expect.poll(() => page.getByText(SHELL_WORDS.partMissing).count()).toBe(0);
    // What was said before stands, and is weighed.
    await expect.poll(() => page.locator('.chosen-crop').innerText()).toMatch('Kale');
    await expect.poll(() => page.locator('.weighing .cause').count()).toBeGreaterThan(1);
    await expect.poll(() => page.locator('.answer .drawn svg').count()).toBeGreaterThan(5);
    await context.close();
  });
});
