import type { Zone } from '../days/growing-year.ts';
import { COMPOST_STATES, type CompostState, judgeCompost } from '../garden/compost-state.ts';
import {
  chanceOfBite,
  chanceStillRotting,
  mixOf,
  reachOf,
  slowestOf,
  type Warmth,
} from '../garden/lock-up.ts';
import { type Material, materialOf, STRAW_OR_HAY, WOOD_OR_STRAW } from '../garden/materials.ts';
import { warmthSince } from '../season/soil-temperature.ts';
import { type Chain, middleOfBand, type Said } from './chain-leanings.ts';
import { heapOf } from './lean-on-hot-compost.ts';
import { type NumberSetting, SETTINGS } from './settings.ts';

/** What the answers are weighed in. */
export interface Surroundings {
  /** ISO date of the look. */
  readonly date?: string;
  readonly zone: Zone;
  /** Mean soil temperature since it was mixed in, °C, where weather records give it. */
  readonly soilCelsius?: number;
}

/**
 * Odds multipliers of a lock-up where the soil ties nitrogen up, and where it does not. The second is the scale's
 * "far less"; the first is set so that wood among the roots, not known since when, leans "far more" (our own scale).
 */
const TIED_UP_ODDS = 14.5;
const FREE_ODDS = 1 / 9;

const WEEKS: NumberSetting = SETTINGS['weeks-since-mixed-in'];
const { rate: WOOD_RATE } = SETTINGS['wood-in-root-zone'];
const { rate: MULCH_RATE } = SETTINGS['wood-on-surface'];

/** Share of beds that had something put on them, where nobody has said what (rate of "nothing": compost-kinds and our own). */
const SOMETHING_BROUGHT = 0.6;

/** How far a state of compost is still raw in what it does to nitrogen (common practice, no source). */
const RAWNESS: Record<CompostState, number> = { fresh: 1, hot: 1, curing: 0.3, finished: 0 };

/** What a kind is, raw and finished. Biochar and ash hardly rot, "nothing" is nothing; wood is weighed where it lies (`chanceOfWood`). */
const KINDS: Readonly<Record<string, { readonly raw: Material; readonly finished: Material }>> = {
  'own-compost': { raw: materialOf('unfinished-compost'), finished: materialOf('finished-compost') },
  'green-waste': { raw: materialOf('unfinished-compost'), finished: materialOf('finished-compost') },
  'cattle-manure': { raw: materialOf('cattle-manure'), finished: materialOf('farmyard-manure-rotted') },
  'horse-manure': { raw: materialOf('horse-manure'), finished: materialOf('farmyard-manure-rotted') },
  'poultry-manure': { raw: materialOf('poultry-manure'), finished: materialOf('poultry-manure') },
  'manure-unknown': { raw: materialOf('horse-manure'), finished: materialOf('farmyard-manure-rotted') },
  'mushroom-compost': { raw: materialOf('mushroom-compost'), finished: materialOf('mushroom-compost') },
  'bagged-compost': { raw: materialOf('bagged-compost'), finished: materialOf('bagged-compost') },
  'straw-or-hay': { raw: STRAW_OR_HAY, finished: STRAW_OR_HAY },
  'grass-clippings': { raw: materialOf('grass-clippings'), finished: materialOf('grass-clippings') },
  'leaf-mould': { raw: materialOf('leaf-mould'), finished: materialOf('leaf-mould') },
};
const SOME_COMPOST = KINDS['own-compost']!;

interface Time {
  readonly weeks: number;
  readonly rate: number;
}

/** Weeks that stand for an open question, with their shares. */
const USUAL_WEEKS: readonly Time[] = WEEKS.bands.map(({ rate }, index) => ({
  weeks: middleOfBand(WEEKS, index),
  rate,
}));

/** Wood that is still to be found has not been there for long: its share found after weeks, halved each half year (our own). */
const SEEN_WEEKS: readonly Time[] = (() => {
  const seen = USUAL_WEEKS.map(({ weeks, rate }) => ({ weeks, rate: rate * 0.5 ** (weeks / 26) }));
  const sum = seen.reduce((total, { rate }) => total + rate, 0);
  return seen.map(({ weeks, rate }) => ({ weeks, rate: rate / sum }));
})();

const usualWeeks = (said: Said): readonly Time[] =>
  said['wood-in-root-zone'] === true ? SEEN_WEEKS : USUAL_WEEKS;

