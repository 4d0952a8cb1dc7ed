import { dayAfter, daysBetween } from '../days/days.ts';
import { yearBefore, type Zone } from '../days/growing-year.ts';
import type { Garden } from '../garden/gather-garden.ts';
import type { BatchRecord, BedRecord, PlantingRecord, Spreading } from '../garden/ground-records.ts';
import type { RecordReference } from '../garden/records.ts';
import { testedLoadsUnder } from '../garden/settle-pot-test.ts';
import { CROP_TEMPERATURES } from '../season/crop-temperatures.ts';
import { coldDaysBefore, meanSoilBetween, sumDegreeDays } from '../season/daily-weather.ts';
import type { EstimatedCelsius } from '../season/soil-temperature.ts';
import { CROP_GROUPS, type CropGroup, cropMatches } from './crops.ts';
import { SETTINGS, type Setting, type SettingId, type SettingValue } from './settings.ts';
import type { Answers } from './types.ts';
import { CROPS, type CropId } from './vocabulary.ts';

/** A setting as the records have it, and the records that say so. */
export interface RecordedSetting<Id extends SettingId = SettingId> {
  readonly value: SettingValue<Id>;
  readonly says: readonly RecordReference[];
}

/** What the garden's records say about one plant on one day. */
export interface FromRecords {
  readonly crop?: CropId;
  readonly variety?: string;
  readonly settings: { readonly [Id in SettingId]?: RecordedSetting<Id> };
  /** Settings that need not be asked although they have no value of their own: others from the same records cover them. */
  readonly covered: readonly SettingId[];
  /** Mean soil temperature since the last thing was mixed in, where weather records give it. */
  readonly soil?: EstimatedCelsius & { readonly since: string; readonly daysKnown: number };
  /** Degree-days of the air above 0 °C since then (single sine), and days without a record. */
  readonly warmth?: { readonly degreeDays: number; readonly daysMissing: number };
  /** Bayes factors of the pot tests of each tested load under the plant (`potTests` of `triage`). */
  readonly potTests?: readonly number[];
}

export interface PlantOfRecords {
  /** Ids; the bed follows from the planting. */
  readonly bedId?: string | undefined;
  readonly plantingId?: string | undefined;
  /** Day of the look. */
  readonly date: string;
  readonly zone: Zone;
  /** What the grower says of it, where no planting and no bed does: whether the weather counts hangs on it. */
  readonly crop?: CropId | undefined;
  readonly place?: SettingValue<'place'> | undefined;
}

/**
 * How long a thing holds, days. "This year" of the vocabulary is 365, "the last two months" 61, "the last month" 31, "the last
 * three weeks" 21; the others are ours (common practice, no source).
 */
const DAYS = {
  compost: 365,
  wood: 730,
  sprayedHay: 1095,
  disturbed: 61,
  habit: 400,
  sprayedNearby: 31,
  heapReading: 31,
  fed: 42,
  limed: 730,
  hotOnArrival: 14,
  seedling: 42,
  justPlanted: 14,
  weather: 21,
} as const;
/** Of 21 days so many must be known before cold ones are counted (common practice, no source). */
const LEAST_DAYS_KNOWN = 14;
/** A tenth of wood by the eye is wood mixed in (common practice, no source). */
const WOODY_SHARE = 0.1;
/** Days with a highest of 30 °C or more that make three weeks hot (common practice, no source). */
const HOT = { celsius: 30, days: 3 } as const;
const DAYS_A_MONTH = 30.4;

const WOODY = new Set<string | undefined>(['wood-chips', 'sawdust', 'straw-or-hay']);
const OF_FIELDS = new Set<string | undefined>([
  'straw-or-hay',
  'cattle-manure',
  'horse-manure',
  'poultry-manure',
  'manure-unknown',
]);
const BOTANICAL: readonly CropGroup[] = [
  'nightshade',
  'legume',
  'cucurbit',
  'brassica',
  'goosefoot',
  'carrot-family',
  'allium',
];

/** What only makes sense to ask where compost, manure or hay went on. */
const OF_COMPOST: readonly SettingId[] = [
  'compost-kinds',
  'compost-state',
  'compost-celsius',
  'compost-age',
  'compost-ammonia',
  'hay-source',
];

/** A batch as it went onto the bed. */
interface Brought {
  readonly batch: BatchRecord;
  readonly given: Spreading;
}

