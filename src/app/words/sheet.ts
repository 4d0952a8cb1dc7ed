/** Sheets: one or two pages to print or hand on. */
export const SHEET_WORDS = {
  waiting: 'A sheet to hand on',
  make: 'A sheet to print or hand on',
  print: 'Print it',
  share: 'Hand it on as a file',
  making: 'Making the file …',
  saved: (name: string): string => `Saved as ${name}.`,
  failed: 'The file could not be made. Try again, or print the sheet.',
  fileHow:
    'The file opens in any browser. Its photos are made anew for it, so no place or camera data goes along. What you wrote in notes does.',
  notFound: 'This is not on record on this device.',
  foot: (day: string): string =>
    `Made with Bedside on ${day}. An estimate from what was seen and said, not a laboratory’s finding. It names no product; local rules and licensed advice come first.`,
} as const;

/** A file name that any device takes. */
export const sheetFileName = (title: string): string =>
  `${
    title
      .normalize('NFKD')
      .replace(/–/g, ' ')
      .replace(/[^\w ]/g, '')
      .trim()
      .replace(/\s+/g, '-')
      .toLowerCase()
      .slice(0, 60) || 'sheet'
  }.html`;
