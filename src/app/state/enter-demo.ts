import type { DemoNews, DemoRequest } from '../workers/demo-worker.ts';
import { deleteDemo, markDemo, startAnew } from './demo.ts';

/**
 * Makes the invented garden in a worker and goes over to it. `false` when it could not be made; then nothing of it stays.
 * @param onLeaf told of every leaf that is drawn and measured
 */
export async function enterDemo(today: string, onLeaf: (done: number, of: number) => void): Promise<boolean> {
  try {
    markDemo('making');
    await deleteDemo();
    markDemo('making');
    await fillDemo(today, onLeaf);
    markDemo('in');
  } catch (cause) {
    console.error('the invented garden could not be made', cause);
    await deleteDemo().catch(() => {});
    return false;
  }
  startAnew();
  return true;
}

function fillDemo(today: string, onLeaf: (done: number, of: number) => void): Promise<void> {
  const worker = new Worker(new URL('../workers/demo-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<void>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<DemoNews>) => {
      if (data.kind === 'leaf') onLeaf(data.done, data.of);
      else if (data.kind === 'made') resolve();
      else reject(new Error(data.why));
    });
    worker.addEventListener('error', (event) => reject(new Error(event.message)));
    worker.postMessage({ today } satisfies DemoRequest);
  }).finally(() => worker.terminate());
}
