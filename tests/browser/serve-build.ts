import { readFileSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import { extname, join } from 'node:path';
import { ROOT, type Served } from './browser.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

interface ServeOptions {
  /** Where the build lies at the moment. */
  readonly folder?: () => string;
  /** Told of every request that comes, as it stands in its first line. */
  readonly onRequest?: (address: string) => void;
}

/**
 * The build behind a server that may send other bytes for a file, none (404), or answer for itself. Nothing that it sends is
 * kept by the browser's own cache.
 */
export async function serveBuild(
  port: number,
  alter: (path: string, body: Buffer, response: ServerResponse) => Buffer | 'none' | 'answered' = (_, body) =>
    body,
  { folder = () => join(ROOT, 'dist'), onRequest = () => {} }: ServeOptions = {},
): Promise<Served> {
  const server = createServer((request, response) => {
    onRequest(request.url ?? '');
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const name = path === '/' ? '/index.html' : path;
    try {
      const body = alter(name, readFileSync(join(folder(), name)), response);
      if (body === 'answered') return;
      if (body === 'none') throw new Error('not there');
      response.writeHead(200, {
        'content-type': TYPES[extname(name)] ?? 'application/octet-stream',
        'cache-control': 'no-store',
      });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${port}/`,
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
