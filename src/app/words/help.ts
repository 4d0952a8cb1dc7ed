import type { Zone } from '../../days/growing-year.ts';

const HELP_ZONES = {
  north: 'north of the equator',
  south: 'south of the equator',
  tropics: 'where no winter comes',
} as const satisfies Record<Zone, string>;

export const HELP_WORDS = {
  contents: 'On this page',
  explains: 'Explained here',
  sets: 'Set and kept here',
  what: {
    title: 'What this is',
    lines: [
      'Bedside weighs what may be wrong with a vegetable plant: from photos of its leaves, from what you see and say, and from where and how it grows.',
      'It shows every reason and its weight, how unsure it is, and what would tell more. Then it says one of four things: leave it, look again, check first, act now.',
      'When nothing fits, “something this tool does not know” rises. That is an answer too.',
    ],
  },
  not: {
    title: 'What this can’t do',
    lines: [
      'It cannot be sure. Several causes look alike on a leaf, and some show only at the root or in a laboratory.',
      'It knows vegetables and a few soft fruits; no trees, no lawns, no house plants.',
      'It names no pesticide and no dose, and it does not say whether a plant can be eaten.',
      'Where a disease or pest may have to be reported, or a load of compost may carry weedkiller, follow your local rules and ask a licensed adviser or plant clinic.',
    ],
  },
  privacy: {
    title: 'Privacy',
    lines: [
      'Photos, answers and cases stay on this device. Nothing of them is sent anywhere. After loading, the browser asks only the address Bedside came from: now and then whether there is a newer version, which it then fetches, and once for the small network, if you switch it on. The page forbids itself any other.',
      'There is no account and no counting of visits.',
      'A photo keeps what the camera wrote into it, a place too if your camera adds one, as long as it lies on this device.',
    ],
  },
  how: {
    title: 'How to read it',
    lines: [
      '“About 6 in 10 gardens with these signs (4 to 8)” means: of ten gardens in which a plant shows just this, about six have this cause at work. The bracket is where that number lies eight times in ten, given how little is published about how often each sign occurs.',
      'A block on a beam is one reason. Its length is its weight: one hand on a desk, half a hand on a phone, makes the cause ten times as likely.',
      'Causes can act together; a bracket ties those that probably do, so the numbers may add up to more than ten.',
      'When you say how a case ended, this garden learns from it: what is met here often becomes likelier in later looks. The Book shows what was learnt, and forgets it if you wish.',
      'Say which bed the plant is in, and your records answer what they know of it: what went on, what was done, the weather. Each answer says where it comes from, and you can set it aside.',
      'A pot test answers whether a load of compost or manure harms: it is planned from the page of the load or from the Book, and scored on the days that the Walk names.',
      'What you did not look at counts neither for nor against. What you looked for and did not find does count.',
    ],
  },
  photos: {
    title: 'Photos that help',
    lines: [
      'One leaf flat and whole, filling about half of the frame, the sun behind you.',
      'Lay a white plant label or a sheet of paper beside it: then colours can be judged.',
      'An old leaf and a young leaf of the same plant tell more than four of one kind.',
    ],
  },
  settings: {
    title: 'Settings',
    theme: 'Paper',
    themes: { device: 'as the device', light: 'light', dusk: 'dusk' },
    zone: 'Your garden lies',
    zones: HELP_ZONES,
    zoneWhy:
      'The seasons follow it, not the names of the months. South of the equator a year of a bed runs from July to June.',
    zoneInvented: (zone: Zone): string => `The invented garden lies ${HELP_ZONES[zone]}`,
    zoneInventedWhy:
      'It is always put on the half of the earth where it is the growing season now. Where your own garden lies is set in your own garden; nothing in here changes it.',
    temperature: 'Temperatures',
    temperatures: { celsius: '°C', fahrenheit: '°F' },
    length: 'Lengths and rain',
    lengths: { metric: 'cm and mm', inch: 'inches' },
    days: 'Days',
    dayOrders: { 'day-first': '18 June', 'month-first': 'June 18' },
    unitsWhy: 'What is kept does not change with it, only how it is shown and typed.',
  },
  storage: {
    title: 'What is stored here',
    cases: (count: number): string => (count === 1 ? '1 case' : `${count} cases`),
    used: (used: string, room: string): string => `${used} used; the browser offers up to ${room} in all.`,
    unknown: 'The browser does not say how much room there is.',
    persisted: 'Kept until you delete it: the browser has promised not to clear it by itself.',
    notPersisted:
      'The browser may clear it when the device runs short of room. Adding Bedside to the home screen usually prevents that.',
    persistedUnknown: 'The browser does not say whether it may clear it by itself.',
    askPersist: 'Ask the browser to keep it',
  },
  offline: {
    title: 'Without a signal',
    ready: 'Every part is stored on this device and works without a signal.',
    waiting: 'The parts are being stored; open the page once with a signal and wait a moment.',
    none: 'This browser does not store the app (a private window, or an address without https). It works as long as the page is open.',
    install: 'Put it on the home screen',
    installHow:
      'In the browser’s menu choose “Add to home screen” or “Install”. It then opens like any other app, with or without a signal.',
    installNow: 'Install now',
  },
  version: 'Version',
} as const;
