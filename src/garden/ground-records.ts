/**
 * The ground and what is done to it: beds, loads of compost, plantings, weather. All days are `YYYY-MM-DD`. Words of the
 * vocabulary (crops, places, colours, soils) travel through here unopened. Everything but the name of a thing may be left
 * out: what was not said is unknown, never "no".
 */
import type { Stamp } from './records.ts';

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
  /** Day on which it was said last. */
  readonly on: string;
  readonly why: string;
  readonly caseId?: string;
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
}

export type GroundRecord =
  | BedRecord
  | EventRecord
  | BatchRecord
  | PlantingRecord
  | WeatherRecord
  | NormalLeafRecord;
