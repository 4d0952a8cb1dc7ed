import { type CauseId, FREQUENCY_WORDS, type SignId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';
import type { Rule } from './rule.ts';

/** What published sources claim differently: each form is possible, and marked as disputed. */
const CLAIMS: readonly (readonly [cause: CauseId, forms: readonly SignId[], sources: string])[] = [
  ['manganese-short', ['yellow-between-veins@new', 'yellow-between-veins@old'], 'PNW-KEY, RLF-MN: A5'],
  ['manganese-short', ['brown-spots@new', 'brown-spots@old'], 'GMC-KEY, RLF-MN: A5'],
  ['potassium-short', ['yellow-edges@old', 'yellow-between-veins@old'], 'DOC-NUT, UMD-NUT: A6'],
  ['potassium-short', ['cupped-up@old', 'cupped-down@old'], 'UMD-NUT, PNW-KEY: A6'],
  ['sulphur-short', ['yellow-even@new', 'yellow-even@old'], 'CIMMYT-MOB: A3'],
  ['molybdenum-short', ['mottled@old', 'yellow-even@old', 'yellow-even@new'], 'PNW-KEY, UAF-TAB: A7'],
];

/** A form that a source claims is there at least this often ("rarely" would settle it by fiat). */
const LEAST = FREQUENCY_WORDS.sometimes;

export const disagreementKept: Rule = {
  name: 'disagreement kept',
  says: 'where published sources disagree every claimed form keeps a chance, and the entries that carry it are marked disputed',
  check: (causes) =>
    CLAIMS.flatMap(([id, forms, sources]) => {
      const { signs } = causes.find((cause) => cause.id === id)!;
      const found = forms.map((form) =>
        signs
          .flatMap((entry) => nodesOf(entry).map((node) => ({ ...node, entry })))
          .find(({ sign }) => sign === form),
      );
      const lost = forms.filter((_, at) => !found[at] || FREQUENCY_WORDS[found[at].word] < LEAST);
      return [
        ...lost.map((form) => `${id}: ${form} has lost its chance (${sources})`),
        ...(found.some((one) => one?.entry.confidence === 'disputed')
          ? []
          : [`${id}: ${forms.join(', ')} not marked as disputed (${sources})`]),
      ];
    }),
};
