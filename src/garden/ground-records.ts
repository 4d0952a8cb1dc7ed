/**
 * The ground and what is done to it: beds, loads of compost, plantings, weather. All days are `YYYY-MM-DD`. Words of the
 * vocabulary (crops, places, colours, soils) travel through here unopened. Everything but the name of a thing may be left
 * out: what was not said is unknown, never "no".
 */
import type { Stamp } from './records.ts';
import type { RipenessTest } from './ripeness-test.ts';
import type { SeenByNetwork } from './seen-by-network.ts';
import type { TrialRecord } from './trial-record.ts';

/** A bed, or a pot (its place is `container` or `windowsill`). */
export interface BedRecord extends Stamp {
  readonly kind: 'bed';
  readonly name: string;
  /** Place in the walk round the garden; beds without one come after, by name. */
  readonly order?: number;
  /** `open-ground`, `under-cover`, `container`, `windowsill`. */
  readonly place?: string;
  /** `sandy`, `loam`, `clay`, `potting-mix`. */
  readonly soil?: string;
  /** `acid`, `about-neutral`, `chalky-or-limed`. */
  readonly soilReaction?: string;
  readonly note: string;
}

export const EVENTS = ['disturbed', 'limed', 'fed', 'sprayed-nearby', 'netted', 'uncovered'] as const;
export type EventWhat = (typeof EVENTS)[number];

/** Something that was done to a bed or happened to it on one day. What was spread on it stands in the batch. */
export interface EventRecord extends Stamp {
  readonly kind: 'event';
  readonly bedId: string;
  readonly date: string;
  /** `disturbed`: dug, forked or rotavated. */
  readonly what: EventWhat;
  /** How much, where it was fed: `light` or `heavy`. */
  readonly amount?: string;
  readonly note: string;
}

/** What a batch is: the kinds that the vocabulary asks for, and wood. */
export const BATCH_KINDS = [
  'own-compost',
  'green-waste',
  'cattle-manure',
  'horse-manure',
  'poultry-manure',
  'manure-unknown',
  'mushroom-compost',
  'bagged-compost',
  'straw-or-hay',
  'grass-clippings',
  'leaf-mould',
  'biochar-or-ash',
  'wood-chips',
  'sawdust',
] as const;
export type BatchKind = (typeof BATCH_KINDS)[number];

/** One look with the thermometer into the middle of a heap. */
export interface HeapReading {
  readonly id: string;
  readonly date: string;
  readonly celsius: number;
  /** Air at that time. */
  readonly airCelsius?: number;
  /** Turned on that day, after reading. */
  readonly turned?: true;
  readonly smellsOfAmmonia?: boolean;
}

export const SPREADING_WAYS = ['mixed-in', 'on-top'] as const;
export type SpreadingWay = (typeof SPREADING_WAYS)[number];

/** Part of a batch given to a bed or pot. */
export interface Spreading {
  readonly id: string;
  readonly date: string;
  readonly bedId: string;
  /** Where it went to one planting only. */
  readonly plantingId?: string;
  readonly depthCm?: number;
  /** Absent: not said. */
  readonly how?: SpreadingWay;
}

/** Whether a batch may be spread. Once there was a suspicion it stays on record, released or not. */
export interface Suspicion {
  readonly state: 'suspected' | 'released';
  /** Day since which it is suspected; of a release, the day of that. */
  readonly on: string;
  /** The grower's own words; of a release by a pot test, that test's sentence. */
  readonly why: string;
  readonly caseId?: string;
  /** The pot test that says so. */
  readonly potTestId?: string;
  /** The sentence of the test that stopped it, beside what the grower said. */
  readonly potTestSays?: string;
}

/** One load of compost, manure, straw or wood, or one heap. */
export interface BatchRecord extends Stamp {
  readonly kind: 'batch';
  readonly name: string;
  /** Absent: not said. */
  readonly what?: BatchKind;
  /** Where it comes from, in words. */
  readonly source: string;
  /** Could the hay, straw or manure in it come from sprayed fields: `no`, `unknown`, `yes`. */
  readonly sprayedFields?: string;
  readonly arrivedOn?: string;
  /** When the heap was begun, where that is known. */
  readonly startedOn?: string;
  readonly hotOnArrival?: boolean;
  /** What the grower calls it: `finished`, `fresh`, `still-warm`, `hot`. */
  readonly told?: string;
  /** Share of wood, chips or sawdust by the eye, 0–1. */
  readonly woodShare?: number;
  /** In order of date. */
  readonly readings: readonly HeapReading[];
  readonly given: readonly Spreading[];
  readonly suspicion?: Suspicion;
  /** Home tests of ripeness, in order of date; absent: none. */
  readonly ripeness?: readonly RipenessTest[];
  /** Day on which nothing was left. */
  readonly usedUpOn?: string;
  readonly note: string;
}

