import type { Cause } from '../schema.ts';
import { aphids } from './aphids.ts';
import { birds } from './birds.ts';
import { blight } from './blight.ts';
import { boronShort } from './boron-short.ts';
import { calciumShort } from './calcium-short.ts';
import { capsidLeafhopper } from './capsid-leafhopper.ts';
import { caterpillars } from './caterpillars.ts';
import { clubroot } from './clubroot.ts';
import { coldCheck } from './cold-check.ts';
import { cutworm } from './cutworm.ts';
import { downyMildew } from './downy-mildew.ts';
import { drought } from './drought.ts';
import { fleaBeetle } from './flea-beetle.ts';
import { frost } from './frost.ts';
import { hotCompost } from './hot-compost.ts';
import { ironShort } from './iron-short.ts';
import { leafBeetles } from './leaf-beetles.ts';
import { leafMiner } from './leaf-miner.ts';
import { leafRoll } from './leaf-roll.ts';
import { leafSpot } from './leaf-spot.ts';
import { lowLight } from './low-light.ts';
import { magnesiumShort } from './magnesium-short.ts';
import { manganeseShort } from './manganese-short.ts';
import { molybdenumShort } from './molybdenum-short.ts';
import { nitrogenLocked } from './nitrogen-locked.ts';
import { nitrogenShort } from './nitrogen-short.ts';
import { oedema } from './oedema.ts';
import { oldLeaves } from './old-leaves.ts';
import { phosphorusShort } from './phosphorus-short.ts';
import { plantingCheck } from './planting-check.ts';
import { potassiumShort } from './potassium-short.ts';
import { powderyMildew } from './powdery-mildew.ts';
import { rabbitsDeer } from './rabbits-deer.ts';
import { residueInCompost } from './residue-in-compost.ts';
import { rootBound } from './root-bound.ts';
import { rootFeeders } from './root-feeders.ts';
import { rootRot } from './root-rot.ts';
import { rust } from './rust.ts';
import { saltBurn } from './salt-burn.ts';
import { slugsSnails } from './slugs-snails.ts';
import { soilDisturbed } from './soil-disturbed.ts';
import { spiderMite } from './spider-mite.ts';
import { sprayDrift } from './spray-drift.ts';
import { sulphurShort } from './sulphur-short.ts';
import { sunScorch } from './sun-scorch.ts';
import { thrips } from './thrips.ts';
import { unlisted } from './unlisted.ts';
import { varietyColour } from './variety-colour.ts';
import { virus } from './virus.ts';
import { wetRoots } from './wet-roots.ts';
import { whitefly } from './whitefly.ts';
import { wiltDisease } from './wilt-disease.ts';
import { windBatter } from './wind-batter.ts';

/** Every cause the tool can weigh, in the order of the vocabulary. */
export const KNOWLEDGE: readonly Cause[] = [
  varietyColour,
  oldLeaves,
  nitrogenLocked,
  nitrogenShort,
  magnesiumShort,
  potassiumShort,
  phosphorusShort,
  ironShort,
  manganeseShort,
  sulphurShort,
  calciumShort,
  boronShort,
  molybdenumShort,
  hotCompost,
  saltBurn,
  soilDisturbed,
  rootBound,
  coldCheck,
  frost,
  wetRoots,
  drought,
  sunScorch,
  windBatter,
  plantingCheck,
  lowLight,
  oedema,
  leafRoll,
  residueInCompost,
  sprayDrift,
  aphids,
  spiderMite,
  whitefly,
  thrips,
  capsidLeafhopper,
  leafMiner,
  caterpillars,
  fleaBeetle,
  leafBeetles,
  slugsSnails,
  birds,
  rabbitsDeer,
  rootFeeders,
  cutworm,
  blight,
  leafSpot,
  powderyMildew,
  downyMildew,
  rust,
  virus,
  wiltDisease,
  rootRot,
  clubroot,
  unlisted,
];
