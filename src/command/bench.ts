import { cpus } from 'node:os';
import { benchBook } from './bench/bench-book.ts';
import { benchGarden } from './bench/bench-garden.ts';
import { benchNetwork } from './bench/bench-network.ts';
import { benchRanking } from './bench/bench-ranking.ts';
import { benchSeeing, type SeeingRow } from './bench/bench-seeing.ts';
import { benchSegmentation, type SegmentationRow } from './bench/bench-segmentation.ts';
import { benchStart } from './bench/bench-start.ts';
import { benchSteps, LEAST_MS, type StepRow, type StepTimes } from './bench/bench-steps.ts';
import type { LibraryCut } from './bench/cut-by-library.ts';
import { readArguments, runCommand } from './read-arguments.ts';

await runCommand(async () => {
  const print = (line: string): void => void process.stdout.write(`${line}\n`);
  const { switches } = readArguments(process.argv.slice(2), [], ['steps'], 'npm run bench [-- --steps]');
  print(`${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`);
  if (switches.has('steps')) {
    printSteps(await benchSteps(), print);
    return 0;
  }
  const seeing = await benchSeeing();
  print('seeing            megapixels  file MB  decode ms  rest ms  × decode  first time  MB over idle');
  for (const row of seeing) print(lineOf(row));
  const book = await benchBook();
  const others = [
    ...benchRanking(),
    ...benchGarden(),
    ...book.rows,
    ...(await benchStart()),
    ...(await benchNetwork()),
  ];
  // Machines differ and are shared: every line is read against decoding 12 megapixels in the same run.
  const decoding = seeing.find(({ runtime, megapixels }) => runtime === 'Node' && megapixels === 12);
  const width = Math.max(...others.map(({ name }) => name.length));
  print(`\n${'step'.padEnd(width)}  median ms  × decoding 12 megapixels in Node`);
  for (const { name, ms, note } of others) {
    const ratio = decoding ? (ms / decoding.decodeMs).toFixed(2) : '–';
    print(
      `${name.padEnd(width)}  ${ms.toFixed(ms < 1 ? 3 : 1).padStart(9)}  ${ratio.padStart(10)}${note ? `  ${note}` : ''}`,
    );
  }
  print(`\nbook in Chromium, memory: ${book.memory}\n`);
  printSteps(await benchSteps(), print);
  print(
    '\nmask under a tap            megapixels  here ms     IoU  GrabCut ms  × here     IoU  same from a rectangle',
  );
  for await (const row of benchSegmentation()) print(segmentationLineOf(row));
  return 0;
});

/** Each step of the main job: middle and worst time to the next frame, longest task; as the processor is, and slowed four times. */
function printSteps(rows: readonly StepRow[], print: (line: string) => void): void {
  const width = Math.max(...rows.map(({ name }) => name.length));
  const say = (ms: number): string => (ms <= LEAST_MS ? `<=${LEAST_MS}` : ms.toFixed(0)).padStart(8);
  const timesOf = ({ middle, worst, task }: StepTimes): string =>
    `${say(middle)}${say(worst)}${(task === 0 ? '–' : task.toFixed(0)).padStart(8)}`;
  print(`${'press to next frame, ms'.padEnd(width)}   as it is: worst    task   slowed: worst    task`);
  for (const { name, plain, slowed } of rows)
    print(`${name.padEnd(width)}  ${timesOf(plain)}${timesOf(slowed)}`);
}

function segmentationLineOf({ what, megapixels, ms, iou, byTap, byRectangle }: SegmentationRow): string {
  const partsOf = (cut: LibraryCut): string[] =>
    'failed' in cut
      ? [`fails: ${cut.failed}`]
      : [
          cut.ms.toFixed(0).padStart(10),
          (cut.ms / ms).toFixed(1).padStart(6),
          cut.iou.toFixed(3).padStart(6),
        ];
  return [
    what.padEnd(26),
    String(megapixels).padStart(10),
    ms.toFixed(0).padStart(7),
    iou.toFixed(3).padStart(6),
    ...partsOf(byTap),
    ...partsOf(byRectangle),
  ].join('  ');
}

function lineOf(row: SeeingRow): string {
  const { runtime, megapixels, fileMb, decodeMs, restMs, firstRestMs, overIdleMb, what } = row;
  return [
    runtime.padEnd(16),
    String(megapixels).padStart(10),
    fileMb.toFixed(1).padStart(7),
    decodeMs.toFixed(0).padStart(9),
    restMs.toFixed(0).padStart(7),
    (restMs / decodeMs).toFixed(2).padStart(8),
    (firstRestMs / decodeMs).toFixed(1).padStart(10),
    (overIdleMb?.toFixed(0) ?? '–').padStart(12),
    what,
  ].join('  ');
}
