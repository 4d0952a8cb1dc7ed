/** What the app is made with. The sets of photographs are those of `models/README.md`. */
export const LICENCE_WORDS = {
  title: 'Made with',
  libraries: 'Free libraries that travel with the app. Touch one for its licence.',
  library: (name: string, version: string, licence: string): string => `${name} ${version}, ${licence}`,
  photographs:
    'Photographs under open licences from which the camera learnt what a leaf is and what marks look like:',
  sets: [
    'Scans of chewed soybean leaves: MIT, © 2020 Kayran Santos',
    'Papaya leaves with a chlorophyll meter’s readings, “EPCC dataset”: MIT, © 2019 esgario',
    'Leaves of chilli in India: CC BY 4.0, Mendeley Data tf9dtfz9m6; cropped and measured',
    'Leaves of black gram in India: CC BY 4.0, Mendeley Data zfcv9fmrgv; cropped and measured',
    'Leaves of beans in Uganda: CC BY 4.0, upstream MIT, © 2020 AIR Lab Makerere University; cropped and measured',
  ],
  noneShipped: 'None of these photographs is in the app, only what was learnt from them.',
} as const;
