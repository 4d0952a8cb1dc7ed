import type { CauseSign } from '../../../src/causes/schema.ts';
import type { FrequencyWord, SignId } from '../../../src/signs/vocabulary.ts';

/** The nodes of the network that an entry speaks of, with its frequency word. */
export function nodesOf(entry: CauseSign): { readonly sign: SignId; readonly word: FrequencyWord }[] {
  if ('sign' in entry) return [{ sign: entry.sign, word: entry.frequency }];
  return (['old', 'new'] as const).flatMap((position) => {
    const word = entry[position];
    return word === undefined ? [] : [{ sign: `${entry.mark}@${position}` as const, word }];
  });
}
