import { LEANING_LOG_ODDS } from '../../../src/causes/schema.ts';
import { cropMatches } from '../../../src/signs/crops.ts';
import type { CauseId, CropId } from '../../../src/signs/vocabulary.ts';
import type { Rule } from './rule.ts';

/** A published comparison: the first crop has the cause more readily than the second. */
type MoreThan = readonly [cause: CauseId, more: CropId, less: CropId, source: string];

/** Each pair is the statement of one source; `never` marks crops that cannot have it at all. */
const PUBLISHED: readonly MoreThan[] = [
  ['residue-in-compost', 'french-bean', 'cabbage', 'OSU-SF-AMINO: legumes and nightshades worst'],
  ['residue-in-compost', 'lettuce', 'sweetcorn', 'OSU-SF-AMINO, CORTEZ: grasses detoxify it'],
  ['residue-in-compost', 'potato', 'squash', 'BYG-BLOG: squash grew where potato failed'],
  ['spray-drift', 'tomato', 'cabbage', 'WR-GLY, UMAN-ROLL: tomato hurt by traces'],
  ['cold-check', 'cucumber', 'tomato', 'PURDUE-CHILL: cucumber before tomato'],
  ['cold-check', 'pepper', 'tomato', 'PURDUE-CHILL: pepper recovers more slowly'],
  ['cold-check', 'french-bean', 'broad-bean', 'UCSC-KNOTT: minima 10 and 4.4 °C'],
  ['cold-check', 'squash', 'cabbage', 'UCSC-KNOTT: minima 10 and 4.4 °C'],
  ['frost', 'courgette', 'kale', 'CAN-LETT, UCSC-KNOTT: tender and hardy'],
  ['birds', 'kale', 'leek', 'TGA-PIGEON, LECK: pigeons on brassicas'],
  ['birds', 'cabbage', 'courgette', 'TGA-PIGEON: pigeons on brassicas'],
  ['flea-beetle', 'rocket', 'lettuce', 'RUT-FLEA: brassicas'],
  ['flea-beetle', 'aubergine', 'pepper', 'KY-FLEA: aubergine'],
  ['blight', 'potato', 'pepper', 'AHDB-HUTTON: potato'],
  ['variety-colour', 'courgette', 'cabbage', 'CGC-GENES: silver mottle and precocious yellow'],
  ['variety-colour', 'celery', 'parsley', 'BI-CELERY: self-blanching'],
  ['leaf-miner', 'beetroot', 'cabbage', 'USU-MINER: beet, chard, spinach'],
  ['leaf-miner', 'chard', 'tomato', 'USU-MINER: beet, chard, spinach'],
  ['root-feeders', 'cabbage', 'tomato', 'LTG-CRF, CCE-CRF: cabbage root fly'],
  ['boron-short', 'beetroot', 'french-bean', 'BORAX-CAB, WIKI-B: beet, celery, brassicas'],
  ['boron-short', 'cauliflower', 'onion', 'BORAX-CAB, WIKI-B: beet, celery, brassicas'],
  ['molybdenum-short', 'cauliflower', 'tomato', 'PNW-KEY: whiptail of cauliflower and broccoli'],
  ['phosphorus-short', 'cabbage', 'lettuce', 'UMD-P: brassicas redden'],
  ['root-bound', 'cabbage', 'lettuce', 'UMD-P: pot-bound brassicas redden'],
  ['leaf-roll', 'tomato', 'pepper', 'UMAN-ROLL: tomato'],
  ['caterpillars', 'cabbage', 'leek', 'RUTGERS-COLE: cole crops'],
  ['leaf-beetles', 'potato', 'lettuce', 'PSU-CPB: potato beetle'],
  ['leaf-beetles', 'french-bean', 'lettuce', 'UMD-BLB: bean leaf beetle'],
  ['leaf-beetles', 'asparagus', 'lettuce', 'UDEL-9221: asparagus beetle'],
  ['powdery-mildew', 'courgette', 'leek', 'SQ-PM: squash'],
  ['downy-mildew', 'cucumber', 'tomato', 'OSU-CDM, ILL-CDM: cucurbits'],
  ['wilt-disease', 'tomato', 'lettuce', 'UC-FUS: tomato'],
  ['virus', 'tomato', 'cabbage', 'OMAFRA-V, UC-TMV: tomato'],
  ['rust', 'french-bean', 'cabbage', 'CSU-2936: beans'],
  ['spider-mite', 'french-bean', 'cabbage', 'GP-BEAN: beans'],
  ['whitefly', 'squash', 'leek', 'CGC-PARIS-1993: squash silverleaf'],
  ['wet-roots', 'tomato', 'aubergine', 'PURDUE-WL3: wilted after one day, not after three'],
  ['manganese-short', 'potato', 'carrot', 'RLF-MN: soya and potato'],
  ['salt-burn', 'french-bean', 'beetroot', 'USSL-MAAS: thresholds 1.0 and 4.0 dS/m'],
  ['leaf-spot', 'tomato', 'leek', 'QCT-ILL: early blight and Septoria'],
];

/** Crops that a source, or the nature of the cause, rules out altogether. */
const NEVER: readonly (readonly [CauseId, CropId])[] = [
  ['blight', 'lettuce'],
  ['clubroot', 'tomato'],
  ['leaf-roll', 'cabbage'],
];

export const susceptibilityCarried: Rule = {
  name: 'susceptibility carried',
  says: 'a crop that a source calls more susceptible than another has higher odds of the cause',
  check(causes) {
    const logOdds = (id: CauseId, crop: CropId): number => {
      const { leanings, onlyCrops } = causes.find((cause) => cause.id === id)!;
      if (onlyCrops && !onlyCrops.some((name) => cropMatches(crop, name))) return Number.NEGATIVE_INFINITY;
      return leanings.reduce(
        (sum, { when, leans }) =>
          'crop' in when && cropMatches(crop, when.crop) ? sum + LEANING_LOG_ODDS[leans] : sum,
        0,
      );
    };
    return [
      ...PUBLISHED.filter(([id, more, less]) => !(logOdds(id, more) > logOdds(id, less))).map(
        ([id, more, less, source]) => `${id}: ${more} is not above ${less} (${source})`,
      ),
      ...NEVER.filter(([id, crop]) => Number.isFinite(logOdds(id, crop))).map(
        ([id, crop]) => `${id}: is not ruled out on ${crop}`,
      ),
    ];
  },
};
