import type { TrialResult } from '../../../../compare/side-by-side/read-trial.ts';
import type { TrialMeasure } from '../../../../compare/side-by-side/trial.ts';
import type { TrialRecord } from '../../../../garden/trial-record.ts';
import { planNumbers } from '../../../state/plan-trial.ts';
import { measureOf, mixesEyeAndCamera, readKeptTrial } from '../../../state/read-kept-trial.ts';
import {
  isSettled,
  measureWords,
  sayCounts,
  sayDifference,
  sayDoubts,
  saySeason,
  sayTooFew,
} from '../../../words/say-trial.ts';
import { TRIAL_WORDS as WORDS } from '../../../words/trial.ts';
import { ResultPlot } from './result-plot.tsx';

/** What came out: each difference in words with its range, then the plot, then what makes it doubtful. */
export function ResultPart({ trial }: { readonly trial: TrialRecord }) {
  const measure = measureOf(trial);
  const read = readKeptTrial(trial);
  return (
    <section class="stack">
      <h2>{WORDS.result}</h2>
      {'trouble' in read || !measure ? (
        <p>{WORDS.trouble['trouble' in read ? read.trouble : 'no-measure']}</p>
      ) : (
        <Read trial={trial} measure={measure} result={read.result} />
      )}
    </section>
  );
}

/** Said already, and louder, where there is one bed a side. */
const OF_WHOLE_BEDS = new Set<TrialResult['warnings'][number]>([
  'one-bed-a-side',
  'beds-are-the-units',
  'plants-in-bed-not-independent',
]);

interface ReadProps {
  readonly trial: TrialRecord;
  readonly measure: TrialMeasure;
  readonly result: TrialResult;
}

function Read({ trial, measure, result }: ReadProps) {
  const loud = result.warnings.includes('one-bed-a-side');
  // Where a bed stands alone on a side, more plants would not help.
  const unsettled = result.differences.filter((one) => !isSettled(trial, one, measure, result.scale));
  const tooFew =
    loud || unsettled.length === 0
      ? []
      : sayTooFew(
          trial,
          unsettled.flatMap(({ counts }) => counts),
          result.independent !== 'unit',
          planNumbers(trial),
          measureWords(measure, trial),
        );
  const doubts = [
    ...tooFew,
    ...sayDoubts(
      trial,
      result.warnings.filter((warning) => !(loud && OF_WHOLE_BEDS.has(warning))),
    ),
    ...(mixesEyeAndCamera(trial) ? [WORDS.byEye] : []),
  ];
  return (
    <>
      {loud && <p class="trial-loud">{WORDS.warnings['one-bed-a-side']}</p>}
      {result.differences.map((difference) => {
        const { head, says } = sayDifference(trial, difference, measure, result.scale);
        const isBeds = result.independent !== 'unit' && difference.standing === 'trial';
        return (
          <div key={`${difference.first} ${difference.second}`} class="trial-finding">
            <p class="trial-finding-head">
              {difference.standing === 'indication' && `${WORDS.indication}: `}
              {difference.standing === 'indication' ? head.charAt(0).toLowerCase() + head.slice(1) : head}
            </p>
            <p>{says}</p>
            <p class="small soft">{sayCounts(trial, difference, isBeds)}</p>
            {difference.seasons && (
              <div class="small">
                <p>{WORDS.seasons}</p>
                <ul class="trial-seasons">
                  {difference.seasons.map(({ season, ...shift }) => (
                    <li key={season}>
                      {WORDS.season(season)}: {saySeason(shift, measure, result.scale)}
                    </li>
                  ))}
                </ul>
                <p class="soft">{WORDS.seasonsSay}</p>
              </div>
            )}
          </div>
        );
      })}
      <ResultPlot trial={trial} measure={measure} result={result} />
      {doubts.length > 0 && (
        <div class="stack-close">
          <h3>{WORDS.warningsTitle}</h3>
          <ul class="trial-doubts">
            {doubts.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
