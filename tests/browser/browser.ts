import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, expect } from 'vitest';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Screenshots and other things to look at after a run; not part of the repository. */
export const ARTEFACTS = join(ROOT, 'test-artefacts');

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const PHONE = { width: 390, height: 844 } as const;
export const DESK = { width: 1440, height: 900 } as const;

/** The built app behind a server that can be stopped. */
export interface Served {
  readonly url: string;
  stop(): Promise<void>;
}

/** @param port the first port to try; a taken one moves on to the next */
export async function serveApp(port: number): Promise<Served> {
  const server: PreviewServer = await preview({
    configFile: join(ROOT, 'vite.config.ts'),
    logLevel: 'silent',
    preview: { port, host: '127.0.0.1' },
  });
  return {
    // localhost and 127.0.0.1 are both trustworthy origins: service workers run without HTTPS.
    url: server.resolvedUrls!.local[0]!,
    stop: () => server.close(),
  };
}

/** A browser with a profile of its own that can be closed and opened again, as a phone is. */
export interface Phone {
  open(size: {
    readonly width: number;
    readonly height: number;
  }): Promise<{ context: BrowserContext; page: Page }>;
  throwAway(): Promise<void>;
}

/** @param flags more of Chromium's own, for example a camera */
export function newPhone(flags: readonly string[] = []): Phone {
  const profile = mkdtempSync(join(tmpdir(), 'bedside-profile-'));
  let opened: BrowserContext | undefined;
  return {
    async open(size) {
      // A test that failed half-way leaves its browser open; a profile can be open only once.
      await opened?.close();
      const context = await chromium.launchPersistentContext(profile, {
        executablePath: CHROMIUM,
        headless: true,
        args: [...QUIET, ...flags],
        viewport: size,
        locale: 'en-GB',
        timezoneId: 'Europe/London',
      });
      opened = context;
      const page = context.pages()[0] ?? (await context.newPage());
      return { context, page };
    },
    async throwAway() {
      await opened?.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

/** The built app, served, and a browser with a profile of its own, for all tests of one `describe`; both go when these are through. */
export function appOnPhone(port: number): { readonly phone: Phone; readonly app: { readonly url: string } } {
  const phone = newPhone();
  let served: Served | undefined;
  beforeAll(async () => {
    served = await serveApp(port);
  });
  afterAll(async () => {
    await served?.stop();
    await phone.throwAway();
  });
  return {
    phone,
    app: {
      get url() {
        return served!.url;
      },
    },
  };
}

/** Keep a picture of the screen to look at. */
export async function snap(page: Page, name: string): Promise<void> {
  mkdirSync(ARTEFACTS, { recursive: true });
  await page.screenshot({ path: join(ARTEFACTS, `${name}.png`), fullPage: true });
}

/** The page on light and on dark paper: a picture of each, no fault for those who use other means, nothing wider than the screen. */
export async function snapBoth(page: Page, name: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await accessibilityFaults(page)).toEqual([]);
    await snap(page, `${name}-${colorScheme}`);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
}

/** Everything a page asks of the network and everything it complains of. */
export function watch(context: BrowserContext) {
  const requests: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => requests.push(request.url()));
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  context.on('weberror', (error) => complaints.push(String(error.error())));
  return { requests, complaints };
}

/** Contrast that reads in full sun: that of level AAA for small text (WCAG 2.2, 1.4.6), asked of every text here. */
const FOR_FULL_SUN = {
  'color-contrast-enhanced': {
    options: {
      contrastRatio: { normal: { expected: 7, minThreshold: 4.5 }, large: { expected: 7, minThreshold: 3 } },
    },
  },
};

/** What breaks the rules for accessible pages on the page as it stands (WCAG 2.2, A and AA; contrast of 7:1), by axe. */
export const accessibilityFaults = (page: Page): Promise<string[]> =>
  faultsByAxe(page, { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });

/** The same, and then the contrasts in the other theme, which is all that a theme changes. Ends in the theme it began in. */
export async function accessibilityFaultsInBothThemes(page: Page): Promise<string[]> {
  const faults = await accessibilityFaults(page);
  const isDark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  const [here, there] = isDark ? (['dark', 'light'] as const) : (['light', 'dark'] as const);
  await page.emulateMedia({ colorScheme: there });
  faults.push(...(await faultsByAxe(page, { type: 'rule', values: ['color-contrast-enhanced'] })));
  await page.emulateMedia({ colorScheme: here });
  return faults;
}

async function faultsByAxe(
  page: Page,
  runOnly: { readonly type: 'tag' | 'rule'; readonly values: readonly string[] },
): Promise<string[]> {
  const options = {
    runOnly,
    rules: { 'color-contrast-enhanced': { enabled: true } },
    checks: FOR_FULL_SUN,
  };
  const { violations } = await new AxeBuilder({ page: page as never }).options(options as never).analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

/** Names the crop of a look that is open. */
export async function chooseCrop(page: Page, crop: string): Promise<void> {
  await page.getByLabel('Find a crop').fill(crop);
  await page.getByRole('button', { name: crop, exact: true }).click();
}

/** Answers what strikes one with the plant's size, and waits for the verdict. */
export async function sayItIsSmall(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Small for its age', exact: true }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.locator('.verdict-headline').waitFor();
}

/**
 * In a look that was just opened: the crop, a photo of an old leaf that is waited for until it is read, one answer, the verdict.
 * @param photo path of a file, or what a JPEG file holds
 */
export async function lookAtOldLeaf(page: Page, crop: string, photo: string | Uint8Array): Promise<void> {
  await chooseCrop(page, crop);
  await page
    .getByLabel('Choose photos')
    .setInputFiles(
      typeof photo === 'string'
        ? [photo]
        : [{ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(photo) }],
    );
  await page.getByRole('button', { name: 'Old leaf low on the plant', exact: true }).click();
  await expect.poll(() => page.locator('.layers').count(), { timeout: 60_000 }).toBe(1);
  await sayItIsSmall(page);
}

/** Answer the question that stands, the way a thumb would: the first answer offered, of a check the first of its signs. */
export async function answerFirst(page: Page): Promise<void> {
  const before = await page.locator('.question-asks').innerText();
  const isCheck = (await page.locator('.question .check-sign').count()) > 0;
  if (isCheck) await page.locator('.question .check-sign').first().getByRole('radio').first().check();
  const first = page.locator('.question .answer').first();
  const isLabel = (await first.evaluate((element) => element.tagName)) === 'LABEL';
  await first.click();
  if (isLabel) await page.getByRole('button', { name: 'Done' }).click();
  await expect.poll(() => page.locator('.question-asks').innerText()).not.toBe(before);
}
