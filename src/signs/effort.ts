import type { SignId } from './vocabulary.ts';

/** Signs that take more than a glance: minutes at the bed (our own; common practice, no source). */
const SLOW: { readonly [Id in SignId]?: number } = {
  aphids: 0.7,
  'cast-skins': 0.7,
  'aphid-hunters': 1,
  'fine-webbing': 1,
  thrips: 1.5,
  whitefly: 0.5,
  'roots-few-brown': 5,
  'roots-swollen': 5,
  'roots-eaten': 5,
  'root-bound': 5,
  'maggots-at-root': 5,
  'grubs-in-soil': 3,
  'stem-base-rot': 1,
  'pith-brown': 3,
  'slugs-seen': 10,
  'recovers-overnight': 5,
  'elsewhere-fine': 1,
  'same-compost-only': 1,
};

/** Minutes it takes to look for a sign. */
export function minutesToLook(sign: SignId): number {
  return SLOW[sign] ?? 0.3;
}
