import type { DemoNews, DemoRequest } from '../workers/demo-worker.ts';
import { deleteDemo, markDemo, startAnew } from './demo.ts';
import { sayIfOlder } from './workers.ts';

/**
 * Makes the invented garden in workers and goes over to it. `false` when it could not be made or was stopped; then nothing of
 * it stays.
 * @param onCase told of every case that is weighed
 */
export async function enterDemo(
  today: string,
  onCase: (done: number, of: number) => void,
  stop: AbortSignal,
): Promise<boolean> {
  try {
    markDemo('making');
    await deleteDemo();
    markDemo('making');
    await fillDemo(today, onCase, stop);
    stop.throwIfAborted();
    markDemo('in');
  } catch (cause) {
    if (!stop.aborted) console.error('the invented garden could not be made', cause);
    await deleteDemo().catch(() => {});
    return false;
  }
  startAnew();
  return true;
}

/** Enough for a phone to be through in a few seconds; each holds the knowledge base once more. */
const MOST_WORKERS = 4;

async function fillDemo(
  today: string,
  onCase: (done: number, of: number) => void,
  stop: AbortSignal,
): Promise<void> {
  stop.throwIfAborted();
  const workers = Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1);
  let done = 0;
  const started = Array.from({ length: workers }, (_, worker) =>
    askWorker({ today, worker, workers }, (of) => onCase(++done, of), stop),
  );
  // All of them come to an end first: none may write into what is deleted after a failure.
  await Promise.allSettled(started);
  await Promise.all(started);
}

function askWorker(request: DemoRequest, onCase: (of: number) => void, stop: AbortSignal): Promise<void> {
  const worker = new Worker(new URL('../workers/demo-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<void>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<DemoNews>) => {
      if (data.kind === 'case') onCase(data.of);
      else if (data.kind === 'made') resolve();
      else reject(new Error(data.why));
    });
    worker.addEventListener('error', (event) => {
      sayIfOlder();
      reject(new Error(event.message));
    });
    stop.addEventListener('abort', () => reject(stop.reason));
    worker.postMessage(request);
  }).finally(() => worker.terminate());
}
