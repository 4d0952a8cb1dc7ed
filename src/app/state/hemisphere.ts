import { computed } from '@preact/signals';
import { growingHalf } from '../demo/growing-half.ts';
import { dayOf } from '../words/dates.ts';
import { inDemo } from './demo.ts';
import { preferences } from './preferences.ts';

/** The half of the earth on which the garden on show lies: as set, but for the invented garden, which has a place of its own. */
export const hemisphere = computed(() =>
  inDemo ? growingHalf(dayOf(new Date())) : preferences.value.hemisphere,
);
