/** Wrong usage: the command prints one helpful line and exits with 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

export interface Arguments {
  /** Options with a value, as given. */
  readonly values: ReadonlyMap<string, string>;
  readonly switches: ReadonlySet<string>;
  readonly files: readonly string[];
}

/**
 * Split a command line.
 * @param line arguments after the program's name
 * @param withValue options that take a value
 * @param without options that do not
 * @param usage the line that tells how to do it right
 * @throws UsageError on an unknown option, a missing value or an option given twice
 */
export function readArguments(
  line: readonly string[],
  withValue: readonly string[],
  without: readonly string[],
  usage: string,
): Arguments {
  const values = new Map<string, string>();
  const switches = new Set<string>();
  const files: string[] = [];
  for (let i = 0; i < line.length; i++) {
    const word = line[i]!;
    if (!word.startsWith('--')) {
      files.push(word);
      continue;
    }
    const name = word.slice(2);
    if (without.includes(name)) {
      switches.add(name);
    } else if (withValue.includes(name)) {
      const value = line[++i];
      if (value === undefined || value.startsWith('--'))
        throw new UsageError(`--${name} needs a value. ${usage}`);
      if (values.has(name)) throw new UsageError(`--${name} was given twice. ${usage}`);
      values.set(name, value);
    } else {
      throw new UsageError(`Unknown option ${word}. ${usage}`);
    }
  }
  return { values, switches, files };
}

/** Run a command, turning wrong usage into one line and exit status 2, and anything unforeseen into 1. */
export async function runCommand(main: () => Promise<number>): Promise<void> {
  try {
    process.exitCode = await main();
  } catch (error) {
    const usage = error instanceof UsageError;
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = usage ? 2 : 1;
  }
}
