import type { Season } from '../../causes/schema.ts';
import type { Reason } from '../../ranker/types.ts';
import type { Answers, Finding, Reporter } from '../../signs/types.ts';
import { cropName } from './crops.ts';
import { describeOutcome } from './settings.ts';
import { describeSign, sayShortly } from './signs.ts';
import { inUnits } from './units.ts';

export interface ReasonInWords {
  /** "On the oldest leaves: yellow between the veins", "Looked for, not found: aphids" */
  readonly says: string;
  /** Who says so: "you saw it", "the camera", "the season" */
  readonly by: string;
  /** How the block is drawn: what a person saw, what the camera saw, or a circumstance. */
  readonly kind: 'eye' | 'camera' | 'circumstance';
  readonly because?: string;
}

/** What was reported, to tell "seen" from "looked for and not found": a reason itself holds only its weight. */
export interface Reported {
  readonly answers: Pick<Answers, 'signs'>;
  readonly findings: readonly Finding[];
}

const REPORTERS: Record<Reporter, string> = {
  eye: 'you',
  camera: 'the camera',
  records: 'your records',
  network: 'the network',
};

/** A reason in plain words. Covers signs, settings with an outcome, options of a list, the crop and the season. */
export function describeReason(reason: Reason, reported: Reported): ReasonInWords {
  if (reason.sign === 'garden=settled')
    return { says: sayGarden(reason.decibans), by: 'your settled cases', kind: 'circumstance' };
  const because = reason.because === undefined ? {} : { because: inUnits(reason.because) };
  const equals = reason.sign.indexOf('=');
  if (equals > 0) {
    const factor = reason.sign.slice(0, equals);
    const outcome = reason.sign.slice(equals + 1);
    const by =
      factor === 'season'
        ? outcome === NO_WINTER
          ? 'where the garden lies'
          : 'the date'
        : reason.from.map((who) => REPORTERS[who]).join(' and ') || 'you';
    const isSetting = factor !== 'crop' && factor !== 'season';
    const against = isSetting && reason.decibans < 0 ? { because: LIKELIER_OTHERWISE } : {};
    return { says: sayCircumstance(factor, outcome), by, kind: 'circumstance', ...against, ...because };
  }
  const kind = reason.from.includes('eye') ? 'eye' : 'camera';
  const by = reason.from.map((who) => REPORTERS[who]).join(' and ') || 'you';
  const phrase = sayShortly(reason.sign);
  return { says: isThere(reason.sign, reported) ? phrase : sayAbsent(reason.sign), by, kind, ...because };
}

/** Why a circumstance speaks against a cause that has no quarrel with it: dry soil, where drought is weighed too. */
const LIKELIER_OTHERWISE = 'likelier with other causes';

/** The whole year of a place without winter, which has no seasons to name. */
const NO_WINTER: Season = 'no-winter';

const sayGarden = (decibans: number): string =>
  decibans > 0 ? 'met in this garden more often than usual' : 'met in this garden less often than usual';

function sayCircumstance(factor: string, outcome: string): string {
  if (factor === 'crop') return `the crop is ${cropName(outcome).toLocaleLowerCase('en-GB')}`;
  if (factor === 'season') return outcome === NO_WINTER ? 'no winter comes here' : `it is ${outcome}`;
  return describeOutcome(factor, outcome);
}

function sayAbsent(sign: string): string {
  const { group } = describeSign(sign);
  return group === 'spread' ? `not so: ${sayShortly(sign)}` : `looked for, not found: ${sayShortly(sign)}`;
}

/** The person's word counts before the camera's; several reports are added up as likelihood ratios. */
function isThere(sign: string, { answers, findings }: Reported): boolean {
  const said = (answers.signs as Partial<Record<string, 'seen' | 'absent'>>)[sign];
  if (said) return said === 'seen';
  let logRatio = 0;
  for (const finding of findings)
    if (finding.sign === sign) logRatio += Math.log(finding.ifPresent / finding.ifAbsent);
  return logRatio >= 0;
}