const named = ({ kind, id }: RecordReference): RecordReference => ({ kind, id });
const isWoody = ({ what, woodShare }: BatchRecord): boolean =>
  WOODY.has(what) || (woodShare ?? 0) >= WOODY_SHARE;
const isCrop = (word: string | undefined): word is CropId =>
  word !== undefined && (CROPS as readonly string[]).includes(word);

/** A record's word, where it is one of a setting's answers. */
function wordOf<Id extends SettingId>(id: Id, word: string | undefined): SettingValue<Id> | undefined {
  const setting: Setting = SETTINGS[id];
  if (word === undefined || setting.kind !== 'one-of') return undefined;
  return setting.options.some((option) => option.id === word) ? (word as SettingValue<Id>) : undefined;
}

/** Settings as they are found. */
interface Found {
  readonly settings: FromRecords['settings'];
  readonly covered: SettingId[];
  put<Id extends SettingId>(
    id: Id,
    value: SettingValue<Id> | undefined,
    ...says: readonly RecordReference[]
  ): void;
}

function nothingFound(): Found {
  const settings: { [Id in SettingId]?: RecordedSetting<Id> } = {};
  return {
    settings,
    covered: [],
    put: (id, value, ...says) => {
      if (value !== undefined) Object.assign(settings, { [id]: { value, says: says.map(named) } });
    },
  };
}

/**
 * Every setting that the garden's records can supply for a plant on a day, each with the records that say so. What records do not
 * speak of is left open: that nothing was written down does not mean that nothing was done.
 */
export function settingsFromRecords(garden: Garden, plant: PlantOfRecords): FromRecords {
  const planting = garden.plantings.find(({ id }) => id === plant.plantingId);
  const bed = garden.beds.find(({ id }) => id === (planting?.bedId ?? plant.bedId));
  const found = nothingFound();
  if (planting) addPlanting(found, planting, plant.date);
  if (bed) {
    addBed(found, garden, bed, plant.date);
    addRotation(found, garden, bed, planting, plant);
  }
  const brought = bed ? broughtTo(garden, bed.id, planting?.id, plant.date) : [];
  addCompost(found, brought, plant.date);
  const crop = isCrop(planting?.crop) ? planting.crop : undefined;
  addWeather(found, garden, crop ?? plant.crop, plant.place ?? bed?.place, planting, plant.date);
  const where = planting ? { plantingId: planting.id } : bed ? { bedId: bed.id } : undefined;
  const tested = where ? testedLoadsUnder(garden, where, plant.date) : [];
  const since = brought.filter(({ given }) => given.how === 'mixed-in').at(-1)?.given.date;
  return {
    ...(crop ? { crop } : {}),
    ...(planting?.variety ? { variety: planting.variety } : {}),
    settings: found.settings,
    covered: found.covered,
    ...(since === undefined ? {} : warmthFrom(garden, since, plant)),
    ...(tested.length > 0 ? { potTests: tested.map(({ ratio }) => ratio) } : {}),
  };
}

function warmthFrom(garden: Garden, since: string, { date, zone }: PlantOfRecords): Partial<FromRecords> {
  const soil = meanSoilBetween(garden.weather, since, date, zone);
  const warmth = sumDegreeDays(garden.weather, since, date, 0);
  return {
    ...(soil ? { soil: { celsius: soil.celsius, sd: soil.sd, daysKnown: soil.daysKnown, since } } : {}),
    ...(warmth.daysMissing <= daysBetween(since, date) ? { warmth } : {}),
  };
}

function addPlanting(found: Found, planting: PlantingRecord, date: string): void {
  const { plantedOn, sownOn, hardenedOff, netted, colour } = planting;
  found.put('variety-colour', wordOf('variety-colour', colour), planting);
  found.put('netted', netted, planting);
  const sincePlanted = plantedOn === undefined ? -1 : daysBetween(plantedOn, date);
  if (sincePlanted >= 0) {
    found.put('days-since-planting', sincePlanted, planting);
    found.put('hardened-off', hardenedOff, planting);
    if (sincePlanted <= DAYS.justPlanted) found.put('crop-stage', 'just-planted', planting);
    return;
  }
  const sinceSown = sownOn === undefined ? -1 : daysBetween(sownOn, date);
  if (sinceSown >= 0 && sinceSown <= DAYS.seedling) found.put('crop-stage', 'seedling', planting);
}

