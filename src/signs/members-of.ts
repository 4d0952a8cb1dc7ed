import {
  type AskableId,
  BROADER_MARKS,
  CREATURE_SIGNS,
  MARKS,
  PLANT_SIGNS,
  type SignId,
  SPREAD_SIGNS,
  TEST_SIGNS,
} from './vocabulary.ts';

const LEAF_SIGNS = MARKS.flatMap(({ id }) => [`${id}@old`, `${id}@new`] as const);

/** Every sign that is a node of the network, in the order of the vocabulary. */
export const ALL_SIGNS: readonly SignId[] = [
  ...LEAF_SIGNS,
  ...[...PLANT_SIGNS, ...CREATURE_SIGNS, ...SPREAD_SIGNS, ...TEST_SIGNS].map(({ id }) => id),
];

const MEMBERS = new Map<string, readonly SignId[]>(ALL_SIGNS.map((sign) => [sign, [sign]]));
for (const { id } of MARKS) MEMBERS.set(`${id}@some`, [`${id}@old`, `${id}@new`]);
for (const [broader, marks] of Object.entries(BROADER_MARKS)) {
  for (const position of ['old', 'new'] as const) {
    MEMBERS.set(
      `${broader}@${position}`,
      marks.map((mark): SignId => `${mark}@${position}`),
    );
  }
  MEMBERS.set(
    `${broader}@some`,
    marks.flatMap((mark): SignId[] => [`${mark}@old`, `${mark}@new`]),
  );
}

/** Is this text the id of something that can be asked about? */
export function isAskable(id: string): id is AskableId {
  return MEMBERS.has(id);
}

/**
 * The signs whose OR an answer speaks of: one for a sign, several for `mark@some` or a broader mark.
 * @throws RangeError for an id that is not in the vocabulary
 */
export function membersOf(id: AskableId): readonly SignId[] {
  const members = MEMBERS.get(id);
  if (!members) throw new RangeError(`expected a sign of the vocabulary, got "${id}"`);
  return members;
}
