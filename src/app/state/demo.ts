/**
 * Which garden this page shows: the grower's own, or the invented one, which lies in databases of its own. Chosen once, when
 * the page is loaded; going over and back loads the page anew, so that nothing of one garden stays in the other.
 */
import { DEMO_GARDEN, databasesOf, OWN_GARDEN } from '../../garden/store/open-database.ts';

const KEY = 'bedside-demo';
/** `making`: its databases are being filled; `leaving`: they are to be deleted. */
type DemoMark = 'making' | 'in' | 'leaving';

function readMark(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** @throws where the browser keeps nothing: then there is no demo either */
export const markDemo = (mark: DemoMark): void => localStorage.setItem(KEY, mark);

const atStart = readMark();
export const inDemo = atStart === 'in';
export const gardenOnShow = inDemo ? DEMO_GARDEN : OWN_GARDEN;

/** Called once, when the app starts: finishes a leaving, clears what was half made, and leaves when another tab leaves. */
export function followDemo(): void {
  if (inDemo)
    globalThis.addEventListener('storage', ({ key }: StorageEvent) => {
      if (key === KEY || key === null) location.reload();
    });
  else if (atStart) void deleteDemo();
}

/** Deletes both databases of the demo, and then its mark. Waits for pages that still hold them. */
export async function deleteDemo(): Promise<void> {
  await Promise.all(databasesOf(DEMO_GARDEN).map(deleteDatabase));
  if (readMark() !== 'in') localStorage.removeItem(KEY);
}

const deleteDatabase = (name: string): Promise<void> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase(name);
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error);
  });

/** Loads the page anew, at the Walk unless another page is wanted. */
export function startAnew(at = '#/walk'): void {
  history.replaceState(null, '', at);
  location.reload();
}

/** Back to the grower's own garden; the next start deletes the invented one. */
export function leaveDemo(at?: string): void {
  markDemo('leaving');
  startAnew(at);
}
