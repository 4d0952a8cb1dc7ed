import type { Finding } from '../../../signs/types.ts';
import type { SignId } from '../../../signs/vocabulary.ts';
import { change, draft, ranking } from '../../state/look-session.ts';
import { askAbout } from '../../state/question.ts';
import { capitalise } from '../../words/causes.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { sayShortly } from '../../words/signs.ts';

/** Likelihood ratios below this say so little that a line would only be noise. */
const LEAST_RATIO = 1.6;

/** What the camera reports as signs, each of which a person can set aside. */
export function CameraReport() {
  const findings = (ranking.value.result?.findings ?? []).filter(
    (finding) => finding.from !== 'eye' && Math.max(ratio(finding), 1 / ratio(finding)) >= LEAST_RATIO,
  );
  const overruled = draft.value.answers.overruled ?? [];
  const standing = findings.filter(({ sign }) => !overruled.includes(sign as SignId));
  if (standing.length + overruled.length === 0) return null;
  const sorted = [...standing].sort(bySight);
  const seen = sorted.filter((finding) => ratio(finding) > 1);
  const notSeen = sorted.filter((finding) => ratio(finding) <= 1).reverse();
  return (
    <section class="camera-report stack-close" aria-labelledby="camera-title">
      <h3 id="camera-title">{WORDS.cameraSays}</h3>
      {seen.length === 0 && <p>{WORDS.cameraSeesNothing}</p>}
      <ul>
        {seen.map((finding) => (
          <CameraLine key={finding.sign} finding={finding} />
        ))}
        {overruled.map((sign) => (
          <li key={sign} class="camera-line set-aside">
            <span>
              {WORDS.overruled}: <s>{sayShortly(sign)}</s>
            </span>
            <Overrule sign={sign} overruled />
          </li>
        ))}
      </ul>
      {notSeen.length > 0 && (
        <details>
          <summary class="small">{WORDS.cameraNotSeen(notSeen.length)}</summary>
          <ul>
            {notSeen.map((finding) => (
              <CameraLine key={finding.sign} finding={finding} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function CameraLine({ finding }: { readonly finding: Finding }) {
  return (
    <li class="camera-line">
      <span>
        {capitalise(WORDS.cameraWeight[strength(finding)])}{' '}
        {ratio(finding) > 1 ? WORDS.cameraSees : WORDS.cameraSeesNot} {sayShortly(finding.sign)}
      </span>
      <Overrule sign={finding.sign as SignId} overruled={false} />
    </li>
  );
}

const ratio = ({ ifPresent, ifAbsent }: Finding): number => ifPresent / ifAbsent;

/** What is seen most clearly first. */
const bySight = (a: Finding, b: Finding): number => ratio(b) - ratio(a);

/** Three words for a likelihood ratio: 10 and 3 are the usual marks of strong and moderate evidence (from memory). */
function strength(finding: Finding): keyof typeof WORDS.cameraWeight {
  const size = Math.max(ratio(finding), 1 / ratio(finding));
  if (size >= 10) return 'strong';
  return size >= 3 ? 'some' : 'faint';
}

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
