import { computed } from '@preact/signals';
import { rankingInHand } from '../../state/parts-of-look.ts';
import { dayOf } from '../../words/dates.ts';
import { sayInShort } from '../../words/verdict-in-short.ts';

/** The verdict of the look in hand in few words; undefined until something has been seen. */
export const verdictInShort = computed(() => {
  const result = rankingInHand.value;
  return result && !result.nothingSeen ? sayInShort(result, dayOf(new Date())) : undefined;
});
