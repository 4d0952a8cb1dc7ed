/**
 * A sheet as one file that stands by itself: the page's own words and drawings, its style, its photos painted anew. Nothing in it
 * runs, and nothing in it is fetched.
 */
import { handOver } from './hand-over.ts';

/** Longest side of a photo in the file, px: enough to fill half a printed page. */
const PHOTO_SIDE_PX = 1100;
const PHOTO_QUALITY = 0.85;

/** Forbids the file to load or run anything, whatever stands in it. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

/**
 * @param sheet as it stands on the page
 * @throws where a photo cannot be painted
 */
export async function sheetAsFile(sheet: HTMLElement, title: string, name: string): Promise<File> {
  const copy = sheet.cloneNode(true) as HTMLElement;
  const painted = [...sheet.querySelectorAll('img')];
  const copies = [...copy.querySelectorAll('img')];
  await Promise.all(
    painted.map(async (image, at) => {
      copies[at]?.setAttribute('src', await paintedAnew(image));
    }),
  );
  for (const part of copy.querySelectorAll('script, link, button')) part.remove();
  for (const link of copy.querySelectorAll('a')) link.removeAttribute('href');
  const heading = document.createElement('title');
  heading.textContent = title;
  // Put together as text: elements made here, a style among them, would be held to this page's own policy.
  const html = `<!doctype html>
<html lang="${document.documentElement.lang}" data-theme="light">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
${heading.outerHTML}
<style>
${styleOfPage()}
</style>
</head>
<body>
${copy.outerHTML}
</body>
</html>
`;
  return new File([html], name, { type: 'text/html' });
}

/** Through a canvas: pixels go along, and nothing that the camera wrote beside them. */
async function paintedAnew(image: HTMLImageElement): Promise<string> {
  await image.decode();
  const scale = Math.min(1, PHOTO_SIDE_PX / Math.max(image.naturalWidth, image.naturalHeight));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no drawing surface');
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/jpeg', PHOTO_QUALITY);
}

const styleOfPage = (): string =>
  [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules].map(({ cssText }) => cssText)).join('\n');

/**
 * Gives a file to another app through the device's share sheet where it takes files, else saves it.
 * @returns `dismissed` where the grower turned away
 */
export async function handOn(file: File, title: string): Promise<'shared' | 'saved' | 'dismissed'> {
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title });
      return 'shared';
    } catch (cause) {
      if (cause instanceof DOMException && cause.name === 'AbortError') return 'dismissed';
    }
  }
  handOver(file, file.name);
  return 'saved';
}
