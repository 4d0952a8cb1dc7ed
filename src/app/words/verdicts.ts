import { CAUTIONS, type CautionId } from '../../causes/cautions.ts';
import { COURSES, type CourseId } from '../../causes/courses.ts';
import type { LookSummary } from '../../garden/records.ts';
import type { NextCheck, RankedCause, Verdict } from '../../ranker/types.ts';
import type { CauseId, VerdictId } from '../../signs/vocabulary.ts';
import { CAUSE_NAMES, capitalise, causeName, joinWords } from './causes.ts';
import { describeChance, GARDENS } from './chances.ts';
import { describeQuestion, describeTarget, describeWhatItTells } from './checks.ts';
import { describeDay, describeDistance } from './dates.ts';
import { describeMinutes } from './minutes.ts';

/** The four words and no other. */
export const VERDICT_WORDS: Record<VerdictId, string> = {
  leave: 'Leave it',
  watch: 'Look again',
  check: 'Check first',
  act: 'Act now',
};

export const verdictWord = (id: string): string =>
  (VERDICT_WORDS as Partial<Record<string, string>>)[id] ?? 'Not judged';

/**
 * A look in one line of a list: "Act now. Likeliest: rust or leaf spot". The verdict may be for the sake of another cause
 * than the likeliest, so the line does not tie the two together.
 */
export function sayLook({ verdict, leading }: Pick<LookSummary, 'verdict' | 'leading'>): string {
  const likeliest = joinWords(leading.slice(0, 2).map(causeName), 'or');
  return likeliest ? `${verdictWord(verdict)}. Likeliest: ${likeliest}` : verdictWord(verdict);
}

const courseSays = (id: CourseId): string => COURSES.find((course) => course.id === id)?.says ?? id;

/** A course that only holds back until a check is made: what to do in the meantime, not what may come after. */
const holdsBack = (id: CourseId): boolean =>
  COURSES.some((course) => course.id === id && course.until !== undefined);

/** What of a ranking a verdict is worded from; a kept look has these too. */
export interface Judged {
  readonly verdict: Verdict;
  readonly causes: readonly RankedCause[];
  readonly nextChecks: readonly NextCheck[];
  readonly nothingSaid: boolean;
}

/** One thing to find out that could change the verdict. */
export interface Change {
  /** Sign, setting or check. */
  readonly id: string;
  /** "Turn three leaves over and look along the veins" */
  readonly what: string;
  /** "1 minute; tells aphids from spider mite" */
  readonly detail: string;
}

export interface VerdictInWords {
  readonly id: VerdictId;
  /** One sentence or two, read first. */
  readonly headline: string;
  /** What should be seen by the day to look again; begins with the day where the headline does not name it. */
  readonly byThen: readonly string[];
  /** The check that the headline asks for. */
  readonly checkToMake?: string;
  readonly why: readonly string[];
  /** What would help when nothing that the tool knows fits best. */
  readonly elsewhere: readonly string[];
  /** What holds until the check has been made. */
  readonly meanwhile: readonly string[];
  readonly courses: readonly string[];
  readonly change: readonly Change[];
  readonly cautions: readonly string[];
}

/** The verdict as it is read: a sentence, why, what would change it, cautions. `today`: `YYYY-MM-DD`. */
export function describeVerdict(judged: Judged, today: string): VerdictInWords {
  const { verdict } = judged;
  const isMeanwhile = (course: CourseId): boolean => verdict.id === 'check' && holdsBack(course);
  return {
    id: verdict.id,
    headline: sayHeadline(judged, today),
    byThen: [...sayAgain(verdict, today), ...sayRecovery(judged)],
    ...(verdict.id === 'check' && verdict.check ? { checkToMake: verdict.check.id } : {}),
    why: sayWhy(judged),
    elsewhere: judged.causes[0]?.id === 'unlisted' ? ELSEWHERE : [],
    meanwhile: verdict.courses.filter(isMeanwhile).map(courseSays),
    courses: verdict.courses
      .slice(verdict.id === 'act' ? 1 : 0)
      .filter((course) => !isMeanwhile(course))
      .map(courseSays),
    change: judged.nextChecks.slice(0, 3).map(sayChange),
    cautions: verdict.cautions.map((id) => sayCaution(id, judged.causes)),
  };
}

