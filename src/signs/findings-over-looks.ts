import { findingOf, saysNothing } from './finding-from-ratio.ts';
import { findingsFromAnswers } from './findings-from-answers.ts';
import { findingsFromReadings } from './findings-from-readings.ts';
import { findingsFromReports } from './findings-from-reports.ts';
import type { SeenAtLook } from './seen-at-look.ts';
import type { SettingId } from './settings.ts';
import type { Answers, Finding } from './types.ts';
import { CREATURE_SIGNS, SPREAD_SIGNS } from './vocabulary.ts';
import { changeRatio } from './weigh-change.ts';

/** Signs that come and go: what was found last is what holds. All others a trouble has shown once it has shown them. */
const COME_AND_GO: ReadonlySet<string> = new Set([
  ...[...CREATURE_SIGNS, ...SPREAD_SIGNS].map(({ id }) => id),
  'new-growth-clean',
]);

/** The findings of one look, by eye, camera and network; what the person overrules is left out. */
export function findingsOfLook({ photos, answers, network = [] }: SeenAtLook): Finding[] {
  const overruled = new Set<string>(answers.overruled);
  return [
    ...findingsFromAnswers(answers),
    ...[...findingsFromReadings(photos), ...findingsFromReports(network)].filter(
      ({ sign }) => !overruled.has(sign),
    ),
  ];
}

const ratioOf = ({ ifPresent, ifAbsent }: Finding): number => ifPresent / ifAbsent;

/**
 * What all looks at one plant have shown together. A mark counts as the look reported it on which it showed most: a leaf
 * that has greened up does not unsay that it was yellow. That it has greened up is a finding of its own: how the plant
 * changed between looks is weighed as a report on `getting-better`, unless the grower answers that themselves.
 * Every reporter counts once a sign; what an earlier look showed bears its day. Pure.
 * @param earlier earlier looks in any order; with none, the findings of `now` alone
 */
export function findingsOverLooks(now: SeenAtLook, earlier: readonly SeenAtLook[]): Finding[] {
  if (earlier.length === 0) return findingsOfLook(now);
  const looks = [...earlier].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const overruled = new Set<string>(now.answers.overruled);
  const kept = new Map<string, Finding>();
  const before = looks.flatMap((look) =>
    findingsOfLook(look).map((finding): Finding => ({ ...finding, seenOn: look.date })),
  );
  for (const finding of [...before, ...findingsOfLook(now)]) {
    const key = `${finding.sign} ${finding.from}`;
    const other = kept.get(key);
    if (finding.from !== 'eye' && overruled.has(finding.sign)) continue;
    if (!other || COME_AND_GO.has(finding.sign) || ratioOf(finding) > ratioOf(other)) kept.set(key, finding);
  }
  if (now.answers.signs['getting-better'] !== undefined) return [...kept.values()];
  kept.delete('getting-better eye');
  const ratio = changeRatio(now, looks);
  if (saysNothing(ratio)) return [...kept.values()];
  return [...kept.values(), findingOf('getting-better', ratio, 'records')];
}

/**
 * Circumstances that belong to the weeks in which the trouble began. A later look's weather does not say what brought it on,
 * so the first look that answered holds; of everything else the last answer does.
 */
const OF_THE_BEGINNING: ReadonlySet<string> = new Set<SettingId>([
  'days-since-planting',
  'recent-temperature',
  'cold-days',
  'recent-rain',
  'light',
  'wind',
  'bed-disturbed',
  'soil-celsius',
]);

/**
 * The answers of this look, with the circumstances that only earlier looks were told. Signs stay those of this look. What an
 * earlier look had from records stays marked so, and goes where the grower says by now that it does not hold. Pure.
 */
export function answersOverLooks(now: SeenAtLook, earlier: readonly SeenAtLook[]): Answers {
  if (earlier.length === 0) return now.answers;
  const newestFirst = [now, ...[...earlier].sort((a, b) => (a.date < b.date ? 1 : -1))];
  const denied = now.answers.notAsRecorded ?? [];
  const setting: Record<string, unknown> = {};
  const recorded = new Set<SettingId>();
  for (const { answers } of newestFirst) {
    for (const [key, value] of Object.entries(answers.setting)) {
      const id = key as SettingId;
      const isRecorded = answers.recorded?.includes(id) ?? false;
      if ((id in setting && !OF_THE_BEGINNING.has(id)) || (isRecorded && denied.includes(id))) continue;
      setting[id] = value;
      if (isRecorded) recorded.add(id);
      else recorded.delete(id);
    }
  }
  return {
    ...now.answers,
    setting: setting as Answers['setting'],
    ...(recorded.size > 0 ? { recorded: [...recorded] } : {}),
  };
}
