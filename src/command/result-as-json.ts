import type { NextCheck, Reason } from '../ranker/types.ts';
import type { TriageResult } from '../triage.ts';
import type { FileReading } from './read-photo.ts';

const reasonOf = ({ sign, decibans, from, because }: Reason): object => ({
  sign,
  decibans,
  from,
  ...(because === undefined ? {} : { because }),
});
const checkOf = ({ id, target, minutes, waitDays, gain, bits, tellsApart }: NextCheck): object => ({
  id,
  kind: target.kind,
  minutes,
  waitDays,
  gain,
  bits,
  tellsApart,
});

/** A photo's reading as it is printed for machines. */
export function photoAsJson({ file, role, takenAt, trouble, leaf, white, measures }: FileReading): object {
  return {
    ...(file === undefined ? {} : { file }),
    role,
    ...(takenAt === undefined ? {} : { takenAt }),
    trouble,
    leaf: { found: leaf.found },
    ...(white === undefined ? {} : { white }),
    measures,
  };
}

/** The result as it is printed for machines; the format is described in README. */
export function resultAsJson(
  result: TriageResult,
  photos: readonly FileReading[],
  complaints: readonly string[],
): object {
  const { verdict } = result;
  return {
    photos: photos.map(photoAsJson),
    findings: result.findings,
    causes: result.causes.map((cause) => ({
      id: cause.id,
      family: cause.family,
      probability: cause.probability,
      low: cause.low,
      high: cause.high,
      priorDecibans: cause.priorDecibans,
      for: cause.for.map(reasonOf),
      against: cause.against.map(reasonOf),
      ...(cause.ruledOut === undefined ? {} : { ruledOut: cause.ruledOut }),
    })),
    together: result.together,
    verdict: {
      id: verdict.id,
      because: verdict.because,
      courses: verdict.courses,
      ...(verdict.check ? { check: checkOf(verdict.check) } : {}),
      lookAgain: verdict.lookAgain,
      recovery: verdict.recovery,
      cautions: verdict.cautions,
    },
    nextChecks: result.nextChecks.map(checkOf),
    assumed: result.assumed.map(({ setting }) => setting),
    nothingSaid: result.nothingSaid,
    knowledge: result.knowledge,
    ...(complaints.length > 0 ? { complaints } : {}),
  };
}
