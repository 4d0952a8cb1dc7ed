import './normal-leaves.css';
import '../../../parts/Choice/segments.css';
import { useState } from 'preact/hooks';
import type { Garden } from '../../../../garden/gather-garden.ts';
import { type LeafWanted, sameVariety, varietyKey } from '../../../../garden/normal-leaves-of.ts';
import { BackLink } from '../../../parts/BackLink/back-link.tsx';
import { FilePicker } from '../../../parts/FilePicker/file-picker.tsx';
import { onUse } from '../../../parts/OnUse/on-use.tsx';
import { garden } from '../../../state/garden.ts';
import { addNormalLeaves } from '../../../state/keep-normal-leaf.ts';
import { goTo, hashOf } from '../../../state/route.ts';
import { capitalise, joinWords } from '../../../words/causes.ts';
import { CROP_WORDS, cropName, findCrops } from '../../../words/crops.ts';
import { dayOf } from '../../../words/dates.ts';
import { GROUND_WORDS } from '../../../words/ground.ts';
import { NORMAL_WORDS as WORDS } from '../../../words/normal-leaves.ts';
import { NormalLeafSheet } from './normal-leaf-sheet.tsx';

const Viewfinder = onUse(() =>
  import('../../../parts/Viewfinder/viewfinder.tsx').then((part) => part.Viewfinder),
);

interface NormalLeavesPageProps {
  readonly crop?: string | undefined;
  readonly variety?: string | undefined;
}

/** The healthy leaves of one variety, or the varieties that there are. */
export function NormalLeavesPage({ crop, variety }: NormalLeavesPageProps) {
  const all = garden.value;
  if (!all) return <h1 tabIndex={-1}>{WORDS.title}</h1>;
  return crop && variety ? <OneVariety all={all} crop={crop} variety={variety} /> : <Varieties all={all} />;
}

const nameOf = ({ crop, variety }: LeafWanted): string =>
  [cropName(crop), variety].filter(Boolean).join(', ');

interface OneVarietyProps {
  readonly all: Garden;
  readonly crop: string;
  readonly variety: string;
}

function OneVariety({ all, crop, variety }: OneVarietyProps) {
  const [says, setSays] = useState('');
  const [looking, setLooking] = useState(false);
  const name = nameOf({ crop, variety });
  const leaves = all.normalLeaves.filter((leaf) => sameVariety(leaf, { crop, variety })).reverse();
  const add = async (files: readonly File[]): Promise<void> => {
    setLooking(false);
    if (files.length === 0) return;
    const saved = await addNormalLeaves(files, crop, variety, dayOf(new Date()));
    setSays(saved === 'stored' ? '' : GROUND_WORDS.trouble[saved]);
  };
  const look = `button${leaves.length === 0 ? ' next' : ''}`;
  return (
    <div class="ground stack-wide">
      <div class="stack-close">
        <BackLink to={{ place: 'ground', page: 'normal-leaves' }} says={WORDS.toAll} />
        <h1 tabIndex={-1}>{WORDS.of(name)}</h1>
        <p>{WORDS.lead}</p>
        <p class="small soft">{WORDS.how}</p>
      </div>
      <div class="normal-add">
        {typeof navigator.mediaDevices?.getUserMedia === 'function' ? (
          <button type="button" class={look} onClick={() => setLooking(true)}>
            {WORDS.take}
          </button>
        ) : (
          <FilePicker class={look} label={WORDS.take} onAdd={(files) => void add(files)} camera>
            {WORDS.take}
          </FilePicker>
        )}
        <FilePicker class="button" label={WORDS.choose} onAdd={(files) => void add(files)} several>
          {WORDS.choose}
        </FilePicker>
      </div>
      {looking && <Viewfinder onClose={() => setLooking(false)} onTaken={(files) => void add(files)} />}
      <p role="alert">{says}</p>
      {leaves.map((leaf) => (
        <NormalLeafSheet key={leaf.id} leaf={leaf} caption={name} />
      ))}
    </div>
  );
}

function Varieties({ all }: { readonly all: Garden }) {
  const named = varietiesIn(all);
  const unnamed = [
    ...new Set(
      all.plantings
        .filter(({ crop, variety, clearedOn }) => crop && !variety?.trim() && !clearedOn)
        .map(({ crop }) => cropName(crop) ?? crop),
    ),
  ];
  return (
    <div class="ground stack-wide">
      <div class="stack-close">
        <BackLink to={{ place: 'ground' }} says={WORDS.toGround} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        <p>{WORDS.lead}</p>
      </div>
      {named.length === 0 ? (
        <p class="soft">{WORDS.none}</p>
      ) : (
        <section>
          <h2 class="list-title">{WORDS.growing}</h2>
          <ul class="normal-list">
            {named.map(({ crop, variety, leaves }) => (
              <li class="ground-line" key={`${crop} ${varietyKey(variety)}`}>
                <a class="link-line" href={hashOf({ place: 'ground', page: 'normal-leaves', crop, variety })}>
                  {nameOf({ crop, variety })}
                </a>
                <span class="small soft">{WORDS.kept(leaves)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {unnamed.length > 0 && <p class="small soft">{WORDS.unnamed(joinWords(unnamed.map(capitalise)))}</p>}
      <OtherVariety />
    </div>
  );
}

/** Every variety that grows or has a healthy leaf on record, each once, in order of name. */
function varietiesIn(all: Garden) {
  const found = new Map<string, { crop: string; variety: string; leaves: number }>();
  for (const { kind, crop, variety = '', ...rest } of [...all.plantings, ...all.normalLeaves]) {
    if (!crop || varietyKey(variety) === '') continue;
    const isLeaf = kind === 'normal-leaf';
    if (!isLeaf && 'clearedOn' in rest && rest.clearedOn) continue;
    const key = `${crop} ${varietyKey(variety)}`;
    const before = found.get(key) ?? { crop, variety: variety.trim(), leaves: 0 };
    found.set(key, { ...before, leaves: before.leaves + (isLeaf ? 1 : 0) });
  }
  return [...found.values()].sort((a, b) => nameOf(a).localeCompare(nameOf(b), 'en-GB', { numeric: true }));
}

function OtherVariety() {
  const [crop, setCrop] = useState('');
  const [variety, setVariety] = useState('');
  const [says, setSays] = useState('');
  const show = (event: Event): void => {
    event.preventDefault();
    if (!crop || varietyKey(variety) === '') setSays(WORDS.needsBoth);
    else goTo({ place: 'ground', page: 'normal-leaves', crop, variety: variety.trim() });
  };
  return (
    <form class="add-by-name" noValidate onSubmit={show}>
      <h2>{WORDS.otherTitle}</h2>
      <label class="field">
        <span>{WORDS.crop}</span>
        <select value={crop} onChange={({ currentTarget }) => setCrop(currentTarget.value)}>
          <option value="" />
          {findCrops('').map((id) => (
            <option key={id} value={id}>
              {CROP_WORDS[id].name}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        <span>{WORDS.variety}</span>
        <input
          type="text"
          value={variety}
          autocomplete="off"
          onInput={({ currentTarget }) => setVariety(currentTarget.value)}
        />
      </label>
      <button type="submit" class="button">
        {WORDS.go}
      </button>
      <p role="alert">{says}</p>
    </form>
  );
}
