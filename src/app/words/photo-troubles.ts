import type { PhotoTrouble } from '../../photo/types.ts';

/** What is wrong with a photo and what to do about it. Never blames. */
export const PHOTO_TROUBLE_WORDS: Record<PhotoTrouble, string> = {
  'empty-file':
    'This file is empty: nothing came across. Take the photo again, or choose it from another place.',
  'not-a-picture': 'This file is not a picture. Choose a photo (JPEG, PNG or WebP).',
  'broken-picture': 'The file breaks off in the middle. Copy it over again, or take a new photo.',
  'format-unreadable':
    'This browser cannot read this kind of picture. Save it as JPEG first, or set the camera to “most compatible”.',
  'too-large':
    'This picture is too large to work with here. Take it at a lower setting, or save a smaller copy.',
  'too-small': 'This picture is too small to judge a leaf by. Use the photo as it came out of the camera.',
  'too-dark': 'Too dark to judge. Turn so that the sun is behind you, or take the leaf out of the shade.',
  'burnt-out': 'Parts are burnt out to plain white. Shade the leaf with your body and take it again.',
  'too-blurred':
    'Too blurred to judge. Hold the leaf with one hand, tap it on the screen to focus, and wait a moment.',
  'no-leaf':
    'No leaf found. If there is one, tap it in the photo; else go closer until it fills half the frame.',
  'leaf-too-small': 'The leaf is small in the frame. Go closer, until it fills about half of it.',
};

/** Said when the part of the app that reads photos gave up: nobody's fault at the bed. */
export const PHOTO_WORKER_WORDS = {
  'worker-crashed':
    'The part that reads photos stopped at this one and was started again. Your photo and answers are still here. Try it once more, or go on without it.',
  'worker-slow':
    'Reading this photo took too long and was stopped. A smaller copy may work; your answers are still here.',
  failed: 'This photo could not be read. It stays with the look; go on with the questions.',
} as const;
