import { sayCelsius } from './units.ts';

/** What the garden's records answer in a look, and where the plant stands. */
export const FROM_RECORDS_WORDS = {
  ask: 'Which bed is it in?',
  askWhy: 'Tap the plant, or the bed alone: your records then answer what they know.',
  beds: 'Beds and what grows in them',
  bedOnly: (bed: string): string => `${bed}, no planting chosen`,
  standsIn: (bed: string, planting: string): string => `${planting}, in ${bed}`,
  inBed: (bed: string): string => `In ${bed}`,
  count: (count: number): string =>
    count === 0
      ? 'no answers from records'
      : count === 1
        ? '1 answer from records'
        : `${count} answers from records`,
  elsewhere: 'It stands somewhere else',
  title: 'From your records',
  notAsked: 'Weighed and not asked. Set aside what does not hold.',
  notSo: 'Not so',
  notSoThis: (what: string): string => `Not so: ${what}`,
  restore: 'Let the record stand',
  restoreThis: (what: string): string => `Let the record stand: ${what}`,
  setAside: 'Set aside at your word',
  setAsideWith: 'Goes with what you set aside',
  youSay: (answer: string): string => `You say: ${answer}`,
  soil: (celsius: number, from: string): string =>
    `Soil since it was mixed in, ${from}: about ${sayCelsius(celsius)} on average, reckoned from your weather.`,
  bed: (name: string): string => `what you wrote of the bed: ${name}`,
  planting: (what: string, day: string): string => (day ? `${what}, ${day}` : what),
  plantedOn: (day: string): string => `planted out ${day}`,
  sownOn: (day: string): string => `sown ${day}`,
  event: (what: string, bed: string, day: string): string => `${what}: ${bed}, ${day}`,
  spread: (batch: string, how: string, bed: string, day: string): string =>
    [batch, how, `on ${bed}`, day].filter(Boolean).join(', '),
  suspected: (batch: string): string => `${batch} (under suspicion)`,
  weatherDay: (day: string): string => `your weather of ${day}`,
  weatherDays: (count: number, from: string, to: string): string =>
    `your weather, ${count} days from ${from} to ${to}`,
} as const;
