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

/** Above this the picture is unlike all that was taught or tried: silence. */
export const STRANGE = 1.311;

export const MARK_SCALES: readonly MarkScale[] = [
  { mark: 'yellow-between-veins', on: false, slope: 1.344, bias: -0.015, most: 1 },
  { mark: 'mottled', on: false, slope: 1.895, bias: -0.786, most: 1 },
  { mark: 'spotted', on: false, slope: 0.431, bias: 0.082, most: 1 },
  { mark: 'rust-pustules', on: false, slope: 1.883, bias: -1.02, most: 1 },
  { mark: 'white-powder', on: false, slope: 0, bias: 0.213, most: 1 },
  { mark: 'puckered', on: false, slope: 2.135, bias: 0.634, most: 1 },
  { mark: 'curled', on: false, slope: 0.801, bias: 0.56, most: 1 },
  { mark: 'holes', on: false, slope: 2.179, bias: -0.611, most: 1 },
];
