export const NETWORK_WORDS = {
  title: 'A small network that looks too',
  turnOn: 'Let a small network look at leaves too',
  what: 'It looks at the outlined leaf of each photo and reports marks, never causes. What it reports is weighed as one more voice beside yours and the camera’s, stands under its own name, and can be set aside.',
  reports: (marks: readonly string[]): string => `It reports: ${marks.join('; ')}.`,
  reportsNothing:
    'It knows no mark well enough yet to report it, so for now it changes no answer. What it saw is kept with your looks, to learn from.',
  learnt: (marks: readonly string[]): string =>
    `From the leaves of this garden it has learnt to report: ${marks.join('; ')}.`,
  size: (size: string): string =>
    `${size} are fetched once (less where the server packs them), then kept on this device: it works without a signal. Photos stay here.`,
  fetching: 'Fetching the network',
  fetched: (done: string, total: string): string => `${done} of ${total} fetched`,
  opening: 'Being opened…',
  kept: (size: string): string =>
    `On this device (${size}), works without a signal. It looks at every leaf that is photographed from now on.`,
  off: 'Switched off, it is taken off this device. What it said of looks that you kept stays with them.',
  tryAgain: 'Try again',

  // In a look
  says: 'What the network reports',
  saysOfLeaf: 'What the network sees in this leaf',
  sees: 'The network sees',
  seesNot: 'The network does not see',
  weight: { strong: 'very likely', some: 'likely', faint: 'perhaps' },
  /** Behind its weight. */
  learntHere: ', as it learnt in this garden',
  unlike: 'The network does not know leaves like this one, so it says nothing.',
} as const;
