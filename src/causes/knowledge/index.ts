import type { Cause } from '../schema.ts';
import { aphids } from './aphids.ts';
import { birds } from './birds.ts';
import { blight } from './blight.ts';
import { caterpillars } from './caterpillars.ts';
import { fleaBeetle } from './flea-beetle.ts';
import { leafSpot } from './leaf-spot.ts';
import { powderyMildew } from './powdery-mildew.ts';
import { rabbitsDeer } from './rabbits-deer.ts';
import { residueInCompost } from './residue-in-compost.ts';
import { slugsSnails } from './slugs-snails.ts';
import { spiderMite } from './spider-mite.ts';
import { sprayDrift } from './spray-drift.ts';
import { unlisted } from './unlisted.ts';
import { virus } from './virus.ts';

/** Every cause the tool can weigh, in the order of the vocabulary. */
export const KNOWLEDGE: readonly Cause[] = [
  residueInCompost,
  sprayDrift,
  aphids,
  spiderMite,
  caterpillars,
  fleaBeetle,
  slugsSnails,
  birds,
  rabbitsDeer,
  blight,
  leafSpot,
  powderyMildew,
  virus,
  unlisted,
];
