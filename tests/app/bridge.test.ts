import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Bridge, type Channel, createBridge } from '../../src/app/workers/bridge.ts';
import type { Answered } from '../../src/app/workers/protocol.ts';
import { type Served, type ServedPort, serve } from '../../src/app/workers/serve.ts';

interface Request {
  readonly says: string;
}
type Reply =
  | { readonly ok: true; readonly heard: string; readonly data?: Uint8Array }
  | { readonly ok: false; readonly code: string };
type Work = (request: Request) => Promise<Served<Reply>> | Served<Reply>;

class CodedError extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

const open: MessagePort[] = [];
const bridges: Bridge<Request, Reply>[] = [];
afterEach(() => {
  for (const bridge of bridges.splice(0)) bridge.close();
  for (const port of open.splice(0)) port.close();
});

/** A worker that is really a message port: the same structured clone, the same asynchrony, no thread. */
function channelTo(work: Work, crashWith?: { crash?: (cause: unknown) => void }): Channel<Request, Reply> {
  const { port1, port2 } = new MessageChannel();
  open.push(port1, port2);
  serve<Request, Reply>(port2 as unknown as ServedPort, work, (cause) => ({
    ok: false,
    code: cause instanceof CodedError ? cause.code : 'failed',
  }));
  port2.start();
  return {
    post: (sent) => port1.postMessage(sent),
    listen(onAnswer, onCrash) {
      port1.on('message', (data: Answered<Reply>) => onAnswer(data));
      if (crashWith) crashWith.crash = onCrash;
    },
    close: () => port1.close(),
  };
}

function bridgeTo(work: Work, options: { limitMs?: number; onRestart?: (cause: unknown) => void } = {}) {
  const bridge = createBridge<Request, Reply>({ open: () => channelTo(work), limitMs: 5_000, ...options });
  bridges.push(bridge);
  return bridge;
}

describe('the bridge to a worker', () => {
  it('answers each request with its own reply', async () => {
    const bridge = bridgeTo(({ says }) => ({ reply: { ok: true, heard: says } }));
    const outcomes = await Promise.all(['a', 'b', 'c'].map((says) => bridge.ask({ says }, says)));
    expect(outcomes).toEqual(['a', 'b', 'c'].map((heard) => ({ state: 'done', reply: { ok: true, heard } })));
  });

  it('lets the latest request with a key win; the others are told', async () => {
    const worked: string[] = [];
    const bridge = bridgeTo(async ({ says }) => {
      worked.push(says);
      await new Promise((done) => setTimeout(done, 20));
      return { reply: { ok: true, heard: says } };
    });
    const outcomes = await Promise.all(
      ['one', 'two', 'three', 'four'].map((says) => bridge.ask({ says }, 'same')),
    );
    expect(outcomes.map(({ state }) => state)).toEqual(['superseded', 'superseded', 'superseded', 'done']);
    // The one under way is not interrupted, the two in between are never started.
    expect(worked).toEqual(['one', 'four']);
  });

  it('starts the worker ahead when roused, and asks that one', async () => {
    let opened = 0;
    const bridge = createBridge<Request, Reply>({
      open: () => {
        opened += 1;
        return channelTo(({ says }) => ({ reply: { ok: true, heard: says } }));
      },
      limitMs: 5_000,
    });
    bridges.push(bridge);
    bridge.rouse();
    bridge.rouse();
    expect(opened).toBe(1);
    expect(await bridge.ask({ says: 'a' }, 'a')).toEqual({ state: 'done', reply: { ok: true, heard: 'a' } });
    expect(opened).toBe(1);
  });

  it('carries errors as data, with their code', async () => {
    const bridge = bridgeTo(({ says }) => {
      throw new CodedError(says);
    });
    expect(await bridge.ask({ says: 'too-dark' }, 'a')).toEqual({
      state: 'done',
      reply: { ok: false, code: 'too-dark' },
    });
  });

  it('hands buffers over instead of copying them', async () => {
    let sent: Uint8Array | undefined;
    const bridge = bridgeTo(() => {
      sent = new Uint8Array([1, 2, 3]);
      return { reply: { ok: true, heard: '', data: sent }, transfer: [sent.buffer as ArrayBuffer] };
    });
    const outcome = await bridge.ask({ says: '' }, 'a');
    expect(outcome).toMatchObject({ reply: { data: new Uint8Array([1, 2, 3]) } });
    expect(sent?.byteLength).toBe(0);
  });

  it('starts a crashed worker again and tries its request once more', async () => {
    const handle: { crash?: (cause: unknown) => void } = {};
    const restarts = vi.fn();
    let opened = 0;
    const bridge = createBridge<Request, Reply>({
      open: () => {
        opened += 1;
        const first = opened === 1;
        return channelTo(({ says }) => {
          if (first) {
            handle.crash?.(new Error('out of memory'));
            return new Promise(() => {});
          }
          return { reply: { ok: true, heard: says } };
        }, handle);
      },
      limitMs: 5_000,
      onRestart: restarts,
    });
    bridges.push(bridge);
    expect(await bridge.ask({ says: 'again' }, 'a')).toEqual({
      state: 'done',
      reply: { ok: true, heard: 'again' },
    });
    expect(opened).toBe(2);
    expect(restarts).toHaveBeenCalledOnce();
  });

  it('gives up a request that brings the worker down twice, and goes on with the next', async () => {
    const handle: { crash?: (cause: unknown) => void } = {};
    const bridge = createBridge<Request, Reply>({
      open: () =>
        channelTo(({ says }) => {
          if (says === 'bad') {
            handle.crash?.(new Error('again'));
            return new Promise(() => {});
          }
          return { reply: { ok: true, heard: says } };
        }, handle),
      limitMs: 5_000,
    });
    bridges.push(bridge);
    const [bad, good] = await Promise.all([
      bridge.ask({ says: 'bad' }, 'a'),
      bridge.ask({ says: 'good' }, 'b'),
    ]);
    expect(bad).toEqual({ state: 'failed', code: 'worker-crashed' });
    expect(good).toEqual({ state: 'done', reply: { ok: true, heard: 'good' } });
  });

  it('counts a worker that cannot even be opened as crashed', async () => {
    const bridge = createBridge<Request, Reply>({
      open: () => {
        throw new Error('workers are not allowed here');
      },
      limitMs: 5_000,
    });
    bridges.push(bridge);
    expect(await bridge.ask({ says: 'a' }, 'a')).toEqual({ state: 'failed', code: 'worker-crashed' });
  });

  it('stops a request that takes too long', async () => {
    const bridge = bridgeTo(
      ({ says }) => (says === 'slow' ? new Promise(() => {}) : { reply: { ok: true, heard: says } }),
      { limitMs: 40 },
    );
    expect(await bridge.ask({ says: 'slow' }, 'a')).toEqual({ state: 'failed', code: 'worker-slow' });
    expect(await bridge.ask({ says: 'quick' }, 'a')).toMatchObject({ state: 'done' });
  });

  it('leaves nobody waiting when it is closed', async () => {
    const bridge = bridgeTo(() => new Promise(() => {}));
    const waiting = Promise.all([bridge.ask({ says: 'a' }, 'a'), bridge.ask({ says: 'b' }, 'b')]);
    bridge.close();
    expect((await waiting).map(({ state }) => state)).toEqual(['superseded', 'superseded']);
  });
});