function addBed(found: Found, garden: Garden, bed: BedRecord, date: string): void {
  found.put('place', wordOf('place', bed.place), bed);
  found.put('soil-kind', wordOf('soil-kind', bed.soil), bed);
  const events = garden.events.filter((event) => event.bedId === bed.id && event.date <= date);
  const within = (what: string, days: number) =>
    events.filter((event) => event.what === what && daysBetween(event.date, date) <= days);
  const limed = within('limed', DAYS.limed);
  if (bed.soilReaction) found.put('soil-ph', wordOf('soil-ph', bed.soilReaction), bed);
  else if (limed.length > 0) found.put('soil-ph', 'chalky-or-limed', ...limed);
  const disturbed = within('disturbed', DAYS.disturbed);
  // Who writes down digging has not dug when nothing is written for two months.
  const habit = within('disturbed', DAYS.habit);
  if (habit.length > 0) found.put('bed-disturbed', disturbed.length > 0, ...habit.slice(-1));
  const sprayed = within('sprayed-nearby', DAYS.sprayedNearby);
  if (sprayed.length > 0) found.put('sprayed-nearby', true, ...sprayed);
  const fed = within('fed', DAYS.fed).filter(({ amount }) => wordOf('feed', amount) !== undefined);
  const strongest = fed.find(({ amount }) => amount === 'heavy') ?? fed.at(-1);
  if (strongest) found.put('feed', wordOf('feed', strongest.amount), strongest);
  const net = events.filter(({ what }) => what === 'netted' || what === 'uncovered').at(-1);
  if (net) found.put('netted', net.what === 'netted', net);
}

/** Whether the crop's family stood here in the growing year before, where the records name its crops. */
function addRotation(
  found: Found,
  garden: Garden,
  bed: BedRecord,
  planting: PlantingRecord | undefined,
  { date, zone }: PlantOfRecords,
): void {
  const crop = planting?.crop;
  const family = isCrop(crop) ? BOTANICAL.find((group) => cropMatches(crop, group)) : undefined;
  if (!family) return;
  const year = yearBefore(date, zone);
  const before = garden.plantings.filter((other) => {
    const start = other.plantedOn ?? other.sownOn;
    const there = other.id !== planting?.id && other.bedId === bed.id && isCrop(other.crop);
    return there && start !== undefined && start <= year.to && (other.clearedOn ?? start) >= year.from;
  });
  const members: readonly string[] = CROP_GROUPS[family];
  const same = before.filter((other) => members.includes(other.crop));
  if (before.length > 0)
    found.put('rotation-same-family', same.length > 0, ...(same.length > 0 ? same : before));
}

/** What was given to a bed, or to one planting in it, up to a day; oldest first. */
function broughtTo(garden: Garden, bedId: string, plantingId: string | undefined, date: string): Brought[] {
  return garden.batches
    .flatMap((batch) => batch.given.map((given) => ({ batch, given })))
    .filter(({ given }) => given.bedId === bedId && given.date <= date)
    .filter(({ given }) => given.plantingId === undefined || given.plantingId === plantingId)
    .sort((a, b) => (a.given.date < b.given.date ? -1 : a.given.date > b.given.date ? 1 : 0));
}

function addCompost(found: Found, brought: readonly Brought[], date: string): void {
  const within = (days: number): Brought[] =>
    brought.filter(({ given }) => daysBetween(given.date, date) <= days);
  const batchesOf = (some: readonly Brought[]): BatchRecord[] => [...new Set(some.map(({ batch }) => batch))];
  const recent = within(DAYS.compost);
  const kinds = SETTINGS['compost-kinds'].options.map(({ id }) => id);
  const listed = recent.filter(
    ({ batch: { what } }) => what !== undefined && kinds.includes(what as 'own-compost'),
  );
  if (listed.length > 0) {
    const said = kinds.filter((kind) => listed.some(({ batch }) => batch.what === kind));
    found.put('compost-kinds', said, ...batchesOf(listed));
  }
  // Who wrote down what went on this year, and it was wood alone, is not asked what else did, nor how ripe it was.
  if (recent.length > 0 && listed.length === 0) found.covered.push(...OF_COMPOST);
  const wood = within(DAYS.wood).filter(({ batch }) => isWoody(batch));
  const mixedWood = wood.filter(({ given }) => given.how === 'mixed-in');
  const woodOnTop = wood.filter(
    ({ given }) => given.how === 'on-top' && daysBetween(given.date, date) <= DAYS.compost,
  );
  if (mixedWood.length > 0) found.put('wood-in-root-zone', true, ...batchesOf(mixedWood));
  if (woodOnTop.length > 0) found.put('wood-on-surface', true, ...batchesOf(woodOnTop));
  else if (mixedWood.length > 0) found.covered.push('wood-on-surface');
  // Wood rots longest: where there is any among the roots, it sets the time.
  const mixed = mixedWood.at(-1) ?? recent.filter(({ given }) => given.how === 'mixed-in').at(-1);
  if (mixed)
    found.put(
      'weeks-since-mixed-in',
      Math.round((daysBetween(mixed.given.date, date) / 7) * 10) / 10,
      mixed.batch,
    );
  else if (recent.length > 0 && recent.every(({ given }) => given.how === 'on-top'))
    found.covered.push('weeks-since-mixed-in');
  const lastMixed = recent.filter(({ given }) => given.how === 'mixed-in').at(-1);
  if (lastMixed && daysBetween(lastMixed.given.date, date) <= DAYS.disturbed)
    found.put('bed-disturbed', true, lastMixed.batch);
  const rawest = listed.length > 0 ? rawestOf(listed) : undefined;
  if (rawest) addState(found, rawest);
  addFields(found, within(DAYS.sprayedHay));
}

