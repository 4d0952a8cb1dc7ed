import { GROUP_NAMES } from './signs.ts';

export const LOOK_WORDS = {
  title: 'A plant looks wrong',
  titleLater: (plant: string): string => `Another look at ${plant}`,
  opening: 'Opening …',

  // The plant
  whichPlant: 'Which plant?',
  cropSearch: 'Find a crop',
  cropNone: 'No crop of that name here. Take “Another crop”.',
  cropCannotSay: 'Can’t say',
  cropOthers: 'All crops',
  cropFewer: 'Fewer',
  cropChange: 'Change the crop',
  variety: 'Variety, if you know it',
  varietyHint: 'in your own words',
  date: 'Day of this look',
  dateChange: 'Another day',
  dateFrom: { photo: 'as the photo says', said: 'as you set it', begun: 'because no photo says otherwise' },

  // Photos
  photos: 'Photos',
  photosLead: 'up to four of one plant; one is enough',
  takePhoto: 'Take a photo',
  choosePhotos: 'Choose photos',
  dropHere: 'or drop them here, or paste',
  addFor: (role: string): string => `Add a photo: ${role}`,
  show: (role: string): string => `Show the photo: ${role}`,
  tooMany: (count: number): string =>
    count === 1
      ? 'One photo found no place: four are the most for one look.'
      : `${count} photos found no place: four are the most for one look.`,
  thisIs: 'This photo shows',
  whatShows: 'What does this photo show?',
  whatShowsWhy: 'Until you say, nothing is concluded from it.',
  roleOpen: 'Not said yet',
  aboutPhoto: (role: string): string => `This photo: ${role.toLocaleLowerCase('en-GB')}`,
  removePhoto: 'Take this photo out',
  removeFile: (file: string): string => `Take “${file}” out`,
  photoRemoved: 'The photo is taken out.',
  reading: 'Reading the photo …',
  readAgain: 'Try again',
  noPicture: 'The picture itself cannot be shown here.',
  taken: (day: string): string => `taken ${day}`,
  found: 'What the photo shows',
  drawn: 'All that is drawn, each to switch and point out',
  nothingStandsOut: 'Nothing stands out: evenly coloured, whole, no spots.',
  finer: 'Everything that was measured',
  giveOrTake: '“Give or take” is the span that holds the true value eight times in ten.',
  nothingMeasured: 'Nothing could be measured in this photo.',
  wholeNotMeasured: 'A whole plant is kept as it looks; leaves are measured on leaf photos.',
  white: {
    tapped: 'Colours are set by the white you tapped.',
    found: 'Colours are set by something white found in the photo.',
    estimated:
      'No white in the photo: the light is estimated, so colours carry more doubt. Lay a plant label or paper beside the leaf, or tap something white or grey.',
  },

  // Camera
  cameraSays: 'What the camera reports',
  cameraSees: 'sees',
  cameraSeesNot: 'does not see',
  cameraWeight: { strong: 'clearly', some: 'probably', faint: 'faintly' },
  cameraSeesNothing: 'No sign stands out in the photo.',
  cameraNoPhoto: 'No photo in this look yet.',
  cameraNotSeen: (count: number): string =>
    count === 1 ? 'One sign it looked for and does not see' : `${count} signs it looked for and does not see`,
  cameraRestsOn: (measure: string, says: string): string =>
    `(by its ${measure.charAt(0).toLocaleLowerCase('en-GB')}${measure.slice(1)}: ${says})`,
  cameraSawBefore:
    'Still counted from an earlier look, because a leaf that greens up does not unsay what it showed:',
  overrule: 'I see it otherwise',
  overruled: 'Set aside at your word',
  letStand: 'Let what was reported stand',

  // Questions
  openingWhere: 'From where you stand',
  openingAsks: 'What strikes you?',
  striking: {
    'yellowing@some': 'Pale or yellow',
    'purple-tint@some': 'Purple or reddish',
    'curled@some': 'Curled or twisted',
    'holes@some': 'Holes or bites',
    'spotted@some': 'Spots',
    'browning@some': 'Brown or black',
    'pale-marks@some': 'Whitish or silvery marks',
    'white-powder@some': 'White powder',
    'mottled@some': 'Patchwork of light and dark green',
    'dull-limp@some': 'Limp, hanging',
    stunted: 'Small for its age',
    aphids: 'Greenfly or blackfly',
  },
  whichLeaves: 'On which leaves?',
  whichLeavesWhy:
    'Asked because old and young leaves tell different tales: most of what runs short is taken from the old ones first.',
  lying: {
    'only-old': 'Only the oldest, low on the plant',
    'most-old': 'All over, the oldest most',
    'most-new': 'The youngest, at the tip',
    both: 'All over, all alike',
  },
  question: 'Next question',
  oneAtATime: 'One at a time',
  allQuestions: 'All questions',
  why: (reason: string): string => `Asked because it ${reason}.`,
  takes: (time: string): string => `Takes ${time}.`,
  cannotSay: 'Can’t say',
  notNow: 'Not now',
  yes: 'Yes',
  no: 'No',
  noneOfThese: 'None of these',
  done: 'Done',
  setNumber: 'Set',
  /** `typed`: as it was written; empty where that is no number at all. */
  numberFault: (typed: string, least: number | string, most: number | string): string =>
    `${typed ? `${typed} cannot be. ` : ''}Type a number from ${least} to ${most}, or choose one of the answers.`,
  undoAnswer: 'Take back the last answer',
  weighing: 'Weighing your answer …',
  moved: 'Your answer moved:',
  movedByCrop: 'Knowing the crop moved:',
  movedByRecords: 'What your records say moved:',
  undoCrop: 'Take back the crop',
  movedNothing: 'Your answer moved nothing much.',
  notWorth:
    'Nothing that is left to ask is likely to change the verdict. You may stop here; the likeliest to help is this:',
  nothingLeft: 'Everything has been asked. Each answer can still be changed in the list.',
  notYet: 'The first question comes as soon as the weighing is done.',
  checkFinds: 'What did you find?',

  // The list of all questions
  listLead:
    'Every sign can be seen, looked for and absent, or not looked at. What is not looked at counts neither way.',
  notLooked: 'not looked at',
  notSaid: 'not said',
  recorded: '(from your records)',
  exactly: (unit: string): string => `Or exactly, in ${unit}`,
  groups: {
    mark: 'On the leaves',
    cannotSayExactly: 'On the leaves, said roughly',
    ...GROUP_NAMES,
    setting: 'Where and how it grows',
  },
  answered: (count: number): string => (count === 0 ? '' : `${count} said`),

  // The strip on a phone
  strip: 'The verdict so far',
  stripQuestion: 'Next question',

  // Keeping
  keep: 'Keep this look',
  keepLead: 'In your own words, so that you find it again.',
  bed: 'Bed',
  knownBeds: 'Beds you have named before',
  plant: 'Plant',
  note: 'Note',
  keepCase: 'Keep it as a case',
  keepLater: 'Add it to the case',
  keeping: 'Storing …',
  needsNames: 'Name the bed and the plant first.',
  keptNot: 'It could not be stored. Everything is still here; make room and try again.',
  draftKept: 'Until then it is kept as it is, also when you close the page.',
  throwAway: 'Throw this look away',
  thrownAway: 'The look is thrown away.',
} as const;
