import { type LogNormal, logNormalOf } from './normal.ts';

/**
 * Carbon to nitrogen of what goes into beds and heaps, as published. A range where sources give one or disagree: low and
 * high are meant as the points that one and nine in ten lie below.
 */
export interface PublishedRatio {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly source: string;
}

/** A single published figure stands for its kind within a fifth either way (common practice, no source). */
const about = (ratio: number, source: string): PublishedRatio => ({
  low: ratio / 1.2,
  middle: ratio,
  high: ratio * 1.2,
  source,
});
const between = (low: number, middle: number, high: number, source: string): PublishedRatio => ({
  low,
  middle,
  high,
  source,
});

export const CARBON_TO_NITROGEN = {
  'rye-straw': about(82, 'NRCS-CN'),
  'wheat-straw': about(80, 'NRCS-CN'),
  'oat-straw': about(70, 'NRCS-CN'),
  'maize-stover': about(57, 'NRCS-CN'),
  'rye-flowering': about(37, 'NRCS-CN'),
  'pea-straw': about(29, 'NRCS-CN'),
  'rye-young': about(26, 'NRCS-CN'),
  'hay-mature-lucerne': about(25, 'NRCS-CN'),
  'farmyard-manure-rotted': between(14, 20, 28, 'NRCS-CN'),
  'hay-legume': about(17, 'NRCS-CN'),
  'cattle-manure': between(13, 17, 28, 'NRCS-CN'),
  'lucerne-young': about(13, 'NRCS-CN'),
  vetch: about(11, 'NRCS-CN'),
  straw: between(48, 75, 150, 'NRAES-54'),
  'leaves-brown': between(40, 48, 80, 'UCSC-COMP'),
  'poultry-manure': between(6, 9, 12, 'UCSC-COMP'),
  /** 20 without bedding, 30 with, 50 to 60 where it is mostly shavings (UCSC-COMP, OSU-ASK, SOLOMON). */
  'horse-manure': between(20, 30, 55, 'OSU-ASK'),
  'horse-manure-with-shavings': between(30, 50, 90, 'SOLOMON'),
  'wood-chips': between(300, 450, 640, 'UCSC-COMP'),
  sawdust: between(200, 400, 750, 'OSU-ASK'),
  'finished-compost': between(10, 14, 20, 'NRAES-54'),
  /** A hot heap is started at 25–40 (CFR-205203) and loses carbon from then on. */
  'unfinished-compost': between(20, 27, 38, 'CFR-205203'),
  'leaf-mould': between(20, 28, 40, 'NRAES-54'),
  'grass-clippings': between(12, 17, 25, 'NRAES-54'),
  'mushroom-compost': between(13, 17, 25, 'from memory'),
  'bagged-compost': between(18, 28, 40, 'from memory'),
} as const satisfies Record<string, PublishedRatio>;

export type MaterialName = keyof typeof CARBON_TO_NITROGEN;

/** Something that was brought onto a bed, as far as it goes on rotting there. */
export interface Material {
  readonly carbonToNitrogen: LogNormal;
  /**
   * How much of its carbon rots in a season, against raw straw or wood meal as 1. Finished compost is mostly past it: it
   * gives about a tenth of its nitrogen in a year (from memory).
   */
  readonly activity: number;
  /** Degree-days (base 0 °C) after which it no longer ties nitrogen up. */
  readonly tiesUpFor: LogNormal;
}

/** Measured on dairy solids: about 700 degree-days (KUSON-2005). Other stuff and other soils differ by half or double. */
export const RAW_TIES_UP_FOR = logNormalOf(700 / 1.9, 700, 700 * 1.9);

/**
 * Wood takes longer (KUSON-2005), half as long again here (common practice, no source): ground given sawdust-rich manure
 * stays poor for one to three months (SOLOMON), at 12–15 °C 360 to 1,400 degree-days.
 */
export const WOOD_TIES_UP_FOR = logNormalOf(1050 / 2.1, 1050, 1050 * 2.1);

const WOODY: ReadonlySet<MaterialName> = new Set(['wood-chips', 'sawdust', 'horse-manure-with-shavings']);
const MOSTLY_ROTTED: ReadonlySet<MaterialName> = new Set([
  'finished-compost',
  'leaf-mould',
  'mushroom-compost',
  'bagged-compost',
  'farmyard-manure-rotted',
]);
const ROTTED_ACTIVITY = 0.2;

/** A material by name, with its published range as spread. */
export function materialOf(name: MaterialName): Material {
  const { low, middle, high } = CARBON_TO_NITROGEN[name];
  return {
    carbonToNitrogen: logNormalOf(low, middle, high),
    activity: MOSTLY_ROTTED.has(name) ? ROTTED_ACTIVITY : 1,
    tiesUpFor: WOODY.has(name) ? WOOD_TIES_UP_FOR : RAW_TIES_UP_FOR,
  };
}

/** "Wood chip, sawdust or straw", not said which: anything from 60 to 500. */
export const WOOD_OR_STRAW: Material = {
  carbonToNitrogen: logNormalOf(60, 200, 500),
  activity: 1,
  tiesUpFor: WOOD_TIES_UP_FOR,
};

/** "Straw or hay": hay from 17, straw to 150. */
export const STRAW_OR_HAY: Material = {
  carbonToNitrogen: logNormalOf(20, 50, 100),
  activity: 1,
  tiesUpFor: RAW_TIES_UP_FOR,
};
