import { weighAnswers, weighChances } from '../../src/command/evaluate/weigh-answers.ts';
import type { RankedCause, Ranking } from '../../src/ranker/types.ts';
import { checkAnswers } from '../../src/signs/check-answers.ts';
import type { Answers } from '../../src/signs/types.ts';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';

export interface Told {
  readonly crop?: CropId;
  /** ISO date. */
  readonly date?: string;
  readonly setting?: Answers['setting'];
  /** Signs seen, separated by blanks; `mark@all` means on old and new leaves. */
  readonly seen?: string;
  /** Signs looked for and not found. */
  readonly absent?: string;
}

/** A ranking, with the questions that checks ask of it. */
export interface Seen extends Ranking {
  readonly first: CauseId;
  /** Chance of a cause. */
  p(id: CauseId): number;
  /** Its odds: what says "times more likely" also where a chance nears one. */
  odds(id: CauseId): number;
  of(id: CauseId): RankedCause;
}

const ids = (text = ''): string[] =>
  text
    .split(' ')
    .filter((id) => id !== '')
    .flatMap((id) => (id.endsWith('@all') ? [id.replace('@all', '@old'), id.replace('@all', '@new')] : [id]));

/** Weigh what a grower tells. Throws on a word that is not in the vocabulary, so that no check is silently empty. */
export function lookAt({ crop, date, setting = {}, seen, absent }: Told): Seen {
  const signs = Object.fromEntries([
    ...ids(seen).map((id) => [id, 'seen']),
    ...ids(absent).map((id) => [id, 'absent']),
  ]);
  const told = { ...(crop ? { crop } : {}), ...(date ? { date } : {}), setting, signs };
  const { answers, faults } = checkAnswers(told);
  if (faults.length > 0) throw new RangeError(JSON.stringify(faults));
  const key = JSON.stringify(answers);
  const known = weighed.get(key) ?? weighLazily(answers);
  weighed.set(key, known);
  return known;
}

/** What was weighed before: the same answers always weigh the same. */
const weighed = new Map<string, Seen>();

/** Chances alone are weighed first; the whole ranking, five times the work, once something else of it is read. */
function weighLazily(answers: Answers): Seen {
  let chances: ReadonlyMap<CauseId, number> | undefined;
  let ranking: Ranking | undefined;
  const whole = (): Ranking => {
    ranking ??= weighAnswers(answers);
    return ranking;
  };
  const all = (): ReadonlyMap<CauseId, number> => {
    chances ??= weighChances(answers);
    return chances;
  };
  const p = (id: CauseId): number => all().get(id)!;
  const own: Omit<Seen, keyof Ranking> = {
    get first() {
      return [...all()].reduce((most, cause) => (cause[1] > most[1] ? cause : most))[0];
    },
    p,
    odds: (id) => p(id) / (1 - p(id)),
    of: (id) => whole().causes.find((cause) => cause.id === id)!,
  };
  return new Proxy(own as Seen, {
    get: (told, name) => (name in told ? told[name as keyof Seen] : whole()[name as keyof Ranking]),
  });
}

/** Add to what was told. */
export function tell(before: Told, more: Told): Told {
  return {
    ...before,
    ...more,
    setting: { ...before.setting, ...more.setting },
    seen: `${before.seen ?? ''} ${more.seen ?? ''}`,
    absent: `${before.absent ?? ''} ${more.absent ?? ''}`,
  };
}
