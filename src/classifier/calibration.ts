/**
 * How the network's answers are weighed. Written by `training/signs-network/evaluate.ts`; do not edit by hand. Card: `models/README.md`.
 */
import type { MarkScale } from './mark-scale.ts';

/** Marks in the order of the network's logits. */
export const NETWORK_MARKS: readonly string[] = [
  'yellow-between-veins',
  'mottled',
  'spotted',
  'rust-pustules',
  'white-powder',
  'puckered',
  'curled',
  'holes',
  'healthy',
  'edge-bites',
  'haloed-spots',
  'stippled',
  'pale-trails',
  'yellow-edges',
  'brown-edges',
  'yellow-along-veins',
  'yellow-patches',
  'brown-spots',
  'ringed-spots',
  'bleached-patches',
  'silver-flecks',
  'cupped-up',
  'cupped-down',
  'twisted-narrow',
  'shot-holes',
  'ragged-holes',
  'veins-left',
];

/** The experts in the order of the network's logits, each with the marks it was shown leaves with: only of these it speaks. */
export const NETWORK_EXPERTS: readonly { readonly expert: string; readonly knows: readonly string[] }[] = [
  {
    expert: 'painted',
    knows: [
      'yellow-between-veins',
      'mottled',
      'spotted',
      'rust-pustules',
      'white-powder',
      'puckered',
      'curled',
      'holes',
      'healthy',
      'stippled',
    ],
  },
  {
    expert: 'real',
    knows: [
      'yellow-between-veins',
      'mottled',
      'spotted',
      'rust-pustules',
      'white-powder',
      'puckered',
      'curled',
      'holes',
      'healthy',
    ],
  },
  {
    expert: 'rendered',
    knows: [
      'yellow-between-veins',
      'mottled',
      'spotted',
      'rust-pustules',
      'white-powder',
      'holes',
      'healthy',
      'edge-bites',
      'haloed-spots',
      'stippled',
      'pale-trails',
      'yellow-edges',
      'brown-edges',
      'yellow-along-veins',
      'yellow-patches',
      'brown-spots',
      'ringed-spots',
      'bleached-patches',
      'silver-flecks',
      'cupped-up',
      'cupped-down',
      'twisted-narrow',
      'shot-holes',
      'ragged-holes',
      'veins-left',
    ],
  },
];

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
