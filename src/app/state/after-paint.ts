/** As long as this a page that is not shown waits for a frame that does not come, ms. */
const UNSEEN_MS = 200;

/** Resolves once the browser has painted what has been changed until now: what is heavy to draw then holds up no answer. */
export const afterPaint = (): Promise<void> =>
  new Promise((painted) => {
    const unseen = setTimeout(painted, UNSEEN_MS);
    requestAnimationFrame(() =>
      setTimeout(() => {
        clearTimeout(unseen);
        painted();
      }),
    );
  });