const MANURES: readonly string[] = ['cattle-manure', 'horse-manure', 'poultry-manure', 'manure-unknown'];

/** How raw what went on was, 0–1, from all that is said of the heap. */
function rawnessOf(said: Said, kinds: readonly string[] | undefined): number {
  const isManure = kinds?.some((kind) => MANURES.includes(kind)) ?? false;
  const chances = judgeCompost({ ...heapOf(said), ...(isManure ? { kind: 'manure' } : {}) });
  return COMPOST_STATES.reduce((sum, state) => sum + RAWNESS[state] * chances[state], 0);
}

/** Chance that what went on the bed was worked in rather than left on top (common practice, no source). */
function shareWorkedIn(said: Said): number {
  if (said['weeks-since-mixed-in'] !== undefined) return 1;
  const disturbed = said['bed-disturbed'];
  return disturbed === undefined ? 0.5 : disturbed ? 0.9 : 0.2;
}

/** Every material has a number, so that what a mix of them is and does is computed once. */
const numbers = new Map<Material, number>();
function keyOf(materials: readonly Material[]): string {
  return materials
    .map((material) => {
      const number = numbers.get(material) ?? numbers.size;
      numbers.set(material, number);
      return number;
    })
    .join();
}

function onceFor<Found>(work: (materials: readonly Material[]) => Found) {
  const known = new Map<string, Found>();
  return (materials: readonly Material[]): Found => {
    const key = keyOf(materials);
    const found = known.get(key) ?? work(materials);
    known.set(key, found);
    return found;
  };
}
const mixedOnce = onceFor(mixOf);
const biteOf = onceFor(chanceOfBite);

/** Something that may be there, and how likely it is. */
interface Maybe {
  readonly materials: readonly Material[];
  readonly chance: number;
}

const kindsIn = (said: Said): readonly string[] => (said['compost-kinds'] ?? []) as readonly string[];

/** What may have gone on the bed besides wood: things that exclude each other, raw or finished. */
function broughtOf(said: Said): Maybe[] {
  const kinds = said['compost-kinds'] as readonly string[] | undefined;
  const raw = rawnessOf(said, kinds);
  const named = kinds ? kinds.flatMap((kind) => KINDS[kind] ?? []) : [SOME_COMPOST];
  const chance = kinds ? 1 : SOMETHING_BROUGHT;
  if (named.length === 0) return [];
  // As one thing: wood found among the roots is half of what rots there, however many kinds beside it are named.
  return [
    { materials: [mixedOnce(named.map((kind) => kind.raw))], chance: chance * raw },
    { materials: [mixedOnce(named.map((kind) => kind.finished))], chance: chance * (1 - raw) },
  ];
}

/** Wood in the soil: as answered; where it is open, by whether wood went on, and less likely on a bed that had nothing this year. */
function chanceOfWood(said: Said): number {
  const wood = said['wood-in-root-zone'];
  if (wood !== undefined) return wood ? 1 : 0;
  if (kindsIn(said).includes('wood')) return shareWorkedIn(said);
  return kindsIn(said).includes('none') ? WOOD_RATE / 4 : WOOD_RATE;
}

/** Wood on top: as answered; where it is open, wood that went on lies there unless it is in the soil. */
function chanceOfMulch(said: Said): number {
  const mulch = said['wood-on-surface'];
  if (mulch !== undefined) return mulch ? 1 : 0;
  return kindsIn(said).includes('wood') ? Math.max(MULCH_RATE, 1 - chanceOfWood(said)) : MULCH_RATE;
}

/** What may lie in the soil, as ways that exclude each other, and what may lie on top. */
function layersOf(said: Said): { readonly inSoil: readonly Maybe[]; readonly onTop: readonly Maybe[] } {
  const wood = chanceOfWood(said);
  const kinds = kindsIn(said);
  const brought = broughtOf(said);
  // Straw is among what the question about wood in the soil asks for: its answer settles where the straw is.
  const onlyStraw =
    kinds.includes('straw-or-hay') && kinds.every((kind) => kind === 'straw-or-hay' || kind === 'wood');
  const workedIn = onlyStraw && said['wood-in-root-zone'] !== undefined ? wood : shareWorkedIn(said);
  const nothingBeside = 1 - workedIn * brought.reduce((sum, { chance }) => sum + chance, 0);
  return {
    inSoil: [
      { materials: [WOOD_OR_STRAW], chance: wood * nothingBeside },
      ...brought.flatMap(({ materials, chance }) => [
        { materials: [WOOD_OR_STRAW, ...materials], chance: wood * workedIn * chance },
        { materials, chance: (1 - wood) * workedIn * chance },
      ]),
    ],
    onTop: [
      { materials: [WOOD_OR_STRAW], chance: chanceOfMulch(said) },
      ...brought.map(({ materials, chance }) => ({ materials, chance: (1 - workedIn) * chance })),
    ],
  };
}

