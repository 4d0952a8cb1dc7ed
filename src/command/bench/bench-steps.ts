import type { Locator, Page } from 'playwright-core';
import sharp from 'sharp';
import { drawLeaf } from '../../leaf/draw-leaf.ts';
import { middle, openBuiltApp } from './open-built-app.ts';

/** A port of its own, so that it disturbs no other server of the app. */
const PORT = 4793;
const RUNS = 3;
/** The processor as it is, and a phone of some years beside it (common practice, no source). */
const RATES = [1, 4] as const;
/** What is quicker than this Chromium does not report (W3C Event Timing: `durationThreshold` has 16 ms as its least). */
export const LEAST_MS = 16;
const VIEWPORT = { width: 390, height: 844 };

/** One step of the main job, at one speed of the processor. */
export interface StepTimes {
  /** From the press to the next frame, ms; `LEAST_MS` stands for whatever is quicker. */
  readonly middle: number;
  readonly worst: number;
  /** Longest task of the page until the step is through, ms; 0 where none took 50 ms (W3C Long Tasks). */
  readonly task: number;
}

export interface StepRow {
  readonly name: string;
  readonly plain: StepTimes;
  readonly slowed: StepTimes;
}

interface Noted {
  readonly frame: number;
  readonly task: number;
}

/**
 * The main job in the built app, step by step, as a thumb does it: each press until the frame that shows its effect, by the
 * browser's own event timing (duration in steps of 8 ms).
 */
export async function benchSteps(): Promise<readonly StepRow[]> {
  const app = await openBuiltApp(PORT);
  const byRate = new Map<number, Map<string, Noted[]>>();
  try {
    const { data, width, height } = drawLeaf({ width: 1600, height: 1200, holes: { count: 2 } }).pixels;
    const photo = await sharp(data, { raw: { width, height, channels: 4 } })
      .removeAlpha()
      .jpeg({ quality: 90 })
      .toBuffer();
    for (const rate of RATES) {
      const context = await app.browser.newContext({ viewport: VIEWPORT, bypassCSP: true });
      const first = await context.newPage();
      await first.goto(app.url);
      await first.getByText('works without signal now').waitFor();
      await first.close();
      const noted = new Map<string, Noted[]>();
      byRate.set(rate, noted);
      for (let run = 0; run < RUNS; run++) {
        const page = await context.newPage();
        await page.addInitScript(NOTE_EVENTS);
        const session = await context.newCDPSession(page);
        await session.send('Emulation.setCPUThrottlingRate', { rate });
        await page.goto(app.url);
        await walk(page, photo, async (name, act) => {
          noted.set(name, [...(noted.get(name) ?? []), await noteStep(page, act)]);
        });
        await page.close();
      }
      await context.close();
    }
  } finally {
    await app.close();
  }
  const [plain, slowed] = RATES.map((rate) => byRate.get(rate)!);
  return [...plain!].map(([name, times]) => ({
    name,
    plain: summed(times),
    slowed: summed(slowed!.get(name) ?? []),
  }));
}

const summed = (times: readonly Noted[]): StepTimes => ({
  middle: middle(times.map(({ frame }) => frame)),
  worst: Math.max(...times.map(({ frame }) => frame)),
  task: Math.max(...times.map(({ task }) => task)),
});

/** Does one step and waits until the page rests. */
async function noteStep(page: Page, act: () => Promise<void>): Promise<Noted> {
  await page.evaluate('window.noted.frames.length = window.noted.tasks.length = 0');
  await act();
  await page.waitForFunction(`!document.querySelector('[aria-busy="true"]')`);
  // Entries come a while after their frame.
  await page.waitForTimeout(300);
  const { frames, tasks } = await page.evaluate<{ frames: number[]; tasks: number[] }>('window.noted');
  return { frame: Math.max(LEAST_MS, ...frames), task: Math.max(0, ...tasks) };
}

type Step = (name: string, act: () => Promise<void>) => Promise<void>;

async function walk(page: Page, photo: Buffer, step: Step): Promise<void> {
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name, exact: true });
  const tab = (name: string): Locator =>
    page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name, exact: true });
  const press = (name: string, what: Locator, then?: Locator): Promise<void> =>
    step(name, async () => {
      await what.click();
      await then?.waitFor();
    });
  await press(
    'open a look',
    page.getByRole('link', { name: 'A plant looks wrong' }),
    page.locator('.question .answer').first(),
  );
  const field = page.getByLabel('Find a crop');
  await step('type a crop, each letter', () => field.pressSequentially('tom'));
  await press('choose the crop', button('Tomato'), page.locator('.chosen-crop'));
  await page.locator('.weighing .cause').first().waitFor();
  await page
    .getByLabel('Choose photos')
    .setInputFiles({ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: photo });
  await page.locator('.measures').first().waitFor();
  await press('say what the photo shows', button(/^Old leaf low on the plant/));
  await press('choose what a tap does', page.getByLabel('Which leaf'));
  await step('tap the leaf', async () => {
    await page.locator('.tap-surface').click();
    await page.locator('.tap-mark.leaf').waitFor();
  });
  await press(
    'unfold what is drawn',
    page.locator('summary').filter({ hasText: 'All that is drawn' }),
    page.locator('.layer-line').first(),
  );
  await press('point out a layer', page.locator('.layer-line').first());
  await press('press what strikes', button('Pale or yellow'));
  await press('done with what strikes', button('Done'), page.getByText('On which leaves?'));
  await press('say on which leaves', page.locator('.question .answer').first());
  for (let asked = 0; asked < 3; asked++) {
    const before = await page.locator('.question-asks').innerText();
    await press(
      'answer a question',
      page.locator('.question .answer', { hasText: /Can.t say|Not now|^No$/ }).first(),
    );
    await page.waitForFunction(
      `document.querySelector('.question-asks')?.innerText !== ${JSON.stringify(before)} || document.querySelector('.question-wait')`,
    );
  }
  await press('take an answer back', button('Take back the last answer'));
  await press('open the reasons in words', page.locator('.cause summary').first());
  await press('open all questions', page.getByLabel('All questions'), page.locator('.all-questions'));
  await press('open a group of questions', page.locator('.all-questions > details > summary').first());
  await step('name the bed, each letter', () =>
    page.getByLabel('Bed', { exact: true }).pressSequentially('Wall'),
  );
  await press('keep it as a case', button('Keep it as a case'), page.locator('.case'));
  await press('open the book', tab('Book'), page.locator('.entries a.entry').first());
  await step('search the book, each letter', () => page.getByLabel('Find a case').pressSequentially('wall'));
  await press('open the case', page.locator('.entries a.entry').first(), page.locator('.case'));
  await press('open the kept look', page.locator('.look-line').first(), page.locator('.weighing'));
  await press('open the ground', tab('Ground'), page.getByLabel('Name of a bed or pot'));
  await press(
    'open help',
    page.getByRole('link', { name: 'Help and settings' }),
    page.locator('.help h2').first(),
  );
  await press('back to the walk', tab('Walk'), page.locator('.walk'));
}

/* What runs in the page is text: this side knows no DOM. */
const NOTE_EVENTS = `(() => {
  const noted = { frames: [], tasks: [] };
  window.noted = noted;
  new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries()) if (interactionId) noted.frames.push(duration);
  }).observe({ type: 'event', durationThreshold: ${LEAST_MS} });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) noted.tasks.push(duration);
  }).observe({ type: 'longtask' });
})()`;
