/** The worker's side: takes requests one after another and answers each, also when the work throws. */
import type { Answered, Sent } from './protocol.ts';

/** What a worker and a message port have in common. */
export interface ServedPort {
  postMessage(message: unknown, transfer: ArrayBuffer[]): void;
  addEventListener(type: 'message', listener: (event: { data: unknown }) => void): void;
}

export interface Served<Reply> {
  readonly reply: Reply;
  /** Buffers handed over instead of copied. */
  readonly transfer?: readonly ArrayBuffer[];
}

export function serve<Request, Reply>(
  port: ServedPort,
  work: (request: Request, tell: (news: Reply) => void) => Promise<Served<Reply>> | Served<Reply>,
  failed: (cause: unknown) => Reply,
): void {
  port.addEventListener('message', async ({ data }) => {
    const { number, request } = data as Sent<Request>;
    let served: Served<Reply>;
    try {
      served = await work(request, (reply) => port.postMessage({ number, reply }, []));
    } catch (cause) {
      served = { reply: failed(cause) };
    }
    const answered: Answered<Reply> = { number, reply: served.reply };
    port.postMessage(answered, [...(served.transfer ?? [])]);
  });
}
