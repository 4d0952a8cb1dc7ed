import type { BenchRow } from './median-ms.ts';
import { middle, NOTE_WHEN_THERE, openBuiltApp, WAIT_UNTIL_THERE } from './open-built-app.ts';

/** A port of its own, so that it disturbs no other server of the app. */
const PORT = 4792;
const STARTS = 7;
/** A phone of some years beside this machine (common practice, no source). */
const SLOWED = 4;
const SCREEN = { width: 390, height: 844 };

/**
 * The app opened with no network and the processor slowed, as from the home screen beside a bed: ms from the page's first byte to the
 * paint in which the way to a look stands, and to the one in which a look can be answered.
 */
export async function benchStart(): Promise<readonly BenchRow[]> {
  const app = await openBuiltApp(PORT);
  try {
    const context = app.browser.contexts()[0] ?? (await app.browser.newContext({ viewport: SCREEN }));
    const first = await context.newPage();
    await first.goto(app.url);
    await first.getByText('works without signal now').waitFor();
    await first.close();
    await context.setOffline(true);
    const startAt = async (hash: string, there: string): Promise<number[]> => {
      const times: number[] = [];
      for (let start = 0; start < STARTS; start++) {
        const page = await context.newPage();
        const session = await context.newCDPSession(page);
        await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
        await page.addInitScript(`(${NOTE_WHEN_THERE})(${JSON.stringify(there)})`);
        await page.goto(`${app.url}${hash}`);
        times.push(await page.evaluate<number>(WAIT_UNTIL_THERE));
        await page.close();
      }
      return times;
    };
    const walk = await startAt('#/walk', '.way-in a');
    const look = await startAt('#/look/new', '.question .answer');
    const note = (times: readonly number[], more: string): string =>
      `slowest of ${STARTS}: ${Math.max(...times).toFixed(0)} ms; ${more}`;
    return [
      {
        name: `start offline, processor slowed ${SLOWED} times: the Walk`,
        ms: middle(walk),
        note: note(walk, 'to stay under 1,000 ms'),
      },
      {
        name: `start offline, processor slowed ${SLOWED} times: a look to answer`,
        ms: middle(look),
        note: note(look, 'to stay under 1,000 ms'),
      },
    ];
  } finally {
    await app.close();
  }
}
