import { FEWEST } from '../../../../classifier/own-head/learn-own-head.ts';
import type { OwnMarkCounts } from '../../../../garden/own-head-record.ts';
import { PlainTable } from '../../../parts/PlainTable/plain-table.tsx';
import { capitalise } from '../../../words/causes.ts';
import { sayMissing, OWN_LEAVES_WORDS as WORDS } from '../../../words/own-leaves.ts';
import { describeSign } from '../../../words/signs.ts';

type Counted = OwnMarkCounts & { readonly mark: string };

interface MarkCountsProps {
  readonly counts: readonly Counted[];
}

/** How much of what is asked for a mark has, 0 to 1: what is nearest to being tried stands first. */
const readiness = ({ present, absent, presentPlantings, absentPlantings }: Counted): number =>
  [
    present / FEWEST.photos,
    absent / FEWEST.photos,
    presentPlantings / FEWEST.plantings,
    absentPlantings / FEWEST.plantings,
  ].reduce((sum, share) => sum + Math.min(1, share), 0);

/** What there is of each mark that was found on some photo, and what is missing to try it. */
export function MarkCounts({ counts }: MarkCountsProps) {
  const found = counts
    .filter(({ present }) => present > 0)
    .sort((a, b) => readiness(b) - readiness(a) || b.present - a.present);
  if (found.length === 0) return null;
  const others = counts.length - found.length;
  return (
    <>
      <PlainTable
        caption={WORDS.caption}
        columns={[WORDS.mark, WORDS.withIt, WORDS.without]}
        rows={found.map((one) => ({
          key: one.mark,
          head: (
            <>
              {capitalise(describeSign(one.mark).what)}
              <span class="leaves-missing small soft">{sayMissing(one, FEWEST) || WORDS.enough}</span>
            </>
          ),
          figures: [one.present, one.absent],
        }))}
      />
      {others > 0 && <p class="small soft">{WORDS.noPhoto(others)}</p>}
    </>
  );
}
