/**
 * How the network's answers are weighed. Written by `training/signs-network/evaluate.ts`; do not edit by hand. Card: `models/README.md`.
 */
import type { MarkScale } from './mark-scale.ts';

/** The experts in the order of the network's logits. */
export const NETWORK_EXPERTS = ['painted', 'real', 'rendered'] as const;

/** Marks in the order of each expert's logits, with those who were shown leaves with it: only they speak of it. */
export const KNOWN_BY: readonly (readonly [mark: string, by: readonly (typeof NETWORK_EXPERTS)[number][]])[] =
  [
    ['yellow-between-veins', ['painted', 'real', 'rendered']],
    ['mottled', ['painted', 'real', 'rendered']],
    ['spotted', ['painted', 'real', 'rendered']],
    ['rust-pustules', ['painted', 'real', 'rendered']],
    ['white-powder', ['painted', 'real', 'rendered']],
    ['puckered', ['painted', 'real']],
    ['curled', ['painted', 'real']],
    ['holes', ['painted', 'real', 'rendered']],
    ['healthy', ['painted', 'real', 'rendered']],
    ['edge-bites', ['rendered']],
    ['haloed-spots', ['rendered']],
    ['stippled', ['painted', 'rendered']],
    ['pale-trails', ['rendered']],
    ['yellow-edges', ['rendered']],
    ['brown-edges', ['rendered']],
    ['yellow-along-veins', ['rendered']],
    ['yellow-patches', ['rendered']],
    ['brown-spots', ['rendered']],
    ['ringed-spots', ['rendered']],
    ['bleached-patches', ['rendered']],
    ['silver-flecks', ['rendered']],
    ['cupped-up', ['rendered']],
    ['cupped-down', ['rendered']],
    ['twisted-narrow', ['rendered']],
    ['shot-holes', ['rendered']],
    ['ragged-holes', ['rendered']],
    ['veins-left', ['rendered']],
  ];

export const NETWORK_MARKS: readonly string[] = KNOWN_BY.map(([mark]) => mark);

/** Above this the picture is unlike all that was taught or tried: silence. */
export const STRANGE = 1.027;

export const MARK_SCALES: readonly MarkScale[] = [
  { mark: 'yellow-between-veins', on: false, slope: 1.349, most: 1 },
  { mark: 'mottled', on: true, slope: 1.349, most: 3.9 },
  { mark: 'spotted', on: true, slope: 1.349, most: 12 },
  { mark: 'rust-pustules', on: true, slope: 1.349, most: 3.9 },
  { mark: 'white-powder', on: true, slope: 1.349, most: 3.9 },
  { mark: 'puckered', on: false, slope: 1.349, most: 1 },
  { mark: 'curled', on: false, slope: 1.349, most: 1 },
  { mark: 'holes', on: false, slope: 1.349, most: 1 },
];
