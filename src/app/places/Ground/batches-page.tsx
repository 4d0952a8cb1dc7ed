import { useState } from 'preact/hooks';
import { BATCH_KINDS } from '../../../garden/ground-records.ts';
import { heapNow } from '../../../garden/heap-now.ts';
import { BackLink } from '../../parts/BackLink/back-link.tsx';
import { DayField } from '../../parts/DayField/day-field.tsx';
import { newBatch, withFields } from '../../state/edit-ground.ts';
import { garden, keepWithUndo } from '../../state/garden.ts';
import { nowStamp } from '../../state/kept.ts';
import { hashOf } from '../../state/route.ts';
import { dayOf, describeDayAndYear } from '../../words/dates.ts';
import { GROUND_WORDS } from '../../words/ground.ts';
import { BATCH_WORDS as WORDS } from '../../words/ground-batches.ts';
import { AddByName } from './add-by-name.tsx';

/** A heap of one's own does not come: it is begun, and when that was only the grower can say. */
const comes = (what: string): boolean => what !== 'own-compost';

/** All loads and heaps, the newest first, and how each stands today. */
export function BatchesPage() {
  const all = garden.value;
  const today = dayOf(new Date());
  const [what, setWhat] = useState('');
  const [came, setCame] = useState(today);
  if (!all) return <h1 tabIndex={-1}>{WORDS.title}</h1>;
  const ordered = [...all.batches].sort((a, b) => ((a.arrivedOn ?? '') < (b.arrivedOn ?? '') ? 1 : -1));
  const add = async (name: string): Promise<string> => {
    const made = withFields(newBatch(name, what, came, nowStamp()), {
      arrivedOn: comes(what) && came !== '' ? came : undefined,
    });
    const saved = await keepWithUndo([made], WORDS.added(name.trim()));
    if (saved !== 'stored') return GROUND_WORDS.trouble[saved];
    setWhat('');
    setCame(today);
    return '';
  };
  return (
    <div class="ground stack-wide">
      <div>
        <BackLink to={{ place: 'ground' }} says={GROUND_WORDS.toGround} />
        <h1 tabIndex={-1}>{WORDS.title}</h1>
      </div>
      {ordered.length === 0 && <p class="soft">{WORDS.none}</p>}
      <ul>
        {ordered.map((batch) => {
          const now = heapNow(all, batch, today);
          return (
            <li key={batch.id}>
              <a class="heap" href={hashOf({ place: 'ground', page: 'batches', batch: batch.id })}>
                <span class="bed-name">{batch.name}</span>
                <span class="soft">
                  {[
                    batch.what && WORDS.kinds[batch.what],
                    batch.usedUpOn
                      ? WORDS.usedUpOn(describeDayAndYear(batch.usedUpOn))
                      : now.why === 'does-not-ripen'
                        ? ''
                        : WORDS.states[now.state].toLowerCase(),
                  ]
                    .filter(Boolean)
                    .join(' · ')}
                </span>
                {now.suspected && <span class="flagged">{GROUND_WORDS.suspected}</span>}
              </a>
            </li>
          );
        })}
      </ul>
      <AddByName label={WORDS.addName} hint={WORDS.addHint} onAdd={add}>
        <label class="field">
          <span>{WORDS.what}</span>
          <select value={what} onChange={(event) => setWhat(event.currentTarget.value)}>
            <option value="">{GROUND_WORDS.notSaid}</option>
            {BATCH_KINDS.map((id) => (
              <option key={id} value={id}>
                {WORDS.kinds[id]}
              </option>
            ))}
          </select>
        </label>
        {comes(what) && <DayField label={WORDS.arrived} value={came} max={today} onDay={setCame} />}
      </AddByName>
    </div>
  );
}
