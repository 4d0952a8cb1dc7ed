/** Long enough for a part to put the reader somewhere itself, ms. */
const REST_MS = 60;
const HEADINGS = 'h1, h2, h3, h4, legend';

/** Whether the person goes by keyboard: then the page follows the focus, else it stays where the finger left it. */
let byKeyboard = false;

/** Puts the reader on something that is no control, a heading or a question, and scrolls there for those who go by keyboard. */
export function landOn(element: HTMLElement | null | undefined): void {
  if (!element) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus({ preventScroll: !byKeyboard });
}

/** Goes to a part of the page, to be read on from there by eye or by ear: to its heading, where it has one. */
export function showPart(id: string): void {
  const part = document.getElementById(id);
  landOn(part?.querySelector<HTMLElement>('h2') ?? part);
  part?.scrollIntoView();
}

/** What of the page had the focus last: a notice that lies over it hands it back. */
let lastOnPage: HTMLElement | undefined;

/** The first heading of the smallest part around an element; beyond the page what had the focus on it, or its own heading. */
function headingAround(element: Element | undefined): HTMLElement | null {
  for (let part = element; part; part = part.parentElement ?? undefined) {
    if (!part.closest('main')) break;
    const headings = [...part.querySelectorAll<HTMLElement>(HEADINGS)];
    const seen = headings.find((one) => !one.classList.contains('unseen') && one.checkVisibility());
    if (seen) return seen;
  }
  return lastOnPage?.isConnected ? lastOnPage : document.querySelector('main h1');
}

/** What was pressed last. A part that opens in its place finds it gone from the page already. */
let pressedLast: Element | undefined;
export const lastPressed = (): Element | undefined => pressedLast;

/** What was pressed, or what stands for it since: where a part is drawn anew, its button of the same name. */
function standingFor(pressed: Element): HTMLElement | undefined {
  const nameOf = (one: Element): string | null => one.getAttribute('aria-label') ?? one.textContent;
  const alike = document.querySelectorAll<HTMLElement>(`main ${pressed.tagName}`);
  return [...alike].find(
    (one) => one === pressed || (!pressed.isConnected && nameOf(one) === nameOf(pressed)),
  );
}

/** Once a part has gone that a press had opened, puts the reader back on what was pressed, unless they stand elsewhere by then. */
export function goBackTo(pressed: Element | undefined): void {
  // The part goes away with the next drawing.
  setTimeout(() => {
    if (!pressed || document.activeElement !== document.body) return;
    standingFor(pressed)?.focus({ preventScroll: !byKeyboard });
  });
}

function pathOf(element: Element): Element[] {
  const path: Element[] = [];
  for (let part: Element | null = element; part; part = part.parentElement) path.push(part);
  return path;
}

/**
 * Where the part that had the focus goes away (a button that has done its work, a form that closes), the reader is put at the
 * nearest heading that is left, unless the part that came instead has taken them already. Called once, when the app starts.
 */
export function keepFocus(): void {
  let path: readonly Element[] = [];
  const isLost = (): boolean =>
    path[0] !== undefined && !path[0].isConnected && document.activeElement === document.body;
  const goBy = ({ type }: Event): void => {
    byKeyboard = type === 'keydown';
  };
  addEventListener('keydown', goBy, true);
  for (const other of ['pointerdown', 'wheel'] as const)
    addEventListener(other, goBy, { capture: true, passive: true });
  const notePress = ({ target }: Event): void => {
    pressedLast = (target instanceof Element && target.closest('main button, main a')) || undefined;
  };
  addEventListener('click', notePress, true);
  // Parts that come in above what has the focus push it away; for those who go by keyboard it stays in view.
  new ResizeObserver(() => {
    const { activeElement } = document;
    if (byKeyboard && activeElement?.closest('main')) activeElement.scrollIntoView({ block: 'nearest' });
  }).observe(document.body);
  addEventListener('focusin', ({ target }) => {
    path = target instanceof Element ? pathOf(target) : [];
    if (target instanceof HTMLElement && target.closest('main')) lastOnPage = target;
  });
  new MutationObserver(() => {
    if (!isLost()) return;
    setTimeout(() => {
      if (!isLost()) return;
      landOn(headingAround(path.find(({ isConnected }) => isConnected)));
    }, REST_MS);
  }).observe(document, { childList: true, subtree: true });
}