/** Of several batches the one that was hottest, else that came last: it decides what harm may come. */
function rawestOf(brought: readonly Brought[]): Brought {
  const heat = ({ batch, given }: Brought): number =>
    hottestBefore(batch, given.date) ?? (batch.hotOnArrival ? 50 : 0);
  return brought.reduce((raw, one) => (heat(one) >= heat(raw) ? one : raw));
}

const readingsBefore = (batch: BatchRecord, date: string) =>
  batch.readings.filter(
    (reading) => reading.date <= date && daysBetween(reading.date, date) <= DAYS.heapReading,
  );

function hottestBefore(batch: BatchRecord, date: string): number | undefined {
  const readings = readingsBefore(batch, date).map(({ celsius }) => celsius);
  return readings.length > 0 ? Math.max(...readings) : undefined;
}

/** The state of a batch when it went on. */
function addState(found: Found, { batch, given }: Brought): void {
  const hottest = hottestBefore(batch, given.date);
  const arrivedHot =
    batch.hotOnArrival === true &&
    batch.arrivedOn !== undefined &&
    daysBetween(batch.arrivedOn, given.date) <= DAYS.hotOnArrival;
  found.put('compost-celsius', hottest, batch);
  const told = wordOf('compost-state', batch.told);
  if (told) found.put('compost-state', told, batch);
  else if (arrivedHot && hottest === undefined) found.put('compost-state', 'hot', batch);
  const smell = readingsBefore(batch, given.date)
    .filter(({ smellsOfAmmonia }) => smellsOfAmmonia !== undefined)
    .at(-1);
  found.put('compost-ammonia', smell?.smellsOfAmmonia, batch);
  if (batch.startedOn === undefined || batch.startedOn > given.date) return;
  found.put('compost-age', Math.round(daysBetween(batch.startedOn, given.date) / DAYS_A_MONTH), batch);
}

/** Hay, straw and manure: from sprayed fields if any may be, from clean ones only if all are. */
function addFields(found: Found, brought: readonly Brought[]): void {
  const ofFields = brought.filter(({ batch }) => OF_FIELDS.has(batch.what)).map(({ batch }) => batch);
  if (ofFields.length === 0) return;
  const saying = (word: string): BatchRecord[] =>
    ofFields.filter(({ sprayedFields }) => sprayedFields === word);
  if (saying('yes').length > 0) found.put('hay-source', 'yes', ...saying('yes'));
  else if (saying('unknown').length > 0) found.put('hay-source', 'unknown', ...saying('unknown'));
  else if (saying('no').length === ofFields.length) found.put('hay-source', 'no', ...ofFields);
}