const SHALLOW: readonly unknown[] = ['seedling', 'just-planted'];

/** Chance that the soil ties up so much nitrogen that plants go short: over all that is open and every published spread. */
function chanceTiedUp(said: Said, { date, zone, soilCelsius }: Surroundings): number {
  const weeks = said['weeks-since-mixed-in'] as number | undefined;
  const times = weeks === undefined ? usualWeeks(said) : [{ weeks, rate: 1 }];
  const { inSoil, onTop } = layersOf(said);
  const reach = reachOf({ pieces: 'unknown', shallowRoots: SHALLOW.includes(said['crop-stage']) });
  let tiedUp = 0;
  for (const { weeks: since, rate } of times) {
    const warmth: Warmth = warmthSince(since, date, zone, soilCelsius);
    const left = new Map<Material['tiesUpFor'], number>();
    const locked = ({ materials, chance }: Maybe): number => {
      if (chance === 0) return 0;
      const slowest = slowestOf(materials);
      const rotting = left.get(slowest.tiesUpFor) ?? chanceStillRotting(slowest, warmth);
      left.set(slowest.tiesUpFor, rotting);
      return chance * biteOf(materials) * rotting;
    };
    const deep = inSoil.reduce((sum, maybe) => sum + locked(maybe), 0);
    const free = onTop.reduce((product, maybe) => product * (1 - reach * locked(maybe)), 1 - deep);
    tiedUp += rate * (1 - free);
  }
  return tiedUp;
}

/** Half a sentence on the time since it was mixed in. */
function sayTime(said: Said, { date, zone, soilCelsius }: Surroundings): string {
  const weeks = said['weeks-since-mixed-in'] as number;
  const wood = said['wood-in-root-zone'] === true || kindsIn(said).includes('wood');
  const warmth = warmthSince(weeks, date, zone, soilCelsius);
  const left = chanceStillRotting(wood ? WOOD_OR_STRAW : SOME_COMPOST.raw, warmth);
  if (left > 0.7) return 'since then the soil has not had the warmth to rot it';
  if (left < 0.3) return 'since then the soil has been warm long enough to give most of the nitrogen back';
  return 'since then it may have rotted by half, more or less';
}

const SAY_KINDS: Readonly<Record<string, string>> = {
  wood: 'wood holds far more carbon for its nitrogen than rotting leaves to the plants',
  'straw-or-hay': 'straw holds far more carbon for its nitrogen than rotting leaves to the plants',
  'horse-manure': 'horse manure with its bedding holds much carbon',
  'manure-unknown': 'manure with its bedding may hold much carbon',
  'poultry-manure': 'poultry manure brings more nitrogen than its rotting takes',
  'leaf-mould': 'leaf mould has carbon to spare but rots slowly',
};

/**
 * How what was mixed in, when, and in how much warmth since leans on a lock-up: the chance of a tie-up, taken over
 * every published spread, between the odds of a bed that ties nitrogen up and those of one that does not.
 */
export function lockUpChain(surroundings: Surroundings): Chain {
  return {
    cause: 'nitrogen-locked',
    order: [
      'wood-in-root-zone',
      'wood-on-surface',
      'compost-kinds',
      'weeks-since-mixed-in',
      'compost-state',
      'compost-celsius',
      'compost-age',
      'compost-ammonia',
    ],
    odds: (said) => {
      const tiedUp = chanceTiedUp(said, surroundings);
      return tiedUp * TIED_UP_ODDS + (1 - tiedUp) * FREE_ODDS;
    },
    because: (id, said, by) => {
      if (id === 'weeks-since-mixed-in') return sayTime(said, surroundings);
      if (id === 'compost-kinds') {
        const kinds = said['compost-kinds'] as readonly string[];
        const kind = kinds.find((one) => one in SAY_KINDS && (one === 'poultry-manure') === by < 1);
        if (kind) return SAY_KINDS[kind];
        return by < 1 && !kinds.includes('none') ? 'it brings nitrogen of its own' : undefined;
      }
      return undefined;
    },
  };
}
