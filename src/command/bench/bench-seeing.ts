import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readInBrowser } from './bench-in-browser.ts';
import { makeBenchPhotos } from './make-bench-photos.ts';
import type { PhotoCost } from './read-in-node.ts';

/** One photo read in one runtime. */
export interface SeeingRow extends PhotoCost {
  readonly runtime: 'Node' | 'Chromium';
  readonly what: string;
  readonly megapixels: number;
  readonly fileMb: number;
}

/** Three sizes, to show that the cost grows no faster than the pixels. */
const MEGAPIXELS = [3, 12, 24] as const;

/** Decoding and all that follows, in Node and in Chromium, at three sizes; photo by photo, so that both share the moment. */
export async function benchSeeing(): Promise<SeeingRow[]> {
  const rows: SeeingRow[] = [];
  const folder = mkdtempSync(join(tmpdir(), 'bedside-bench-'));
  try {
    for (const megapixels of MEGAPIXELS) {
      for (const { what, bytes } of await makeBenchPhotos(megapixels)) {
        const file = join(folder, 'photo.jpg');
        writeFileSync(file, bytes);
        const photo = { what, megapixels, fileMb: bytes.length / 1e6 };
        rows.push({ runtime: 'Node', ...photo, ...readInNode(file) });
        rows.push({ runtime: 'Chromium', ...photo, ...(await readInBrowser(bytes)) });
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return rows;
}

function readInNode(file: string): PhotoCost {
  const script = fileURLToPath(new URL('read-in-node.ts', import.meta.url));
  const printed = execFileSync(process.execPath, [...process.execArgv, script, file], { encoding: 'utf8' });
  return JSON.parse(printed) as PhotoCost;
}
