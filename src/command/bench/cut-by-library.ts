import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { cpuUsage } from 'node:process';

/** What is to be cut: files of raw RGBA and of the truth, and how the library is told where the leaf is. */
export interface LibraryTask {
  readonly width: number;
  readonly height: number;
  readonly pixelsFile: string;
  readonly truthFile: string;
  /** Left, top, width, height round the leaf, px; or a mask of hints as the library numbers them, in a file. */
  readonly rectangle?: readonly [number, number, number, number];
  readonly hintsFile?: string;
}

export type LibraryCut = { readonly ms: number; readonly iou: number } | { readonly failed: string };

interface Mat {
  readonly data: Uint8Array;
  delete(): void;
}

/** The part of the library's interface used here. */
interface Vision {
  onRuntimeInitialized?: () => void;
  readonly CV_8UC1: number;
  readonly CV_8UC3: number;
  readonly GC_INIT_WITH_RECT: number;
  readonly GC_INIT_WITH_MASK: number;
  readonly Mat: new (height?: number, width?: number, type?: number) => Mat;
  readonly Rect: new (x: number, y: number, width: number, height: number) => object;
  setRNGSeed(seed: number): void;
  grabCut(picture: Mat, mask: Mat, box: object, ground: Mat, leaf: Mat, rounds: number, mode: number): void;
}

/** Its usual number. */
const ROUNDS = 5;

async function cut(task: LibraryTask): Promise<LibraryCut> {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js') as Vision;
  // Never the result of a promise: it has a `then` of its own that would be called for ever.
  await new Promise<void>((ready) => {
    cv.onRuntimeInitialized = ready;
  });
  const { width, height } = task;
  const rgba = readFileSync(task.pixelsFile);
  const truth = readFileSync(task.truthFile);
  const hints = task.hintsFile === undefined ? undefined : readFileSync(task.hintsFile);
  const start = busyMs();
  try {
    const picture = new cv.Mat(height, width, cv.CV_8UC3);
    for (let i = 0, o = 0; i < rgba.length; i += 4, o += 3) {
      picture.data[o] = rgba[i]!;
      picture.data[o + 1] = rgba[i + 1]!;
      picture.data[o + 2] = rgba[i + 2]!;
    }
    const mask = new cv.Mat(height, width, cv.CV_8UC1);
    if (hints !== undefined) mask.data.set(hints);
    const mode = hints === undefined ? cv.GC_INIT_WITH_RECT : cv.GC_INIT_WITH_MASK;
    const [left, top, wide, high] = task.rectangle ?? [0, 0, 1, 1];
    cv.setRNGSeed(1);
    const box = new cv.Rect(left, top, wide, high);
    cv.grabCut(picture, mask, box, new cv.Mat(), new cv.Mat(), ROUNDS, mode);
    const ms = busyMs() - start;
    let both = 0;
    let either = 0;
    for (let i = 0; i < truth.length; i++) {
      // Odd numbers are leaf, surely or probably.
      const found = (mask.data[i]! & 1) === 1;
      const wanted = truth[i] === 255;
      if (found && wanted) both++;
      if (found || wanted) either++;
    }
    return { ms, iou: both / either };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : `error ${error}` };
  }
}

function busyMs(): number {
  const { user, system } = cpuUsage();
  return (user + system) / 1000;
}

/**
 * Cuts one leaf out by OpenCV's GrabCut in a process of its own, since what runs out of memory there does not recover; run as
 * `cut-by-library.ts TASK.json`, prints a `LibraryCut` as JSON. Loading the library is not counted.
 */
const [, script = '', file] = process.argv;
if (script.endsWith('cut-by-library.ts') && file !== undefined) {
  process.stdout.write(JSON.stringify(await cut(JSON.parse(readFileSync(file, 'utf8')) as LibraryTask)));
}
