import { readFileSync, writeFileSync } from 'node:fs';
import { cpuUsage } from 'node:process';
import { readLeaf } from '../../leaf/read-leaf.ts';
import { decodeInNode } from '../../photo/decode-in-node.ts';

/** What reading one photo took, in this runtime. Milliseconds; megabytes over what the idle process held. */
export interface PhotoCost {
  readonly decodeMs: number;
  /** Everything that follows decoding and reading the pixels. */
  readonly restMs: number;
  /** The same for the first photo after the start, when nothing is compiled yet. */
  readonly firstRestMs: number;
  readonly overIdleMb?: number | undefined;
}

const RUNS = 5;

async function readOne(file: string): Promise<PhotoCost> {
  const bytes = new Uint8Array(readFileSync(file));
  forgetPeak();
  const idle = heldMb('VmRSS');
  const decode: number[] = [];
  const rest: number[] = [];
  let overIdleMb: number | undefined;
  for (let run = 0; run <= RUNS; run++) {
    const start = busyMs();
    const { pixels } = await decodeInNode(bytes);
    const decoded = busyMs();
    readLeaf(pixels, { role: 'whole' });
    decode.push(decoded - start);
    rest.push(busyMs() - decoded);
    // The first run alone: later ones find what it left behind.
    if (run === 0 && idle !== undefined) overIdleMb = heldMb('VmHWM')! - idle;
  }
  const [firstRestMs] = rest as [number];
  return { decodeMs: middle(decode.slice(1)), restMs: middle(rest.slice(1)), firstRestMs, overIdleMb };
}

const middle = (values: number[]): number => values.sort((p, q) => p - q)[values.length >> 1]!;

function busyMs(): number {
  const { user, system } = cpuUsage();
  return (user + system) / 1000;
}

/** Lets the peak count from now on; does nothing where the system keeps none (Linux only). */
function forgetPeak(): void {
  try {
    writeFileSync('/proc/self/clear_refs', '5');
  } catch {}
}

function heldMb(which: 'VmRSS' | 'VmHWM'): number | undefined {
  try {
    const line = new RegExp(`${which}:\\s+(\\d+) kB`).exec(readFileSync('/proc/self/status', 'utf8'));
    return line === null ? undefined : Number(line[1]) / 1024;
  } catch {
    return undefined;
  }
}

/**
 * Reads a photo in a process of its own, so that its memory is its alone; run as `read-in-node.ts FILE`, prints its
 * `PhotoCost` as JSON. Times are the processor's, since on a shared machine the clock's depend on others.
 */
const [, script = '', file] = process.argv;
if (script.endsWith('read-in-node.ts') && file !== undefined) {
  process.stdout.write(JSON.stringify(await readOne(file)));
}
