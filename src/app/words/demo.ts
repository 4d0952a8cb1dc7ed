export const DEMO_WORDS = {
  name: 'An invented garden',
  strip: 'Invented garden — nothing here is yours',
  leave: 'Leave it',
  lead: 'Look round in a garden that does not exist: beds, compost, weather and plants in trouble, always in mid-season. The leaves are drawn; they are measured and weighed as yours would be. Your own records stay as they are.',
  enter: 'Load the invented garden',
  stop: 'Stop loading',
  stopping: 'Clearing away what was made…',
  stopped: 'Stopped. Nothing of it is kept; your own records are as they were.',
  begins: 'Laying out the beds…',
  making: (done: number, of: number): string => `Plant ${done} of ${of} weighed…`,
  failed:
    'It could not be made: this browser keeps nothing for this page, or has no room left. Your own records are as they were.',
} as const;
