import type { Channel } from './bridge.ts';
import type { Answered } from './protocol.ts';

/** A module worker as a channel. A worker that fails to load or throws where nobody catches it counts as crashed. */
export function openWorker<Request, Reply>(start: () => Worker): Channel<Request, Reply> {
  const worker = start();
  return {
    post: (sent) => worker.postMessage(sent),
    listen(onAnswer, onCrash) {
      worker.addEventListener('message', (event: MessageEvent<Answered<Reply>>) => onAnswer(event.data));
      worker.addEventListener('messageerror', onCrash);
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        onCrash(event);
      });
    },
    close: () => worker.terminate(),
  };
}
