import type { FrameHint } from '../../leaf/judge-frame.ts';

/** Why there is no picture from the camera. */
export type CameraTrouble = 'refused' | 'none' | 'taken' | 'lost';

export const VIEWFINDER_WORDS = {
  title: 'Take a photo',
  film: 'What the camera sees',
  starting: 'Starting the camera …',
  take: 'Take the photo',
  taking: 'Taking it …',
  close: 'Close',
  torchOn: 'Light on',
  torchOff: 'Light off',
  ownCamera: 'Use the device’s own camera',
  choose: 'Choose a picture instead',
  notTaken: 'The photo did not come across. Try again, or use the device’s own camera.',
  /** One sentence each: what is seen, and what to do. */
  hints: {
    'too-dark': 'Too dark. Turn so that the sun is behind you, or take the leaf out of the shade.',
    'burnt-out': 'Too bright. Shade the leaf with your body.',
    'no-leaf': 'No leaf in the middle. Point at one leaf.',
    'come-closer': 'Come closer, until the leaf fills half the frame.',
    'hold-still': 'Not sharp yet. Hold the leaf with one hand, and keep still a moment.',
    'lay-label': 'Good. With a white plant label beside the leaf its colours could be told better.',
    ready: 'Good: sharp, large and bright enough.',
  } satisfies Record<FrameHint, string>,
  help: {
    title: 'How to hold leaf and camera',
    lines: [
      'One leaf, flat and whole. When it reaches the four corners it fills about half of the frame, and that is large enough.',
      'The sun behind you, or the whole leaf in the shade of your body. Half sun, half shade hides pale patches.',
      'Lay a white plant label or a sheet of paper beside the leaf, in the same light. What is white there tells how blue or yellow the light is, so the leaf’s own colour can be told. Without one the photo still counts; colours are then only compared within the leaf.',
      'You can take the photo whatever the line under the picture says. It is judged again once it is taken.',
    ],
    hintsTitle: 'What the line under the picture means',
    hints: [
      { hint: 'Too dark', means: 'Yellow and green cannot be told apart in the dark parts.' },
      {
        hint: 'Too bright',
        means: 'Parts of the leaf are plain white in the picture, so their colour is gone.',
      },
      {
        hint: 'No leaf in the middle',
        means: 'Nothing leaf-like was found there. Hold one leaf apart from the rest.',
      },
      { hint: 'Come closer', means: 'Small spots need a leaf that fills half the frame.' },
      {
        hint: 'Not sharp yet',
        means: 'The hand or the leaf moves, or the camera is nearer than it can focus.',
      },
      { hint: 'Good', means: 'Sharp, large and bright enough; the frame around the leaf closes.' },
    ],
  },
  trouble: {
    refused:
      'The camera is not allowed here. Allow it in the browser’s settings for this page, or use one of these ways.',
    none: 'No camera found on this device. Choose a picture instead.',
    taken: 'Another program is using the camera. Close it and try again, or use one of these ways.',
    lost: 'The camera stopped. Close this and start again, or use one of these ways.',
  } satisfies Record<CameraTrouble, string>,
} as const;
