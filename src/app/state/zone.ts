import { computed } from '@preact/signals';
import { growingHalf } from '../demo/growing-half.ts';
import { dayOf } from '../words/dates.ts';
import { inDemo } from './demo.ts';
import { preferences } from './preferences.ts';

/** Where the garden on show lies: as set, but for the invented garden, which has a place of its own. */
export const zone = computed(() => (inDemo ? growingHalf(dayOf(new Date())) : preferences.value.zone));