/** A crop in a bed, from sowing to clearing. */
export interface PlantingRecord extends Stamp {
  readonly kind: 'planting';
  /** Word of the vocabulary; empty while not said. */
  readonly crop: string;
  readonly variety?: string;
  /** The variety's leaf colour: `ordinary-green`, `yellow-or-golden`, … */
  readonly colour?: string;
  readonly bedId?: string;
  readonly sownOn?: string;
  readonly plantedOn?: string;
  readonly hardenedOff?: boolean;
  readonly netted?: boolean;
  readonly clearedOn?: string;
  readonly note: string;
}

/** One day's weather, °C and mm. Its id is `weatherId(date)`, so that two devices speak of one record. */
export interface WeatherRecord extends Stamp {
  readonly kind: 'weather';
  readonly date: string;
  readonly minCelsius?: number;
  readonly maxCelsius?: number;
  readonly meanCelsius?: number;
  /** Soil thermometer at 10 cm, in the morning. */
  readonly soilCelsius?: number;
  readonly rainMm?: number;
  /** What was expected, not what was. */
  readonly forecast?: true;
}

export const weatherId = (date: string): string => `weather-${date}`;

/** A photo of a healthy leaf of a variety, to compare with. Its picture lies in the pictures' store under `photoId`. */
export interface NormalLeafRecord extends Stamp {
  readonly kind: 'normal-leaf';
  readonly crop: string;
  readonly variety: string;
  readonly date: string;
  readonly stage?: string;
  readonly photoId: string;
  /** What was read from the photo; unopened here. */
  readonly reading?: unknown;
  /** What the network of signs made of it, where that was switched on. */
  readonly network?: SeenByNetwork;
}

/** One pot of a test, as it was sown and set out. */
export interface PotSown {
  readonly id: string;
  /** On the pot; tells nothing of what is in it. */
  readonly label: string;
  /** With the batch in it, or clean mix only. */
  readonly role: 'test' | 'control';
  readonly seeds: number;
  /** Pair of neighbours it stands in, and place in the pair, from 0. */
  readonly block?: number;
  readonly place?: number;
}

/** One pot at one look. Its id is `potScoreId(date, potId)`, so that two devices speak of one score. */
export interface PotScored {
  readonly id: string;
  readonly date: string;
  readonly potId: string;
  /** Seedlings up so far. */
  readonly emerged: number;
  readonly heightMm?: number;
  /** Visible injury, 0 to 100. */
  readonly injury?: number;
  /** Sets of true leaves. */
  readonly leafSets?: number;
  /** Fresh mass of all shoots at the end, g. */
  readonly grams?: number;
  /** Pictures in the pictures' store. */
  readonly photos: readonly string[];
  /** What was read from the newest of them; unopened here. */
  readonly reading?: unknown;
}

export const potScoreId = (date: string, potId: string): string => `${date} ${potId}`;

export const POT_TEST_QUESTIONS = ['residue', 'ripeness'] as const;
export const POT_TEST_VERDICTS = ['safe-enough', 'do-not-spread', 'go-on', 'invalid'] as const;

/** What a test said when it was read last, kept as it stood. */
export interface PotTestSaid {
  readonly verdict: (typeof POT_TEST_VERDICTS)[number];
  /** Day of the look that it rests on. */
  readonly on: string;
  /** Chance of harm, 0 to 1. */
  readonly chance?: number;
  /** How much likelier what was seen is with twisted growth by the batch than without: a Bayes factor. */
  readonly injuryRatio?: number;
  /** Codes: the harms found, or what made it void. */
  readonly why: readonly string[];
}

/** A pot test of one batch: sown plants beside the same in clean mix, scored until they tell. */
export interface PotTestRecord extends Stamp {
  readonly kind: 'pot-test';
  readonly batchId: string;
  readonly question: (typeof POT_TEST_QUESTIONS)[number];
  /** Word of the vocabulary. */
  readonly crop: string;
  /** Day of sowing; where `toSow` stands, the day it was planned for. */
  readonly sownOn: string;
  /** Laid out, not sown yet. */
  readonly toSow?: true;
  readonly pots: readonly PotSown[];
  /** In order of date. */
  readonly scores: readonly PotScored[];
  /** Day of the next look; absent once there is none to come. */
  readonly lookOn?: string;
  readonly said?: PotTestSaid;
  /** Day on which it was ended, by its verdict or by giving it up. */
  readonly endedOn?: string;
  readonly note: string;
}

export type GroundRecord =
  | BedRecord
  | EventRecord
  | BatchRecord
  | PlantingRecord
  | WeatherRecord
  | NormalLeafRecord
  | PotTestRecord
  | TrialRecord;
