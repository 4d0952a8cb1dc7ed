import { inflateSync } from 'node:zlib';

/** What one page of a PDF draws. */
export interface PaperPage {
  /** Pieces of text that are shown; a line is one or more of them. */
  readonly texts: number;
  /** Photos and other pictures, and groups of drawings. */
  readonly pictures: number;
}

/** The pages of a PDF as Chromium writes it (objects in plain sight, contents packed; ISO 32000-1, 7.3.8 and 7.7.3.3), in their order. */
export function pagesOfPdf(pdf: Buffer): PaperPage[] {
  const text = pdf.toString('latin1');
  const objects = new Map(
    [...text.matchAll(/^(\d+) 0 obj\b([\s\S]*?)^endobj/gm)].map(([, id, body]) => [id!, body!]),
  );
  return [...objects.values()]
    .filter((body) => /\/Type\s*\/Page\b/.test(body.split('stream\n')[0]!))
    .map((body) => {
      const drawn = contentsOf(objects.get(/\/Contents (\d+) 0 R/.exec(body)?.[1] ?? '') ?? '');
      return {
        texts: drawn.match(/\bT[jJ]\b/g)?.length ?? 0,
        pictures: drawn.match(/\bDo\b/g)?.length ?? 0,
      };
    });
}

/** An empty page's contents are not packed. */
function contentsOf(body: string): string {
  if (!body.includes('/FlateDecode')) return '';
  const start = body.indexOf('stream\n') + 'stream\n'.length;
  const packed = Buffer.from(body.slice(start, body.lastIndexOf('\nendstream')), 'latin1');
  return inflateSync(packed).toString('latin1');
}
