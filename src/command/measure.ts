import { printMeasures } from './print-result.ts';
import { readArguments, runCommand, UsageError } from './read-arguments.ts';
import { readPhotoFile } from './read-photo.ts';
import { photoAsJson } from './result-as-json.ts';

const USAGE = 'Usage: npm run --silent measure -- FILE… [--json] [--mask-out DIR]';

await runCommand(async () => {
  const { values, switches, files } = readArguments(process.argv.slice(2), ['mask-out'], ['json'], USAGE);
  if (files.length === 0) throw new UsageError(`No photo given. ${USAGE}`);
  let read = 0;
  for (const file of files) {
    const reading = await readPhotoFile(file, 'whole', values.get('mask-out'));
    if (reading.leaf.found) read += 1;
    process.stdout.write(
      `${switches.has('json') ? JSON.stringify(photoAsJson(reading)) : printMeasures([reading])}\n`,
    );
  }
  // Bad files are reported and the rest goes on; only when nothing could be read is it a failure.
  return read > 0 ? 0 : 1;
});
