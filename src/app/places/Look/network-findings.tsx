import { isUnlike } from '../../../classifier/is-unlike.ts';
import { NETWORK_ID } from '../../../classifier/network-file.ts';
import type { SeenByNetwork } from '../../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../../photo/types.ts';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { isLearntHere } from '../../state/own-head.ts';
import { reportsHere } from '../../state/own-reports.ts';
import { NETWORK_WORDS as WORDS } from '../../words/network.ts';
import { sayShortly } from '../../words/signs.ts';
import { LEAST_RATIO, strengthOf } from './report-strength.ts';

interface NetworkFindingsProps {
  readonly seen: SeenByNetwork;
  readonly role: PhotoRole;
}

/** What the network said of one photo, as a voice of its own; nothing where it has nothing to say. */
export function NetworkFindings({ seen, role }: NetworkFindingsProps) {
  const said = reportsHere(seen, role).filter(({ ratio }) => ratio >= LEAST_RATIO);
  // Another network's strangeness is on another scale.
  const isSilent = seen.network === NETWORK_ID && isUnlike(seen);
  if (said.length === 0) return isSilent ? <p class="small soft">{WORDS.unlike}</p> : null;
  return (
    <div class="stack-close">
      <h3>{WORDS.saysOfLeaf}</h3>
      <ul>
        {said.map(({ sign, ratio }) => (
          <li key={sign}>
            {WORDS.sees} <WithTerms>{sayShortly(sign)}</WithTerms> ({WORDS.weight[strengthOf(ratio)]}
            {isLearntHere(seen, sign) && WORDS.learntHere})
          </li>
        ))}
      </ul>
    </div>
  );
}
