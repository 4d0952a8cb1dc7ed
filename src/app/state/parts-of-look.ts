/**
 * Parts of the look in progress, a signal each: what shows one of them is drawn anew when that one changes, and not with every
 * answer or letter.
 */
import { computed } from '@preact/signals';
import { draft } from './look-in-hand.ts';
import { ranking } from './weigh-look.ts';

export const idOfLook = computed(() => draft.value.id);
export const caseOfLook = computed(() => draft.value.caseId);
export const photosOfLook = computed(() => draft.value.photos);
export const bedOfLook = computed(() => draft.value.bed);
export const cropOfLook = computed(() => draft.value.answers.crop);
export const openingOfLook = computed(() => draft.value.opening);
export const overruledInLook = computed(() => draft.value.answers.overruled);
export const hasAnswersOfLook = computed(() => draft.value.steps.length > 1);
/** The last ranking that arrived. */
export const rankingInHand = computed(() => ranking.value.result);
