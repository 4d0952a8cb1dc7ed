import './then-and-now.css';
import { useState } from 'preact/hooks';
import { compareReadings, wordForLeaf } from '../../../../compare/over-time/compare-readings.ts';
import { asOneOfItsPlant } from '../../../../compare/over-time/spread-among-leaves.ts';
import type { MeasureId } from '../../../../leaf/measures.ts';
import type { KeptLook } from '../../../state/kept.ts';
import { type KnownLeaf, leavesToCompare, normalMeasures } from '../../../state/leaves-to-compare.ts';
import { normalReadingsFor } from '../../../state/normal-leaves.ts';
import { type ChangeInWords, describeChanges, CHANGE_PAGE_WORDS as WORDS } from '../../../words/changes.ts';
import { describeDayAndYear } from '../../../words/dates.ts';
import { roleName } from '../../../words/roles.ts';
import { LeafPair } from './leaf-pair.tsx';
import { TrendPlot } from './trend-plot.tsx';

/** Two looks at one plant held against each other: the leaves, what changed and how surely, one measure over all looks. */
export function ThenAndNow({ looks }: { readonly looks: readonly KeptLook[] }) {
  const byRole = leavesToCompare(looks);
  const roles = [...byRole.keys()];
  const [roleSaid, setRole] = useState<KnownLeaf['role'] | undefined>();
  const role = roleSaid && byRole.has(roleSaid) ? roleSaid : roles[0];
  const leaves = role && byRole.get(role);
  return (
    <section class="then-and-now stack" aria-labelledby="then-and-now">
      <h2 id="then-and-now">{WORDS.title}</h2>
      {!leaves && <p class="soft">{WORDS.notYet}</p>}
      {roles.length > 1 && (
        <Pick
          says={WORDS.role}
          options={roles.map((id) => [id, roleName(id)])}
          value={role ?? ''}
          onPick={(id) => setRole(id as KnownLeaf['role'])}
        />
      )}
      {leaves && <Compared key={role} leaves={leaves} looks={looks} />}
    </section>
  );
}

interface ComparedProps {
  readonly leaves: readonly KnownLeaf[];
  readonly looks: readonly KeptLook[];
}

function Compared({ leaves, looks }: ComparedProps) {
  const [firstId, setFirst] = useState(leaves[0]?.lookId ?? '');
  const [laterId, setLater] = useState(leaves.at(-1)?.lookId ?? '');
  const [sameLeaf, setSameLeaf] = useState(false);
  const first = leaves.find(({ lookId }) => lookId === firstId) ?? leaves[0];
  const later = leaves.find(({ lookId }) => lookId === laterId) ?? leaves.at(-1);
  if (!first || !later) return null;
  const answers = looks.at(-1)?.answers;
  const normal = normalMeasures(looks) ?? (answers && normalReadingsFor(answers).at(-1)?.measures);
  const changes = compareReadings(first.reading.measures, later.reading.measures, {
    sameLeaf,
    ...(normal ? { normal } : {}),
  });
  const said = describeChanges(changes);
  const standing = said.filter(({ standsOut }) => standsOut);
  const others = said.filter(({ standsOut }) => !standsOut);
  const options = leaves.map(({ lookId, date }) => [lookId, describeDayAndYear(date)] as const);
  return (
    <>
      <LeafPair key={`${first.photoId} ${later.photoId}`} first={first} later={later} />
      <div class="then-and-now-picks">
        <Pick says={WORDS.first} options={options} value={first.lookId} onPick={setFirst} />
        <Pick says={WORDS.later} options={options} value={later.lookId} onPick={setLater} />
      </div>
      <p class="small soft">{WORDS.lead}</p>
      <label class="same-leaf">
        <input
          type="checkbox"
          checked={sameLeaf}
          onChange={({ currentTarget }) => setSameLeaf(currentTarget.checked)}
        />
        <span>
          {WORDS.sameLeaf}
          <span class="same-leaf-why small soft">{WORDS.sameLeafWhy}</span>
        </span>
      </label>
      <p class="leaf-word" role="status">
        {WORDS.leaf[wordForLeaf(changes)]}
      </p>
      <p class="small soft">{WORDS.sureness}</p>
      {standing.length > 0 && <Changes said={standing} />}
      {others.length > 0 && (
        <details>
          <summary>{WORDS.others(others.length)}</summary>
          <Changes said={others} />
        </details>
      )}
      <Follow leaves={leaves} said={said} sameLeaf={sameLeaf} />
    </>
  );
}

function Changes({ said }: { readonly said: readonly ChangeInWords[] }) {
  return (
    <dl class="changes figures">
      {said.map(({ id, name, before, now, by, word }) => (
        <div key={id}>
          <dt>
            {name}
            {word && <strong>: {word}</strong>}
          </dt>
          <dd>{by}</dd>
          <dd class="small soft">
            {WORDS.first}: {before}. {WORDS.later}: {now}.
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface FollowProps {
  readonly leaves: readonly KnownLeaf[];
  readonly said: readonly ChangeInWords[];
  readonly sameLeaf: boolean;
}

function Follow({ leaves, said, sameLeaf }: FollowProps) {
  const [picked, setPicked] = useState<MeasureId | undefined>();
  const id = said.find((one) => one.id === picked)?.id ?? said[0]?.id;
  if (!id) return null;
  const points = leaves.flatMap(({ date, reading }) => {
    const measured = reading.measures[id];
    return measured ? [{ date, ...asOneOfItsPlant(id, measured, sameLeaf) }] : [];
  });
  return (
    <div class="stack-close">
      <Pick
        says={WORDS.measure}
        options={said.map((one) => [one.id, one.name])}
        value={id}
        onPick={(next) => setPicked(next as MeasureId)}
      />
      <TrendPlot id={id} points={points} />
    </div>
  );
}

interface PickProps {
  readonly says: string;
  readonly options: readonly (readonly [string, string])[];
  readonly value: string;
  readonly onPick: (id: string) => void;
}

function Pick({ says, options, value, onPick }: PickProps) {
  return (
    <label class="field">
      <span>{says}</span>
      <select value={value} onChange={({ currentTarget }) => onPick(currentTarget.value)}>
        {options.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