/** Where a stranger can be named, and what to take along; what plant clinics usually ask for (common practice, no source). */
const ELSEWHERE: readonly string[] = [
  'Nothing that this tool knows fits best. Take a sample to an advisory service or a plant clinic: they see what no list holds, and can look under a microscope.',
  'Take one whole plant with its roots and the soil on them, and leaves at every stage, from sound to worst. Keep it cool and wrapped in paper, not wet and not in plastic, and go on the day you dig it up.',
  'Tell them the crop and variety, when it began and how it spread, the weather before, and all that went on the bed or the leaves. A photo from the first day helps; this look keeps yours.',
  'Until then leave the other plants as they are, and clean knife and boots after touching this one.',
];

function sayHeadline({ verdict, causes }: Judged, today: string): string {
  const day = describeDay(verdict.lookAgain, today);
  const again = `Look again on ${day} (${describeDistance(verdict.lookAgain, today)}).`;
  if (verdict.id === 'leave') return `Leave it. ${again}`;
  if (verdict.id === 'watch') return `${again} Do nothing until then.`;
  if (verdict.id === 'check' && verdict.check) {
    const { minutes, waitDays, target } = verdict.check;
    const time = describeMinutes(minutes, waitDays);
    const asks = describeQuestion(target).asks.replace(/[.?]$/, '');
    const what =
      target.kind === 'check' ? lowerFirst(asks) : lowerFirst(describeTarget(target).replace(/[.?]$/, ''));
    return `Check first: ${what} (${time}).`;
  }
  const course = verdict.courses[0];
  if (verdict.id === 'act' && course) return sayAct(course, verdict, causes);
  return `${VERDICT_WORDS[verdict.id]}. ${again}`;
}

const HOW_MANY = ['none', 'one', 'two', 'three'];
const MOST_NAMED = 3;

/**
 * An act where several likely causes are at work at once: which it is for, and which are only looked at again, at most three in
 * all. "Act now on one of two likely causes (frost): cover with fleece. Look again at the rest (slugs and snails)."
 */
function sayAct(course: CourseId, { because }: Verdict, causes: readonly RankedCause[]): string {
  const does = lowerFirst(courseSays(course));
  const likely = because.causes.filter((id) => isLikely(causes, id)).slice(0, MOST_NAMED);
  const helped = likely.filter((id) => because.helped?.includes(id));
  const rest = likely.filter((id) => !helped.includes(id));
  if (likely.length < 2 || helped.length === 0) return `Act now: ${does}`;
  const named = (ids: readonly CauseId[]): string => `(${ids.map(causeName).join('; ')})`;
  const all = HOW_MANY[likely.length];
  if (rest.length === 0) return `Act now on ${all} likely causes ${named(helped)}: ${does}`;
  return `Act now on ${HOW_MANY[helped.length]} of ${all} likely causes ${named(helped)}: ${does} Look again at the rest ${named(rest)}.`;
}

/** Leaving and watching name their day in the headline; the others name it here, so that every verdict has one. */
function sayAgain({ id, lookAgain }: Verdict, today: string): string[] {
  if (id === 'leave' || id === 'watch') return [];
  return [`Look again on ${describeDay(lookAgain, today)} (${describeDistance(lookAgain, today)}).`];
}

/** From this chance on a cause is spoken of without "if": likelier than all the others together. */
const WITHOUT_IF = 0.5;

const isLikely = (causes: readonly RankedCause[], id: string): boolean =>
  causes.some((cause) => cause.id === id && cause.probability >= WITHOUT_IF);

