import { cpus } from 'node:os';
import { benchGarden } from './bench/bench-garden.ts';
import { benchRanking } from './bench/bench-ranking.ts';
import { benchSeeing } from './bench/bench-seeing.ts';
import { runCommand } from './read-arguments.ts';

await runCommand(async () => {
  const seeing = await benchSeeing();
  const ranking = benchRanking();
  // Machines differ and are shared: every line is read against decoding in the same run.
  const [decoding] = seeing;
  const rows = [...seeing, ...ranking, ...benchGarden()];
  const width = Math.max(...rows.map(({ name }) => name.length));
  process.stdout.write(
    `${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n\n`,
  );
  process.stdout.write(`${'step'.padEnd(width)}  median ms  × decoding\n`);
  for (const { name, ms, note } of rows) {
    const ratio = decoding ? (ms / decoding.ms).toFixed(2) : '–';
    process.stdout.write(
      `${name.padEnd(width)}  ${ms.toFixed(ms < 1 ? 3 : 1).padStart(9)}  ${ratio.padStart(10)}${note ? `  ${note}` : ''}\n`,
    );
  }
  return 0;
});
