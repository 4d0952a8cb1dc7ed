import { useMemo } from 'preact/hooks';
import type { Measured, Measures } from '../../../leaf/measures.ts';
import { LIKELIHOOD_PAIRS } from '../../../signs/likelihood-pairs.ts';
import type { MarkPair } from '../../../signs/mark-pair.ts';
import type { Finding } from '../../../signs/types.ts';
import type { SignId } from '../../../signs/vocabulary.ts';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { Unfold } from '../../parts/Unfold/unfold.tsx';
import { change } from '../../state/change-look.ts';
import { overruledInLook, photosOfLook, rankingInHand } from '../../state/parts-of-look.ts';
import { askAbout } from '../../state/question.ts';
import { capitalise } from '../../words/causes.ts';
import { describeDayShortly } from '../../words/dates.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { describeMeasures } from '../../words/measures.ts';
import { NETWORK_WORDS } from '../../words/network.ts';
import { sayShortly } from '../../words/signs.ts';
import { LEAST_RATIO, strengthOf, strengthSeenBy } from './report-strength.ts';
import { sayNothingSeen } from './say-nothing-seen.ts';

/** What the camera, and the network where it is switched on, report as signs, each of which a person can set aside. */
export function CameraReport() {
  const overruled = overruledInLook.value ?? [];
  const standing = (rankingInHand.value?.findings ?? []).filter(
    (finding) =>
      finding.from !== 'eye' &&
      Math.max(ratio(finding), 1 / ratio(finding)) >= LEAST_RATIO &&
      !overruled.includes(finding.sign as SignId),
  );
  const byNetwork = standing.filter(({ from }) => from === 'network');
  const byCamera = standing.filter(({ from }) => from !== 'network');
  // By the photos that were weighed: one that has just been read is not spoken of before its signs are.
  const weighed = useMemo(() => photosOfLook.peek(), [rankingInHand.value]);
  const nothing = sayNothingSeen(weighed);
  return (
    <>
      {byCamera.length + overruled.length > 0 && (
        <Report
          id="camera-title"
          title={WORDS.cameraSays}
          findings={byCamera}
          say={sayAsCamera}
          nothing={nothing}
        >
          {overruled.map((sign) => (
            <li key={sign} class="camera-line set-aside">
              <span>
                {WORDS.overruled}:{' '}
                <s>
                  <WithTerms>{sayShortly(sign)}</WithTerms>
                </s>
              </span>
              <Overrule sign={sign} overruled />
            </li>
          ))}
        </Report>
      )}
      {byNetwork.length > 0 && (
        <Report
          id="network-title"
          title={NETWORK_WORDS.says}
          findings={byNetwork}
          say={sayAsNetwork}
          nothing={nothing}
        />
      )}
    </>
  );
}

const sayAsCamera = (finding: Finding): string => {
  const weight = strengthSeenBy(ratio(finding), amountOf(finding));
  return `${capitalise(WORDS.cameraWeight[weight])} ${
    ratio(finding) > 1 ? WORDS.cameraSees : WORDS.cameraSeesNot
  } ${sayShortly(finding.sign)}`;
};

const PAIR_OF: ReadonlyMap<string, MarkPair> = new Map(LIKELIHOOD_PAIRS.map((pair) => [pair.mark, pair]));

/** The measures that a report of the camera rests on, as today's photo gave them, and the pair that names which. */
function restsOn({
  sign,
  from,
  seenOn,
}: Finding): { readonly pair: MarkPair; readonly all: Measures } | undefined {
  if (from !== 'camera' || seenOn !== undefined) return undefined;
  const [mark = '', place] = sign.split('@');
  const pair = PAIR_OF.get(mark);
  const { reading } = photosOfLook.value.find(({ role, roleOpen }) => role === place && !roleOpen) ?? {};
  return pair && reading && { pair, all: reading.measures };
}

/** How much of a sign that is seen was measured, where more of the measure means more of the sign. */
function amountOf(finding: Finding): Measured | undefined {
  const { pair, all } = restsOn(finding) ?? {};
  if (!pair || ratio(finding) <= 1 || pair.present.mean < pair.absent.mean) return undefined;
  return all?.[pair.measure];
}

/** "(by its depth of green: 24 of 100, give or take 3)" */
function sayMeasure(finding: Finding): string | undefined {
  const { pair, all = {} } = restsOn(finding) ?? {};
  const measure = describeMeasures(all).find(({ id }) => id === pair?.measure);
  return measure && WORDS.cameraRestsOn(measure.name, measure.says);
}

const sayAsNetwork = (finding: Finding): string =>
  `${ratio(finding) > 1 ? NETWORK_WORDS.sees : NETWORK_WORDS.seesNot} ${sayShortly(finding.sign)} (${
    NETWORK_WORDS.weight[strengthOf(ratio(finding))]
  })`;

interface ReportProps {
  readonly id: string;
  readonly title: string;
  readonly findings: readonly Finding[];
  readonly say: (finding: Finding) => string;
  /** What stands there where nothing is seen. */
  readonly nothing: string | undefined;
  /** Lines that follow what is seen. */
  readonly children?: preact.ComponentChildren;
}

/** What one of them reports: what it sees, and behind a fold what it looked for and does not see. */
function Report({ id, title, findings, say, nothing, children }: ReportProps) {
  const sorted = [...findings].sort(bySight);
  // What counts still but was shown by an earlier look is no report on the photo of today.
  const now = sorted.filter(({ seenOn }) => seenOn === undefined);
  const before = sorted.filter((finding) => finding.seenOn !== undefined && ratio(finding) > 1);
  const seen = now.filter((finding) => ratio(finding) > 1);
  const notSeen = now.filter((finding) => ratio(finding) <= 1).reverse();
  const lines = (some: readonly Finding[]) =>
    some.map((finding) => (
      <li key={finding.sign} class="camera-line">
        <span>
          {finding.seenOn !== undefined && <>{describeDayShortly(finding.seenOn)}: </>}
          <WithTerms>{say(finding)}</WithTerms> <span class="small soft">{sayMeasure(finding)}</span>
        </span>
        <Overrule sign={finding.sign as SignId} overruled={false} />
      </li>
    ));
  return (
    <section class="camera-report stack-close" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {seen.length === 0 && nothing && <p>{nothing}</p>}
      <ul>
        {lines(seen)}
        {children}
      </ul>
      {before.length > 0 && (
        <>
          <p>{WORDS.cameraSawBefore}</p>
          <ul>{lines(before)}</ul>
        </>
      )}
      {notSeen.length > 0 && (
        <Unfold summary={WORDS.cameraNotSeen(notSeen.length)} small>
          {() => <ul>{lines(notSeen)}</ul>}
        </Unfold>
      )}
    </section>
  );
}

const ratio = ({ ifPresent, ifAbsent }: Finding): number => ifPresent / ifAbsent;

/** What is seen most clearly first. */
const bySight = (a: Finding, b: Finding): number => ratio(b) - ratio(a);

function Overrule({ sign, overruled }: { readonly sign: SignId; readonly overruled: boolean }) {
  return (
    <button
      type="button"
      class="button-plain small"
      onClick={() => {
        change({ kind: 'overrule', sign, overruled: !overruled });
        // Who sees it otherwise is asked what they see.
        if (!overruled) askAbout(sign);
      }}
    >
      {overruled ? WORDS.letStand : WORDS.overrule}
    </button>
  );
}
