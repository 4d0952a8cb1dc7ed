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
  trouble: {
    refused:
      'The camera is not allowed here. Allow it in the browser’s settings for this page, or use one of these ways.',
    none: 'No camera found on this device. Choose a picture instead.',
    taken: 'Another program is using the camera. Close it and try again, or use one of these ways.',
    lost: 'The camera stopped. Close this and start again, or use one of these ways.',
  } satisfies Record<CameraTrouble, string>,
} as const;
