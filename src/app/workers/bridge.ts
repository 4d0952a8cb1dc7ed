/**
 * The app's side of a worker. One request is under way at a time; of the waiting ones the newest with each key counts and
 * older ones are told that they were superseded. A crashed worker is started again and its request tried once more.
 */
import type { Answered, Sent } from './protocol.ts';

/** A worker or a message port, seen from the app. */
export interface Channel<Request, Reply> {
  post(sent: Sent<Request>): void;
  listen(onAnswer: (answered: Answered<Reply>) => void, onCrash: (cause: unknown) => void): void;
  close(): void;
}

export type Outcome<Reply> =
  | { readonly state: 'done'; readonly reply: Reply }
  /** A newer request with the same key took its place. */
  | { readonly state: 'superseded' }
  | { readonly state: 'failed'; readonly code: 'worker-crashed' | 'worker-slow' };

export interface Bridge<Request, Reply> {
  ask(request: Request, key: string): Promise<Outcome<Reply>>;
  /** Starts the worker before it is asked for anything. */
  rouse(): void;
  close(): void;
}

export interface BridgeOptions<Request, Reply> {
  readonly open: () => Channel<Request, Reply>;
  /** A request that takes longer is given up and the worker started afresh. */
  readonly limitMs: number;
  readonly onRestart?: (cause: unknown) => void;
}

interface Job<Request, Reply> {
  readonly key: string;
  readonly request: Request;
  readonly settle: (outcome: Outcome<Reply>) => void;
  tries: number;
}

/** A request that brought the worker down twice will do so again. */
const TRIES = 2;

export function createBridge<Request, Reply>(options: BridgeOptions<Request, Reply>): Bridge<Request, Reply> {
  const waiting = new Map<string, Job<Request, Reply>>();
  let channel: Channel<Request, Reply> | undefined;
  let underWay:
    | { job: Job<Request, Reply>; number: number; timer: ReturnType<typeof setTimeout> }
    | undefined;
  let lastNumber = 0;

  function opened(): Channel<Request, Reply> {
    if (channel) return channel;
    const fresh = options.open();
    fresh.listen(
      ({ number, reply }) => {
        if (channel === fresh && underWay?.number === number) finish({ state: 'done', reply });
      },
      (cause) => {
        if (channel === fresh) restart(cause);
      },
    );
    channel = fresh;
    return fresh;
  }

  function finish(outcome: Outcome<Reply>): void {
    if (!underWay) return;
    clearTimeout(underWay.timer);
    const { job } = underWay;
    underWay = undefined;
    job.settle(waiting.has(job.key) ? { state: 'superseded' } : outcome);
    sendNext();
  }

  function restart(cause: unknown): void {
    channel?.close();
    channel = undefined;
    options.onRestart?.(cause);
    if (!underWay) return;
    const { job, timer } = underWay;
    if (job.tries >= TRIES || waiting.has(job.key)) {
      finish({ state: 'failed', code: 'worker-crashed' });
      return;
    }
    clearTimeout(timer);
    underWay = undefined;
    send(job);
  }

  function send(job: Job<Request, Reply>): void {
    lastNumber += 1;
    job.tries += 1;
    const timer = setTimeout(() => {
      channel?.close();
      channel = undefined;
      finish({ state: 'failed', code: 'worker-slow' });
    }, options.limitMs);
    underWay = { job, number: lastNumber, timer };
    try {
      opened().post({ number: lastNumber, request: job.request });
    } catch (cause) {
      restart(cause);
    }
  }

  function sendNext(): void {
    if (underWay) return;
    const next = waiting.values().next();
    if (next.done) return;
    waiting.delete(next.value.key);
    send(next.value);
  }

  return {
    ask: (request, key) =>
      new Promise((settle) => {
        waiting.get(key)?.settle({ state: 'superseded' });
        waiting.delete(key);
        waiting.set(key, { key, request, settle, tries: 0 });
        sendNext();
      }),
    rouse() {
      try {
        opened();
      } catch {
        // It is started again, and its failure told, when it is asked.
      }
    },
    close() {
      channel?.close();
      channel = undefined;
      if (underWay) clearTimeout(underWay.timer);
      underWay?.job.settle({ state: 'superseded' });
      underWay = undefined;
      for (const job of waiting.values()) job.settle({ state: 'superseded' });
      waiting.clear();
    },
  };
}
