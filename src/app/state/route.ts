import { computed, signal } from '@preact/signals';

/** Where the app is. Kept behind the hash, so every link works with the network off and from the home screen. */
export type Route =
  | { readonly place: 'walk' }
  | { readonly place: 'look'; readonly draft?: string }
  | {
      readonly place: 'ground';
      readonly bed?: string;
      /** `batches`: all of them, or the one named by `batch`; `normal-leaves`: of all varieties, or of one. */
      readonly page?: 'batches' | 'weather' | 'normal-leaves';
      readonly batch?: string;
      readonly crop?: string;
      readonly variety?: string;
    }
  | {
      readonly place: 'book';
      readonly caseId?: string;
      readonly look?: string;
      /** A trial side by side, and the part of it that is open: what came out unless said. `bed`: where it was begun from. */
      readonly trial?: string;
      readonly step?: TrialStep;
      /** Pot tests: all of them, or one at a time. `pot`: id of the test; of `plan` that of the batch. `on`: day of a look. */
      readonly pots?: PotPage;
      readonly pot?: string;
      readonly on?: string;
      /** A sheet to print or hand on, `of` a case, a bed (in a `year`), a trial or a pot test. */
      readonly sheet?: SheetKind;
      readonly of?: string;
      /** `taught`: what this garden has taught; `leaves`: what its leaves taught the network; `ended`: how the case ended; `recurring`: which causes were met where. */
      readonly page?: 'taught' | 'leaves' | 'ended' | 'recurring';
      /** Of `recurring`: the cases of one cause, in one bed, in one year. */
      readonly cause?: string;
      readonly bed?: string;
      readonly year?: string;
    }
  | { readonly place: 'help' };
export const SHEET_KINDS = ['case', 'bed', 'trial', 'pots'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];
export const POT_PAGES = ['list', 'plan', 'test', 'card', 'look'] as const;
export type PotPage = (typeof POT_PAGES)[number];
export const TRIAL_STEPS = ['plan', 'lay-out', 'measure'] as const;
export type TrialStep = (typeof TRIAL_STEPS)[number];
export type Place = Route['place'];

/** `#/book/3f…/9a…` → route. What is not known leads to the Walk. */
export function readRoute(hash: string): Route {
  const [place, first, second, third, fourth] = hash.replace(/^#\/?/, '').split('/').map(decode);
  switch (place) {
    case 'look':
      return first ? { place, draft: first } : { place };
    case 'ground':
      if (first === 'weather') return { place, page: first };
      if (first === 'batches') return { place, page: first, ...(second ? { batch: second } : {}) };
      if (first === 'normal-leaves')
        return { place, page: first, ...(second && third ? { crop: second, variety: third } : {}) };
      return first ? { place, bed: first } : { place };
    case 'book':
      return readBook(first, second, third, fourth);
    case 'help':
      return { place };
    default:
      return { place: 'walk' };
  }
}

function readBook(first?: string, second?: string, third?: string, fourth?: string): Route {
  if (first === 'recurring')
    return {
      place: 'book',
      page: first,
      ...(second ? { cause: second } : {}),
      ...(third ? { bed: third } : {}),
      ...(fourth ? { year: fourth } : {}),
    };
  const sheet = first === 'sheet' ? SHEET_KINDS.find((kind) => kind === second) : undefined;
  if (sheet && third) return { place: 'book', sheet, of: third, ...(fourth ? { year: fourth } : {}) };
  if (first === 'trials' && second) {
    const step = TRIAL_STEPS.find((one) => one === third);
    return {
      place: 'book',
      trial: second,
      ...(step ? { step } : {}),
      ...(step && fourth ? { bed: fourth } : {}),
    };
  }
  if (first === 'pots')
    return {
      place: 'book',
      pots: POT_PAGES.find((page) => page === second) ?? 'list',
      ...(third ? { pot: third } : {}),
      ...(fourth ? { on: fourth } : {}),
    };
  if (first === 'taught' || first === 'leaves') return { place: 'book', page: first };
  if (!first) return { place: 'book' };
  if (second === 'ended') return { place: 'book', caseId: first, page: 'ended' };
  return { place: 'book', caseId: first, ...(second ? { look: second } : {}) };
}

export function hashOf(route: Route): string {
  const parts: (string | undefined)[] = [route.place];
  if (route.place === 'look') parts.push(route.draft);
  if (route.place === 'ground') parts.push(route.bed, route.page, route.batch, route.crop, route.variety);
  if (route.place === 'book' && route.sheet !== undefined)
    parts.push('sheet', route.sheet, route.of, route.year);
  else if (route.place === 'book' && route.trial !== undefined)
    parts.push('trials', route.trial, route.step, route.bed);
  else if (route.place === 'book' && route.pots !== undefined)
    parts.push('pots', route.pots, route.pot, route.on);
  else if (route.place === 'book')
    parts.push(route.caseId, route.look, route.page, route.cause, route.bed, route.year);
  return `#/${parts
    .filter((part) => part !== undefined)
    .map(encodeURIComponent)
    .join('/')}`;
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

const hash = signal(typeof location === 'undefined' ? '' : location.hash);
export const route = computed(() => readRoute(hash.value));

export function followHash(): void {
  addEventListener('hashchange', () => {
    hash.value = location.hash;
  });
}

/** Goes to a route; `replace` leaves no entry to go back to, and does nothing where the grower has just gone elsewhere. */
export function goTo(to: Route, how: 'push' | 'replace' = 'push'): void {
  if (how === 'replace') {
    // The address changes before the page hears of it: in between, the page named here has been left already.
    if (location.hash !== hash.value) return;
    history.replaceState(null, '', hashOf(to));
  } else if (location.hash !== hashOf(to)) history.pushState(null, '', hashOf(to));
  hash.value = location.hash;
}
