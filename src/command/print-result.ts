import { CAUTIONS } from '../causes/cautions.ts';
import { CHECKS } from '../causes/checks.ts';
import { COURSES } from '../causes/courses.ts';
import { MEASURES } from '../leaf/measures.ts';
import type { NextCheck, Reason, Verdict } from '../ranker/types.ts';
import { askSetting } from '../signs/ask-setting.ts';
import { CAUSES, type CropId, FAMILIES, VERDICTS } from '../signs/vocabulary.ts';
import type { TriageResult } from '../triage.ts';
import { describeTrouble } from './describe-trouble.ts';
import type { FileReading } from './read-photo.ts';

const saysOf = (list: readonly { readonly id: string; readonly says: string }[], id: string): string =>
  list.find((entry) => entry.id === id)?.says ?? id;

/** "about 6 in 10 (4 to 8)": a chance in words that carry its doubt, never a bare percent. */
export function frequencyInWords(probability: number, low: number, high: number): string {
  const base = high < 0.1 ? 100 : 10;
  const of = (p: number): number => Math.round(p * base);
  if (of(high) < 1) return `fewer than 1 in ${base}`;
  const middle =
    of(probability) < 1
      ? 'fewer than 1'
      : of(probability) >= base
        ? 'nearly all'
        : `about ${of(probability)}`;
  const range = of(low) === of(high) ? '' : ` (${of(low)} to ${of(high)})`;
  return `${middle === 'nearly all' ? `nearly ${base} in ${base}` : `${middle} in ${base}`}${range}`;
}

function reasonsLine(title: string, reasons: readonly Reason[]): string[] {
  const heavy = reasons.filter(({ decibans }) => Math.abs(decibans) >= 0.5).slice(0, 5);
  if (heavy.length === 0) return [];
  return [
    `      ${title} ${heavy.map(({ sign, decibans }) => `${sign} ${decibans.toFixed(1)} dB`).join(', ')}`,
  ];
}

/** What a check or question asks for, as an instruction. */
export function describeCheck({ target }: NextCheck, crop?: CropId): string {
  switch (target.kind) {
    case 'check':
      return saysOf(CHECKS, target.check);
    case 'setting':
      return askSetting(target.setting, crop);
    case 'sign':
      return `Look for: ${target.sign}`;
  }
}

function photoLines(photos: readonly FileReading[]): string[] {
  return photos.flatMap(({ file, role, trouble, measures }) => [
    `  ${role}${file === undefined ? '' : ` (${file})`}`,
    ...trouble.map((code) => `    ! ${describeTrouble(code)}`),
    ...MEASURES.flatMap(({ id, says, unit }) => {
      const measured = measures[id];
      if (!measured) return [];
      const { value, se } = measured;
      const shown = unit.startsWith('0–1 of')
        ? `${(100 * value).toFixed(0)} %, give or take ${Math.max(1, 100 * se).toFixed(0)}`
        : `${value.toFixed(2)}, give or take ${se.toFixed(2)}`;
      return [`    ${id}: ${shown} (${says})`];
    }),
  ]);
}

/** What was measured on photos, for people. */
export function printMeasures(photos: readonly FileReading[]): string {
  return photoLines(photos).join('\n');
}

/** What to do; a course that only holds back until the check is made is for the meantime. */
function courseLines(id: Verdict['id'], courses: Verdict['courses']): string[] {
  const isMeanwhile = (id: string): boolean => COURSES.some((course) => course.id === id && course.until);
  const meanwhile = id === 'check' ? courses.filter(isMeanwhile) : [];
  const others = courses.filter((course) => !meanwhile.includes(course));
  const says = (course: string): string => `    ${saysOf(COURSES, course)}`;
  return [
    ...(meanwhile.length > 0 ? ['  Meanwhile:', ...meanwhile.map(says)] : []),
    ...(others.length > 0 ? [id === 'act' ? '  Do:' : '  If it comes to acting:', ...others.map(says)] : []),
  ];
}

function verdictLines(verdict: Verdict, crop?: CropId): string[] {
  const { id, lookAgain, check, courses, recovery, cautions } = verdict;
  const weekday = new Date(`${lookAgain}T00:00:00Z`).toLocaleDateString('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  });
  return [
    `Verdict: ${saysOf(VERDICTS, id)}. Look again on ${weekday}.`,
    ...(check ? [`  First: ${describeCheck(check, crop)} (${check.minutes} min)`] : []),
    ...courseLines(id, courses),
    ...recovery.map(({ looksLike }) => `  By then: ${looksLike}`),
    ...cautions.map((caution) => `  Caution: ${CAUTIONS[caution]}`),
  ];
}

/** The whole result, for people. */
export function printTriage(result: TriageResult, photos: readonly FileReading[], crop?: CropId): string {
  const shown = result.causes
    .filter(({ probability, high }, i) => i < 3 || (probability >= 0.02 && high >= 0.05))
    .slice(0, 8);
  return [
    ...(photos.length > 0 ? ['Photos', ...photoLines(photos), ''] : []),
    result.nothingSaid
      ? 'Nothing has been said yet: this is how often each cause turns up anyway.'
      : 'What it may be',
    ...shown.flatMap(({ id, family, probability, low, high, for: pro, against }) => [
      `  ${saysOf(CAUSES, id)} (${saysOf(FAMILIES, family)})`,
      `      ${frequencyInWords(probability, low, high)} gardens with these signs`,
      ...reasonsLine('for:', pro),
      ...reasonsLine('against:', against),
    ]),
    ...(result.together.length > 0 ? ['Acting together'] : []),
    ...result.together
      .slice(0, 3)
      .map(
        ({ causes, probability }) =>
          `  ${causes.map((id) => saysOf(CAUSES, id)).join(' + ')}: ${frequencyInWords(probability, probability, probability)}`,
      ),
    ...(result.assumed.length > 0
      ? [`Not said, so left open: ${result.assumed.map(({ setting }) => setting).join(', ')}`]
      : []),
    '',
    ...verdictLines(result.verdict, crop),
    ...(result.nextChecks.length > 0 ? ['Worth finding out next'] : []),
    ...result.nextChecks.slice(0, 3).map((check) => `  ${describeCheck(check, crop)} (${check.minutes} min)`),
  ].join('\n');
}
