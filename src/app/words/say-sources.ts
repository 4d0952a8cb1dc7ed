import type { Garden } from '../../garden/gather-garden.ts';
import type { RecordReference } from '../../garden/records.ts';
import { isSuspected } from '../../garden/trace-batches.ts';
import { describeDay } from './dates.ts';
import { FROM_RECORDS_WORDS as WORDS } from './from-records.ts';
import { GROUND_WORDS } from './ground.ts';
import { namePlanting } from './name-planting.ts';

/** Where an answer comes from: the bed, what was done, the day. `on`: the bed and the day of the look. */
export function saySources(
  garden: Garden,
  says: readonly RecordReference[],
  on: { readonly bedId: string | undefined; readonly day: string },
): string {
  const weather = says.filter(({ kind }) => kind === 'weather');
  const others = says.filter(({ kind }) => kind !== 'weather');
  const said = others.map((one) => saySource(garden, one, on));
  if (weather.length > 0) said.push(sayWeather(garden, weather, on.day));
  return said.filter(Boolean).join('; ');
}

function sayWeather(garden: Garden, says: readonly RecordReference[], today: string): string {
  const ids = new Set(says.map(({ id }) => id));
  const days = garden.weather.filter(({ id }) => ids.has(id)).map(({ date }) => date);
  const [first = today, last = first] = [days[0], days.at(-1)];
  if (days.length <= 1) return WORDS.weatherDay(describeDay(first, today));
  return WORDS.weatherDays(days.length, describeDay(first, today), describeDay(last, today));
}

function saySource(
  garden: Garden,
  { kind, id }: RecordReference,
  { bedId, day: today }: { readonly bedId: string | undefined; readonly day: string },
): string {
  const bedName = (of: string | undefined): string => garden.beds.find((bed) => bed.id === of)?.name ?? '';
  if (kind === 'bed') return WORDS.bed(bedName(id));
  if (kind === 'planting') {
    const found = garden.plantings.find((one) => one.id === id);
    if (!found) return '';
    const { plantedOn, sownOn } = found;
    const day = plantedOn
      ? WORDS.plantedOn(describeDay(plantedOn, today))
      : sownOn
        ? WORDS.sownOn(describeDay(sownOn, today))
        : '';
    return WORDS.planting(namePlanting(found), day);
  }
  if (kind === 'event') {
    const found = garden.events.find((one) => one.id === id);
    if (!found) return '';
    const much = found.amount ? GROUND_WORDS.amounts[found.amount] : undefined;
    const what = GROUND_WORDS.events[found.what] + (much ? `, ${much}` : '');
    return WORDS.event(what, bedName(found.bedId), describeDay(found.date, today));
  }
  const batch = garden.batches.find((one) => one.id === id);
  if (!batch) return '';
  const given = batch.given.filter((one) => one.bedId === bedId && one.date <= today);
  if (given.length === 0) return batch.name;
  return given
    .map(({ depthCm, how, date }) => {
      const details = [
        depthCm === undefined ? '' : GROUND_WORDS.deep(depthCm),
        how ? GROUND_WORDS.ways[how].toLowerCase() : '',
      ];
      return WORDS.spread(
        isSuspected(batch) ? WORDS.suspected(batch.name) : batch.name,
        details.filter(Boolean).join(' '),
        bedName(bedId),
        describeDay(date, today),
      );
    })
    .join('; ');
}
