import './from-records.css';
import { useRef, useState } from 'preact/hooks';
import type { Garden } from '../../../garden/gather-garden.ts';
import type { PlantingRecord } from '../../../garden/ground-records.ts';
import { standingIn } from '../../../garden/standing-in.ts';
import { SETTINGS, type SettingId } from '../../../signs/settings.ts';
import type { FromRecords, RecordedSetting } from '../../../signs/settings-from-records.ts';
import { CROPS, type CropId } from '../../../signs/vocabulary.ts';
import { change } from '../../state/change-look.ts';
import { dateOfLook, type Where } from '../../state/draft.ts';
import { garden } from '../../state/garden.ts';
import { draft } from '../../state/look-in-hand.ts';
import { askAbout } from '../../state/question.ts';
import { answersInHand, recordsOfLook } from '../../state/weigh-look.ts';
import { capitalise } from '../../words/causes.ts';
import { describeDay } from '../../words/dates.ts';
import { FROM_RECORDS_WORDS as WORDS } from '../../words/from-records.ts';
import { namePlantingAmong } from '../../words/name-planting.ts';
import { saySources } from '../../words/say-sources.ts';
import { describeSettingValue } from '../../words/settings.ts';

/** One line: where the plant stands and how much the records answer. Opened: the beds to choose from, or what they answer. */
export function FromRecordsPart() {
  const [open, setOpen] = useState(false);
  const line = useRef<HTMLElement>(null);
  const all = garden.value;
  const found = recordsOfLook.value;
  if (!all || (all.beds.length === 0 && !found)) return <p class="link-line" />;
  const { where } = draft.value;
  const count = answersInHand.value.recorded?.length ?? 0;
  const chosen = (): void => {
    setOpen(false);
    // The button that was pressed is gone: a keyboard goes on from the line.
    line.current?.focus();
  };
  return (
    <details class="from-records" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary ref={line}>
        <span>
          <span class="from-records-where">{where ? WORDS.inBed(bedName(all, where)) : WORDS.ask}</span>{' '}
          <span class="small soft">
            {found === 'reading' ? '…' : (where || count > 0) && WORDS.count(count)}
          </span>
        </span>
      </summary>
      {open && (
        <div class="stack">
          {!where && all.beds.length > 0 && <Beds all={all} onChosen={chosen} />}
          {where?.plantingId && <p class="small">{sayPlanting(all, where)}</p>}
          {found && found !== 'reading' && <Recorded all={all} found={found} />}
          {where && (
            <button
              type="button"
              class="button-plain small"
              onClick={() => change({ kind: 'stand-in', where: undefined })}
            >
              {WORDS.elsewhere}
            </button>
          )}
        </div>
      )}
    </details>
  );
}

const bedName = (all: Garden, { bedId, bed }: Where): string =>
  all.beds.find(({ id }) => id === bedId)?.name ?? bed;

function sayPlanting(all: Garden, where: Where): string | undefined {
  const planting = all.plantings.find(({ id }) => id === where.plantingId);
  return planting && WORDS.standsIn(bedName(all, where), namePlantingAmong(planting, all.plantings));
}

/** Every bed in the order of the walk, with what grows in it; each is one tap. */
function Beds({ all, onChosen }: { readonly all: Garden; readonly onChosen: () => void }) {
  const { day } = dateOfLook(draft.value);
  const choose = (where: Where, planting?: PlantingRecord): void => {
    const crop = CROPS.find((one) => one === planting?.crop) as CropId | undefined;
    change({
      kind: 'stand-in',
      where,
      ...(crop ? { crop } : {}),
      ...(planting?.variety ? { variety: planting.variety } : {}),
    });
    onChosen();
  };
  return (
    <>
      <p class="small soft">{WORDS.askWhy}</p>
      <ul class="where-beds" aria-label={WORDS.beds}>
        {all.beds.map(({ id, name }) => {
          const where: Where = { bedId: id, bed: name };
          const plantings = standingIn(all, id, day);
          return (
            <li key={id}>
              <button
                type="button"
                class="where-bed"
                {...(plantings.length > 0 ? { 'aria-label': WORDS.bedOnly(name) } : {})}
                onClick={() => choose(where)}
              >
                {name}
              </button>
              {plantings.length > 0 && (
                <ul class="where-plantings">
                  {plantings.map((planting) => (
                    <li key={planting.id}>
                      <button
                        type="button"
                        class="crop"
                        aria-label={WORDS.standsIn(name, namePlantingAmong(planting, plantings))}
                        onClick={() => choose({ ...where, plantingId: planting.id }, planting)}
                      >
                        {namePlantingAmong(planting, plantings)}
                      </button>
                    </li>
                  ))}
                </ul>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What the records answer, grouped by where it comes from, each with where it comes from and a way to set it aside. */
function Recorded({ all, found }: { readonly all: Garden; readonly found: FromRecords }) {
  const settings = Object.entries(found.settings) as [SettingId, RecordedSetting][];
  const { day } = dateOfLook(draft.value);
  if (settings.length === 0) return null;
  const { soil } = found;
  const bySource = new Map<string, [SettingId, RecordedSetting][]>();
  for (const one of settings) {
    const from = saySources(all, one[1].says, { bedId: bedOf(all, draft.value.where), day });
    bySource.set(from, [...(bySource.get(from) ?? []), one]);
  }
  const stands = answersInHand.value.recorded?.includes('weeks-since-mixed-in');
  return (
    <section class="stack-close" aria-label={WORDS.title}>
      <p class="small soft">{WORDS.notAsked}</p>
      {[...bySource].map(([from, lines]) => (
        <section key={from} class="recorded-group">
          <h3 class="small">{capitalise(from)}</h3>
          <ul>
            {lines.map(([id, recorded]) => (
              <RecordedLine key={id} id={id} recorded={recorded} />
            ))}
          </ul>
        </section>
      ))}
      {soil && stands && (
        <p class="small soft">{WORDS.soil(Math.round(soil.celsius), describeDay(soil.since, day))}</p>
      )}
    </section>
  );
}

interface RecordedLineProps {
  readonly id: SettingId;
  readonly recorded: RecordedSetting;
}

function RecordedLine({ id, recorded }: RecordedLineProps) {
  const { answers } = draft.value;
  const own: unknown = answers.setting[id];
  const isNamed = answers.notAsRecorded?.includes(id) ?? false;
  const stands = answersInHand.value.recorded?.includes(id) ?? false;
  const what = `${capitalise(SETTINGS[id].says)}: ${describeSettingValue(id, recorded.value)}`;
  return (
    <li class={`recorded-line${stands ? '' : ' set-aside'}`}>
      <span>
        {stands ? what : <s>{what}</s>}
        {!stands && (
          <span class="small">
            {own !== undefined
              ? WORDS.youSay(describeSettingValue(id, own))
              : isNamed
                ? WORDS.setAside
                : WORDS.setAsideWith}
          </span>
        )}
      </span>
      {(stands || isNamed || own !== undefined) && (
        <button
          type="button"
          class="button-plain small"
          aria-label={stands ? WORDS.notSoThis(what) : WORDS.restoreThis(what)}
          onClick={() => {
            change({ kind: 'overrule-record', setting: id, overruled: stands });
            // Who knows it otherwise is asked how it is.
            if (stands) askAbout(id);
          }}
        >
          {stands ? WORDS.notSo : WORDS.restore}
        </button>
      )}
    </li>
  );
}

const bedOf = (all: Garden, where: Where | undefined): string | undefined =>
  all.plantings.find(({ id }) => id === where?.plantingId)?.bedId ?? where?.bedId;
