/** The little of papaparse (RFC 4180 and its dialects) that is used here; it brings no types of its own. */
declare module 'papaparse' {
  interface ParseError {
    readonly type: 'Quotes' | 'Delimiter' | 'FieldMismatch';
    readonly code: string;
  }
  interface ParsedStep {
    readonly data: readonly string[];
    readonly errors: readonly ParseError[];
    readonly meta: { readonly cursor: number; readonly delimiter: string };
  }
  interface ParseOptions {
    readonly delimiter: string;
    readonly step: (row: ParsedStep, parser: { abort(): void }) => void;
  }
  const papa: { parse(text: string, options: ParseOptions): void };
  export default papa;
}
