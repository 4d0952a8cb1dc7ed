import type { FileTrouble } from './read-photo.ts';

const SENTENCES: Record<FileTrouble, string> = {
  'file-not-found': 'no such file, or it may not be read: check the path',
  'empty-file': 'the file is empty: copy it again from the camera',
  'not-a-picture': 'this is not a picture: give a JPEG, PNG or WebP file',
  'broken-picture': 'the picture is cut off or damaged: copy it again from the camera',
  'format-unreadable': 'this picture format cannot be read here: save it as JPEG',
  'too-large': 'the picture has more than 64 million pixels: save it smaller',
  'too-small': 'the picture is too small to measure: take it closer or at full size',
  'too-dark': 'too dark to judge: turn so that the light falls on the leaf',
  'burnt-out': 'burnt out by the light: shade the leaf with your hand or body',
  'too-blurred': 'too blurred to judge: hold still, or tap the leaf to focus',
  'no-leaf': 'no leaf found: fill the middle of the picture with one leaf',
  'leaf-too-small': 'the leaf is too small in the picture: go closer',
};

/** What is wrong with a photo and what to do about it. */
export function describeTrouble(trouble: FileTrouble): string {
  return SENTENCES[trouble];
}
