import { MEASURES, type Measured, type MeasureId, type Measures } from '../../leaf/measures.ts';

/**
 * Half the span within which the true value lies eight times in ten: 1.2816 standard errors (90 % point of the normal
 * distribution, from memory; any table agrees). The same span as every other range in this tool.
 */
const GIVE_OR_TAKE = 1.2816;
/** A hundredth of a leaf, half a hole: less than that is not worth a line of its own. */
const LEAST_SAID = 0.01;
/** Less than half a degree or point of colour is no difference that anybody would see. */
const LEAST_DIFFERENCE = 0.5;
/** Where the give or take of a difference is less than two, its tenths are said: words of the camera rest on them. */
const SAID_IN_TENTHS = 2;

export interface MeasureInWords {
  readonly id: MeasureId;
  /** "Pale to yellow" */
  readonly name: string;
  /** "12 % of the leaf, give or take 3" */
  readonly says: string;
  /** What it is, for those who ask. */
  readonly finer: boolean;
  /** False when nothing was found that stands out of its own error: "no clear difference", "hardly any". */
  readonly speaks: boolean;
}

type Way = {
  readonly name: string;
  readonly finer?: boolean;
  readonly say: (measured: Measured) => string;
};

const percent =
  (of: string) =>
  ({ value, se }: Measured): string => {
    const give = Math.round(se * GIVE_OR_TAKE * 100);
    const share = Math.round(value * 100);
    if (share === 0 && give <= 1) return `hardly any of ${of}`;
    return `${share} % of ${of}, give or take ${Math.max(1, give)}`;
  };

const count =
  (one: string, many: string) =>
  ({ value, se }: Measured): string => {
    const number = Math.round(value);
    const give = Math.round(se * GIVE_OR_TAKE);
    const what = number === 0 && give === 0 ? `no ${many}` : `${number} ${number === 1 ? one : many}`;
    return give === 0 ? what : `${what}, give or take ${give}`;
  };

const UNITS: ReadonlyMap<MeasureId, string> = new Map(MEASURES.map(({ id, unit }) => [id, unit]));

/**
 * A difference of colour for those to whom degrees say nothing. From a yellow leaf to a green one the hue turns by some
 * 35 degrees (about 95 to about 130, see the measure); a quarter of that is little, more than half is much (our own
 * judgement, no source).
 */
function howMuch(size: number, isHue: boolean): string {
  const [little, much] = isHue ? [9, 18] : [5, 15];
  return size < little ? 'a little' : size < much ? 'clearly' : 'much';
}

/** Nothing is called clear or much that lies within two of its own standard errors. */
export const isDoubtful = ({ value, se }: Measured): boolean => Math.abs(value) <= 2 * se;

/** A difference of colour in the unit of its measure; "no clear difference" when zero lies within its give or take. */
const contrast =
  (id: MeasureId, side: string) =>
  (measured: Measured): string => {
    const { value, se } = measured;
    const give = se * GIVE_OR_TAKE;
    if (Math.abs(value) <= give) return 'no clear difference';
    if (Math.abs(value) < LEAST_DIFFERENCE) return 'hardly any difference';
    const isHue = UNITS.get(id)?.includes('hue') ?? false;
    const digits = give < SAID_IN_TENTHS ? 1 : 0;
    const number = Math.abs(value).toFixed(digits);
    const size = `${number} ${isHue ? 'degrees of hue' : 'points of colour'}, give or take ${Math.max(0.1, give).toFixed(digits)}`;
    const much = isDoubtful(measured) ? 'probably' : howMuch(Math.abs(value), isHue);
    return `${side} ${much} ${value > 0 ? 'greener' : 'paler'} (by ${size})`;
  };

const plain =
  (unit: string, digits: number) =>
  ({ value, se }: Measured): string => {
    const give = (se * GIVE_OR_TAKE).toFixed(digits);
    const doubt = Number(give) === 0 ? `less than ${(10 ** -digits).toFixed(digits)}` : give;
    return `${value.toFixed(digits)}${unit}, give or take ${doubt}`;
  };

/** A share of one, as a mark out of a hundred: "23 of 100, give or take 5". */
const outOfHundred = ({ value, se }: Measured): string =>
  `${Math.round(value * 100)} of 100, give or take ${Math.max(1, Math.round(se * GIVE_OR_TAKE * 100))}`;

/** In the order in which they are read out: what a grower sees first, first. */
const WAYS: { readonly [Id in MeasureId]: Way } = {
  'chlorotic-fraction': { name: 'Pale to yellow', say: percent('the leaf') },
  'necrotic-fraction': { name: 'Brown, black or straw-dead', say: percent('the leaf') },
  'purple-fraction': { name: 'Purple, red or bronze', say: percent('the leaf') },
  'white-fraction': { name: 'White or silvery', say: percent('the leaf') },
  'lost-fraction': { name: 'Eaten or torn away', say: percent('the whole leaf') },
  'hole-count': { name: 'Holes', say: count('separate hole', 'separate holes') },
  'spot-count': { name: 'Dead spots', say: count('spot', 'spots') },
  'vein-contrast': {
    name: 'Veins against the leaf between them',
    say: contrast('vein-contrast', 'veins'),
  },
  'edge-contrast': {
    name: 'Middle against edge',
    say: contrast('edge-contrast', 'middle'),
  },
  'tip-contrast': { name: 'Base against tip', say: contrast('tip-contrast', 'base') },
  mottle: { name: 'Patchwork of light and dark (0: none)', say: outOfHundred, finer: true },
  evenness: { name: 'Evenness of colour (100: one colour all over)', say: outOfHundred, finer: true },
  'hole-fraction': { name: 'Holes inside the outline', say: percent('the whole leaf'), finer: true },
  'edge-loss-fraction': { name: 'Missing from the edge', say: percent('the whole leaf'), finer: true },
  'ribs-left': { name: 'Ribs left standing along what is lost', say: percent('that edge'), finer: true },
  'spot-fraction': { name: 'In dead spots', say: percent('the leaf'), finer: true },
  'surface-relief': { name: 'Dimpled surface', say: plain(' of 100', 1), finer: true },
  'stipple-density': { name: 'Tiny pale dots', say: plain(' in a thousand points of leaf', 1), finer: true },
  lightness: { name: 'Lightness (0: black, 100: white)', say: plain(' of 100', 0), finer: true },
  chroma: { name: 'Strength of colour (0: grey)', say: plain('', 0), finer: true },
  hue: { name: 'Hue (yellow about 95, leaf green 120 to 135)', say: plain(' degrees', 0), finer: true },
  'dark-green-index': { name: 'Depth of green', say: outOfHundred, finer: true },
  'frame-share': { name: 'Share of the photo', say: percent('the photo'), finer: true },
  sharpness: { name: 'Sharpness (100: crisp)', say: outOfHundred, finer: true },
};

/** Every measure that was taken, in words, plain ones first. */
export function describeMeasures(measures: Measures): MeasureInWords[] {
  const said: MeasureInWords[] = [];
  for (const id of Object.keys(WAYS) as MeasureId[]) {
    const measured = measures[id];
    if (!measured) continue;
    const way = WAYS[id];
    const least = id.endsWith('-contrast') ? LEAST_DIFFERENCE : LEAST_SAID;
    said.push({
      id,
      name: way.name,
      says: way.say(measured),
      finer: way.finer ?? false,
      speaks: Math.abs(measured.value) > GIVE_OR_TAKE * measured.se && Math.abs(measured.value) >= least,
    });
  }
  return said;
}
