import { growingYearsOf, type Zone } from '../days/growing-year.ts';
import type { CaseRecord } from './records.ts';

/**
 * One key for all cases that are alike and began in one growing year, by the id of the case.
 * @param alike what the cases of one key have in common
 */
export function partByYear<Case extends Pick<CaseRecord, 'id' | 'openedOn'>>(
  cases: readonly Case[],
  alike: (kept: Case) => readonly string[],
  zone: Zone,
): ReadonlyMap<string, string> {
  const days = new Map<string, string[]>();
  const keyed = cases.map(({ id, openedOn }, at) => {
    const key = alike(cases[at]!).join('\u0000');
    const its = days.get(key) ?? [];
    its.push(openedOn);
    days.set(key, its);
    return { id, openedOn, key };
  });
  const years = new Map([...days].map(([key, its]) => [key, growingYearsOf(its, zone)]));
  return new Map(keyed.map(({ id, openedOn, key }) => [id, [key, years.get(key)!(openedOn)].join('\u0000')]));
}
