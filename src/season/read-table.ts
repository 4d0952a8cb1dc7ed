/// <reference path="./papaparse.d.ts" />
/** One line of a table: where it begins in the file (from 1), and its cells, trimmed. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  /** Names of the columns: the first line that holds anything. */
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
  readonly delimiter: string;
  /** Lines whose quotes never close; they are left out, what follows is read on. */
  readonly brokenLines: readonly number[];
}

const DELIMITERS = [',', ';', '\t', '|'] as const;
const NEWLINE = /\r\n|\n|\r/g;

/** The delimiter that the first lines hold most often and most evenly. */
function guessDelimiter(text: string): string {
  const lines = text.split(NEWLINE, 12).filter((line) => line.trim() !== '');
  const least = (delimiter: string): number =>
    Math.min(...lines.map((line) => line.split(delimiter).length - 1), Number.MAX_SAFE_INTEGER);
  const found = DELIMITERS.map((delimiter) => ({
    delimiter,
    least: lines.length > 0 ? least(delimiter) : 0,
  }));
  return found.reduce((best, one) => (one.least > best.least ? one : best)).delimiter;
}

const linesIn = (text: string): number => text.match(NEWLINE)?.length ?? 0;

/** Reads comma-separated values (RFC 4180; other separators too), keeping whatever can be kept. Never throws. */
export async function readTable(file: string): Promise<Table> {
  const { default: papa } = await import('papaparse');
  const text = file.replace(/^\uFEFF/, '');
  const delimiter = guessDelimiter(text);
  const rows: TableRow[] = [];
  const brokenLines: number[] = [];
  let start = 0;
  while (start < text.length) {
    const rest = text.slice(start);
    const base = linesIn(text.slice(0, start)) + 1;
    let [read, line, broken] = [0, base, false];
    papa.parse(rest, {
      delimiter,
      step: ({ data, errors, meta }, parser) => {
        if (errors.some(({ code }) => code === 'MissingQuotes')) {
          broken = true;
          parser.abort();
          return;
        }
        const cells = data.map((cell) => cell.trim());
        if (cells.some((cell) => cell !== '')) {
          if (errors.length > 0) brokenLines.push(line);
          else rows.push({ line, cells });
        }
        line += linesIn(rest.slice(read, meta.cursor));
        read = meta.cursor;
      },
    });
    if (!broken) break;
    // A quote that never closes would swallow the rest of the file: this line is left out, the next one read on.
    brokenLines.push(line);
    const next = rest.slice(read).search(NEWLINE);
    if (next < 0) break;
    const end = rest.slice(read + next).match(/^(\r\n|\n|\r)/)![0].length;
    start += read + next + end;
  }
  const [head, ...body] = rows;
  return { columns: head?.cells ?? [], rows: body, delimiter, brokenLines };
}
