export const SHELL_WORDS = {
  name: 'Bedside',
  places: 'Places',
  skipToPage: 'Skip to the page',
  skipToPlaces: 'Skip to the places',
  walk: 'Walk',
  look: 'Look',
  ground: 'Ground',
  book: 'Book',
  help: 'Help and settings',
  worksOffline: 'works without signal now',
  fetching: 'still fetching; stay where there is signal',
  brokenOff: 'not all was fetched before the signal went',
  updateWaits: 'A newer version is here.',
  updateHeld: 'Store what you typed here first, or give it up:',
  useUpdate: 'Change to it',
  undo: 'Undo',
  close: 'Close',
  restarted: {
    photo: 'The part that reads photos stopped and was started again. Nothing you entered is lost.',
    ranking: 'The part that weighs stopped and was started again. Nothing you entered is lost.',
    older:
      'A part of this page is gone: a newer version of Bedside was taken in another tab. Change to it at the top of the page; what is stored stays.',
  },
  trouble: {
    full: 'Not stored: no room is left for this page. What you entered stays while the page is open. Make room, then try again.',
    refused:
      'Not stored: this browser keeps nothing for this page (a private window, perhaps). What you entered stays while the page is open.',
    newer:
      'Not stored: a newer version of Bedside wrote this case. Close the other tabs and open Bedside again to get that version.',
    conflict: 'Not stored: this was changed in another tab of this browser. Nothing was written over.',
  },
  wasCleared:
    'The browser has cleared what was kept here; browsers do that when a device runs short of room. A backup file brings it back: see help. On the home screen Bedside is cleared far more rarely.',
  keptApart:
    'This look was changed or cleared outside this page. What you entered here is kept as a look of its own.',
  /** Said once, then in the settings, where it can be tried again. */
  network: {
    'network-missing':
      'The small network’s file is not where Bedside was fetched from. Bedside works without it; help and settings lets you try again.',
    'network-altered':
      'The small network’s file was cut off or changed, so it is not used. Bedside works without it; help and settings lets you try again.',
    'network-cannot-run': 'This browser could not run the small network. Bedside works without it.',
    'network-unreachable':
      'The small network could not be fetched: no signal, or it broke off. Bedside works without it, and tries again when it is opened next.',
    'network-not-kept':
      'There is no room for the small network, or this browser keeps nothing for this page. Bedside works without it.',
  },
  tryAgain: 'Try again',
  partMissing: 'A part of Bedside could not be fetched. Nothing you entered is lost.',
  partOlder:
    'A part of this page is gone: a newer version of Bedside was taken in another tab. A look is stored as you go; store any other form first, then change to it.',
} as const;