/** What should be seen by the day to look again, a sentence for each cause that the verdict rests on. */
export function sayRecovery({ verdict, causes }: Pick<Judged, 'verdict' | 'causes'>): string[] {
  const several = verdict.recovery.length > 1;
  return verdict.recovery.map(({ cause, looksLike }) =>
    several || !isLikely(causes, cause)
      ? `If it is ${CAUSE_NAMES[cause]}: ${lowerFirst(looksLike)}`
      : looksLike,
  );
}

/** What holds for a poisoned load is said under an "if" while nothing much speaks for one: it would frighten without need. */
function sayCaution(id: CautionId, causes: readonly RankedCause[]): string {
  if (id === 'drift' && !isLikely(causes, 'spray-drift'))
    return `If weedkiller blew over: ${lowerFirst(CAUTIONS[id])}`;
  if (id !== 'residue' || isLikely(causes, 'residue-in-compost')) return CAUTIONS[id];
  return `If compost, manure or hay from elsewhere went on the bed: ${lowerFirst(CAUTIONS[id])}`;
}

/** Small enough a gain in loss to be called none, in percent of the bed's crop. */
const NO_DIFFERENCE = 0.25;

function sayWhy({ verdict, causes, nothingSaid }: Judged): string[] {
  const carrying = verdict.because.causes
    .map((id) => causes.find((cause) => cause.id === id))
    .filter((cause) => cause !== undefined)
    .slice(0, 3);
  const gardens = nothingSaid ? 'gardens where a plant looks wrong' : GARDENS;
  const weighs = carrying.map(
    (cause, index) =>
      `${capitalise(causeName(cause.id))}: ${describeChance(cause, index === 0 ? gardens : 'gardens')}.`,
  );
  return [...weighs, sayLikelier(verdict, causes, carrying[0]), sayLoss(verdict)].filter(Boolean);
}

/** The likeliest cause, where something is done or checked for the sake of another: the weighing shows it first. */
function sayLikelier(
  { id, because }: Verdict,
  causes: readonly RankedCause[],
  carrying?: RankedCause,
): string {
  const [first] = causes;
  if ((id !== 'act' && id !== 'check') || !first || !carrying || because.causes.includes(first.id)) return '';
  return first.probability > carrying.probability
    ? `Likelier, but not what calls for this: ${causeName(first.id)}, ${describeChance(first, 'gardens')}.`
    : '';
}

/**
 * How the ways out compare. The sums themselves are averages over every cause, likely or not, and would be read as the
 * loss to expect of this plant; so only their order is said.
 */
function sayLoss({ because, id }: Verdict): string {
  const ways: [VerdictId, string][] = [
    ['leave', 'leaving it'],
    ['watch', 'looking again later'],
    ['act', 'acting now'],
  ];
  const chosen = because.expectedLoss[id];
  if (chosen === undefined) return '';
  const dearer = ways.flatMap(([way, words]) => {
    const loss = because.expectedLoss[way];
    const isDearer = way !== id && loss !== undefined && loss - chosen >= NO_DIFFERENCE;
    return isDearer ? [words] : [];
  });
  return dearer.length === 0
    ? ''
    : `Weighed over all causes, ${joinWords(dearer)} would cost more on average.`;
}

function sayChange(check: NextCheck): Change {
  const apart = describeWhatItTells(check);
  const time = capitalise(describeMinutes(check.minutes, check.waitDays));
  return {
    id: check.id,
    what: describeTarget(check.target).replace(/\.$/, ''),
    detail: apart ? `${time}; ${apart}` : time,
  };
}

/** Lower-case first letter, unless the word is a name or an abbreviation. */
const lowerFirst = (words: string): string =>
  /^[A-Z][a-z’']*(\s|,|:|$)/.test(words)
    ? words.charAt(0).toLocaleLowerCase('en-GB') + words.slice(1)
    : words;