function addWeather(
  found: Found,
  garden: Garden,
  crop: CropId | undefined,
  place: string | undefined,
  planting: PlantingRecord | undefined,
  date: string,
): void {
  // Under a roof it is another weather than the one that was written down.
  if (place === 'under-cover' || place === 'windowsill') return;
  const from = dayAfter(date, 1 - DAYS.weather);
  const outSince = planting?.plantedOn !== undefined && planting.plantedOn > from ? planting.plantedOn : from;
  const days = garden.weather.filter((day) => !day.forecast && day.date >= from && day.date <= date);
  const soil = days.filter((day) => day.soilCelsius !== undefined && daysBetween(day.date, date) <= 2).at(-1);
  found.put('soil-celsius', soil?.soilCelsius, ...(soil ? [soil] : []));
  const frosty = days.filter(
    ({ minCelsius, date: on }) => minCelsius !== undefined && minCelsius <= 0 && on >= outSince,
  );
  const hot = days.filter(({ maxCelsius }) => maxCelsius !== undefined && maxCelsius >= HOT.celsius);
  if (frosty.length > 0) found.put('recent-temperature', 'frost', ...frosty);
  else if (hot.length >= HOT.days) found.put('recent-temperature', 'hot', ...hot);
  const below = crop === undefined ? undefined : CROP_TEMPERATURES[crop]?.coldBelowCelsius;
  if (below === undefined) return;
  const { cold, known } = coldDaysBefore(garden.weather, date, below, DAYS.weather);
  if (known < LEAST_DAYS_KNOWN) return;
  found.put('cold-days', Math.round((cold * DAYS.weather) / known), ...days);
  // The word for these weeks comes from the same days: beside the count it would count twice.
  if (!found.settings['recent-temperature']) found.covered.push('recent-temperature');
}

/**
 * What the records still say once the grower says that some of it does not hold. Whoever says that a load never went on, or
 * that it is no wood, need not also say that it was not mixed in: what stands on that load alone goes too. What was not asked
 * because of it may be asked again.
 */
export function withoutOverruled(records: FromRecords, overruled: readonly SettingId[]): FromRecords {
  if (overruled.length === 0) return records;
  const loadsOf = (id: SettingId): string[] => records.settings[id]?.says.map((one) => one.id) ?? [];
  const kinds = loadsOf('compost-kinds');
  const denied = new Set([
    ...(overruled.includes('compost-kinds') ? kinds : []),
    ...(overruled.includes('wood-in-root-zone')
      ? loadsOf('wood-in-root-zone').filter((id) => !kinds.includes(id))
      : []),
  ]);
  const falls = (id: SettingId, { says }: RecordedSetting): boolean =>
    overruled.includes(id) ||
    (says.length > 0 && says.every((one) => one.kind === 'batch' && denied.has(one.id)));
  const standing = (Object.entries(records.settings) as [SettingId, RecordedSetting][]).filter(
    ([id, recorded]) => !falls(id, recorded),
  );
  const settings: FromRecords['settings'] = Object.fromEntries(standing);
  const { soil, warmth, potTests, ...others } = records;
  return {
    ...others,
    settings,
    covered:
      denied.size > 0 ? [] : records.covered.filter((id) => !overruled.includes(REASON_TO_SKIP[id] ?? id)),
    // Who denies a load denies what its pots said.
    ...(potTests && denied.size === 0 ? { potTests } : {}),
    // The warmth is counted from the day on which something was mixed in.
    ...(settings['weeks-since-mixed-in'] && soil ? { soil } : {}),
    ...(settings['weeks-since-mixed-in'] && warmth ? { warmth } : {}),
  };
}

/** Of what is not asked: the setting that makes it needless. */
const REASON_TO_SKIP: { readonly [Id in SettingId]?: SettingId } = {
  'recent-temperature': 'cold-days',
  'weeks-since-mixed-in': 'compost-kinds',
};

/** Recorded settings that do not hold: set aside by name, or answered otherwise. */
export const overruledIn = ({ setting, notAsRecorded = [] }: Answers, records: FromRecords): SettingId[] => {
  const other = (Object.entries(records.settings) as [SettingId, RecordedSetting][])
    .filter(([id, { value }]) => setting[id] !== undefined && !isSame(setting[id], value))
    .map(([id]) => id);
  return [...new Set([...notAsRecorded, ...other])];
};

const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * The answers with everything that records supply filled in. What the grower answers stays: a record is overruled by answering
 * otherwise, or by naming the setting in `notAsRecorded` ("no, and I cannot say").
 */
export function withRecords(answers: Answers, records: FromRecords): Answers {
  const filled = Object.entries(withoutOverruled(records, overruledIn(answers, records)).settings).filter(
    ([id]) => answers.setting[id as SettingId] === undefined,
  ) as [SettingId, RecordedSetting][];
  const crop = answers.crop ?? records.crop;
  const variety = answers.variety ?? records.variety;
  return {
    ...answers,
    ...(crop ? { crop } : {}),
    ...(variety ? { variety } : {}),
    setting: { ...answers.setting, ...Object.fromEntries(filled.map(([id, { value }]) => [id, value])) },
    recorded: filled.map(([id]) => id),
  };
}
