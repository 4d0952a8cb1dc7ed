import type { RenderedMark } from './choose-marks.ts';
import { LEAF_KINDS } from './crops.ts';
import type { LeafPhoto } from './render-photo.ts';

/** What is drawn for the comparison: nothing wrong half as often again as any one mark. */
const MIXES: readonly (readonly RenderedMark[])[] = [
  [],
  [],
  [],
  ['yellow-even'],
  ['yellow-between-veins'],
  ['yellow-edges'],
  ['yellow-patches'],
  ['mottled'],
  ['mottled'],
  ['purple-tint'],
  ['brown-edges'],
  ['brown-patches'],
  ['brown-spots'],
  ['haloed-spots'],
  ['ringed-spots'],
  ['rust-pustules'],
  ['white-powder'],
  ['white-powder'],
  ['puckered'],
  ['puckered'],
  ['stippled'],
  ['shot-holes'],
  ['ragged-holes'],
  ['edge-bites'],
  ['brown-spots', 'ragged-holes'],
  ['yellow-between-veins', 'brown-edges'],
];

const GROUNDS = ['paper', 'soil', 'foliage', 'straw'] as const;

export type Comparison = LeafPhoto & { readonly ground: (typeof GROUNDS)[number] };

/** `rounds` times every kind of leaf (of compound ones a leaflet) on every ground, each with the next mix of marks. */
export function listComparisons(rounds: number): Comparison[] {
  const list: Comparison[] = [];
  for (let round = 0; round < rounds; round++) {
    for (const ground of GROUNDS) {
      for (const leaf of LEAF_KINDS) {
        // 11 and 26 share no factor: mixes run through kinds and grounds in no step.
        const marks = MIXES[(list.length * 11 + round) % MIXES.length]!;
        list.push({ seed: 5000 + list.length, leaf, leaflet: true, ground, marks });
      }
    }
  }
  return list;
}
