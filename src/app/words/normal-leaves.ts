import type { MeasureId } from '../../leaf/measures.ts';
import { GROUND_PLACES } from './ground-places.ts';

/** Healthy leaves of a variety, kept to hold others against. */
export const NORMAL_WORDS = {
  title: GROUND_PLACES.normal,
  lead: 'What is pale in one variety is ordinary in another. With a photo of a healthy leaf on record, Bedside weighs a leaf of that variety by how far it differs from it.',
  toGround: 'All beds',
  toAll: 'All healthy leaves',
  none: 'None yet. Choose a variety that grows here, or name one below.',
  growing: 'Varieties',
  unnamed: (crops: string): string =>
    `Without a variety, so nothing can be held against them: ${crops}. Name the variety in the bed.`,
  kept: (count: number): string =>
    count === 0 ? 'no healthy leaf yet' : count === 1 ? '1 healthy leaf' : `${count} healthy leaves`,
  otherTitle: 'Another variety',
  crop: 'Crop',
  variety: 'Variety',
  go: 'Show',
  needsBoth: 'Say the crop and the variety.',
  of: (name: string): string => `Healthy leaf: ${name}`,
  how: 'One leaf that is as it should be, flat in the shade, with a plant label or paper beside it. Two or three leaves are better than one.',
  take: 'Take a photo',
  choose: 'Choose photos',
  added: 'The healthy leaf is kept.',
  deleted: 'The healthy leaf is deleted.',
  measuring: 'Measuring the leaf …',
  outline: 'Is the outline not on the leaf you mean? Tap the photo.',
  day: 'Day',
  stage: 'How far on was the plant?',
  notSaid: 'Not said',
  colour: 'Its colour',
  noColour: 'No colour could be measured here, so nothing is held against this one.',
  colours: {
    hue: 'Hue (yellow about 95, leaf green 120 to 135)',
    lightness: 'Lightness',
    chroma: 'Strength of colour',
    'dark-green-index': 'Dark green',
  } satisfies Partial<Record<MeasureId, string>>,
  remove: 'Delete this one',
  removeThis: (day: string): string => `Delete the healthy leaf of ${day}`,
  leafOf: (day: string): string => `The leaf of ${day}`,

  /** Beside a leaf in a look. */
  besideTitle: 'Beside a healthy leaf',
  besideSome: (count: number): string =>
    count === 1 ? 'a healthy leaf of this variety' : `${count} healthy leaves of this variety`,
  points: (value: string, give: string): string => `${value} points, give or take ${give}`,
  apart: (of: string, points: string): string =>
    `Its colour differs from ${of} by ${points}. The eye just sees a difference of 1 or 2; 5 is plain.`,
  notApart: (of: string, points: string): string => `No clear difference in colour from ${of}: ${points}.`,
  weighed: 'What is weighed is how far it differs from them, not how green it is by itself.',

  /** From a case that came to nothing. */
  keepTitle: 'An ordinary leaf',
  keepWhy: (name: string): string =>
    `This was nothing wrong. Kept as a healthy leaf of ${name}, it is what later looks are held against.`,
  keep: 'Keep it as a healthy leaf',
  keptAlready: 'It is kept as a healthy leaf of its variety.',
} as const;
