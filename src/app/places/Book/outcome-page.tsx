import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import './outcome-page.css';
import { useState } from 'preact/hooks';
import type { CaseRecord } from '../../../garden/records.ts';
import { SURENESS, type Sureness } from '../../../ranker/learn-sureness.ts';
import { CAUSES, FAMILIES } from '../../../signs/vocabulary.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { cases, endCase, type KeptLook } from '../../state/kept.ts';
import { goTo } from '../../state/route.ts';
import { useLooks } from '../../state/use-looks.ts';
import { BOOK_WORDS } from '../../words/book.ts';
import { capitalise, causeName, FAMILY_NAMES } from '../../words/causes.ts';
import { dayOf } from '../../words/dates.ts';
import { endName, LOST, OUTCOME_WORDS as WORDS } from '../../words/outcome.ts';

const SURENESS_WORDS = Object.keys(SURENESS) as Sureness[];

/** How a case ended: what it was, how that is known, what was lost and done. Three taps at best. */
export function OutcomePage({ caseId }: { readonly caseId: string }) {
  const kept = cases.value?.find(({ id }) => id === caseId);
  if (!cases.value) return <h1 tabIndex={-1}>…</h1>;
  if (!kept || kept.deletedAt) return <h1 tabIndex={-1}>{BOOK_WORDS.notFound}</h1>;
  return (
    <article class="case stack-wide">
      <div>
        <BackLink to={{ place: 'book', caseId }} says={WORDS.toCase} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
        <p class="soft">{WORDS.about(kept.plant, kept.bed)}</p>
      </div>
      <OutcomeForm kept={kept} />
    </article>
  );
}

/** Never found out is an end too, and excludes every cause. */
type Found = readonly string[] | 'never';

function OutcomeForm({ kept }: { readonly kept: CaseRecord }) {
  const before = kept.outcome;
  const [found, setFound] = useState<Found | undefined>(
    before && (before.causes.length > 0 ? before.causes : 'never'),
  );
  const [sureness, setSureness] = useState(before?.sureness ?? '');
  const [lost, setLost] = useState(before?.lost ?? '');
  const [done, setDone] = useState(before?.done ?? '');
  const [state, setState] = useState<'ready' | 'asked' | 'keeping' | 'refused'>('ready');
  const missing =
    found === undefined || found.length === 0
      ? WORDS.needsCause
      : found !== 'never' && sureness === ''
        ? WORDS.needsSureness
        : '';
  const settle = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (missing !== '' || found === undefined) return setState('asked');
    setState('keeping');
    const said = { causes: found === 'never' ? [] : found, sureness, lost, done };
    const stored = await endCase(kept, said, dayOf(new Date()), WORDS.settled(kept.plant));
    if (stored) goTo({ place: 'book', caseId: kept.id }, 'replace');
    else setState('refused');
  };
  return (
    <form class="outcome stack-wide" onSubmit={(event) => void settle(event)} noValidate>
      <CauseChoice kept={kept} found={found} onFound={setFound} />
      {found !== 'never' && <SurenessChoice value={sureness} onChange={setSureness} />}
      <Segments
        legend={WORDS.lost}
        name="lost"
        options={LOST.map((id) => ({ id, says: WORDS.lostWords[id] }))}
        value={LOST.find((id) => id === lost)}
        onChange={setLost}
      />
      <label class="field">
        <span>{WORDS.done}</span>
        <textarea rows={2} value={done} onInput={(event) => setDone(event.currentTarget.value)} />
      </label>
      <div class="stack-close">
        <p role="alert">
          {state === 'asked' && missing}
          {state === 'refused' && WORDS.refused}
        </p>
        <button type="submit" class="button next" disabled={state === 'keeping'}>
          {state === 'keeping' ? WORDS.settling : WORDS.settle}
        </button>
      </div>
    </form>
  );
}

/** As many as a thumb takes in. */
const OFFERED = 6;

/** The causes that this case has pointed at: those that led at any look, then what the last look thought likeliest. */
function offeredCauses({ looks }: CaseRecord, kept: readonly KeptLook[]): string[] {
  const leading = [...looks].reverse().flatMap((look) => look.leading);
  const shown = kept.at(-1)?.ranking?.causes.map(({ id }) => id as string) ?? [];
  return [...new Set([...leading, ...shown])].filter((id) => id !== 'unlisted').slice(0, OFFERED);
}

interface CauseChoiceProps {
  readonly kept: CaseRecord;
  readonly found: Found | undefined;
  readonly onFound: (found: Found) => void;
}

function CauseChoice({ kept, found, onFound }: CauseChoiceProps) {
  const named = found === 'never' || found === undefined ? [] : found;
  const looks = useLooks(kept.id);
  const offered = [...new Set([...offeredCauses(kept, looks ?? []), ...named])];
  const toggle = (id: string): void =>
    onFound(named.includes(id) ? named.filter((other) => other !== id) : [...named, id]);
  return (
    <fieldset class="stack-close">
      <legend class="outcome-asks">{WORDS.what}</legend>
      <p class="small soft">{WORDS.whatHow}</p>
      <ul class="outcome-choices">
        {offered.map((id) => (
          <li key={id}>
            <Tick says={capitalise(endName(id))} checked={named.includes(id)} onChange={() => toggle(id)} />
          </li>
        ))}
        <li>
          <Tick
            says={WORDS.never}
            checked={found === 'never'}
            onChange={() => onFound(found === 'never' ? [] : 'never')}
          />
        </li>
      </ul>
      <TermsOf says={offered.map((id) => endName(id))} />
      <label class="field">
        <span>{WORDS.another}</span>
        <select
          value=""
          onChange={(event) => {
            const { value } = event.currentTarget;
            event.currentTarget.value = '';
            if (value !== '' && !named.includes(value)) toggle(value);
          }}
        >
          <option value="">{WORDS.choose}</option>
          {FAMILIES.map(({ id: family }) => (
            <optgroup key={family} label={FAMILY_NAMES[family]}>
              {CAUSES.filter((cause) => cause.family === family).map(({ id }) => (
                <option key={id} value={id}>
                  {id === 'unlisted' ? endName(id) : causeName(id)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

interface TickProps {
  readonly says: string;
  readonly checked: boolean;
  readonly onChange: () => void;
}

function Tick({ says, checked, onChange }: TickProps) {
  return (
    <label class="tick">
      <input type="checkbox" checked={checked} onChange={onChange} />
      <span>{says}</span>
    </label>
  );
}

interface SurenessProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function SurenessChoice({ value, onChange }: SurenessProps) {
  return (
    <fieldset class="stack-close">
      <legend class="outcome-asks">{WORDS.sure}</legend>
      <ul class="outcome-choices">
        {SURENESS_WORDS.map((id) => (
          <li key={id}>
            <label class="tick">
              <input type="radio" name="sureness" checked={value === id} onChange={() => onChange(id)} />
              <span>
                {WORDS.sureness[id].name} <span class="small soft">{WORDS.sureness[id].says}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
