/** Names of the pages of the ground: all that the first screen needs of its words. */
export const GROUND_PLACES = {
  beds: 'The ground',
  batches: 'Compost and manure',
  weather: 'Weather',
  normal: 'Healthy leaves',
} as const;
