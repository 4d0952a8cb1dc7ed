import type { ChangeWord, MeasureChange } from '../../compare/over-time/compare-readings.ts';
import type { Trend } from '../../compare/over-time/fit-trend.ts';
import { MEASURES, type Measured, type MeasureId } from '../../leaf/measures.ts';
import { describeMeasures } from './measures.ts';

/** Eight times in ten, as everywhere (see `measures.ts`). */
const GIVE_OR_TAKE = 1.2816;

const UNITS: ReadonlyMap<MeasureId, string> = new Map(MEASURES.map(({ id, unit }) => [id, unit]));

interface Scale {
  readonly times: number;
  readonly digits: number;
  readonly unit: string;
}

/** The scale on which a measure is spoken of: shares of one as points of a hundred. */
export function scaleOf(id: MeasureId): Scale {
  const unit = UNITS.get(id) ?? '';
  if (unit.startsWith('0–1')) return { times: 100, digits: 0, unit: 'of 100' };
  if (unit === 'number') return { times: 1, digits: 0, unit: '' };
  if (unit.includes('degrees')) return { times: 1, digits: 0, unit: 'degrees' };
  return { times: 1, digits: 1, unit: '' };
}

function sizeOf(id: MeasureId, { value, se }: Measured): { readonly size: string; readonly give: string } {
  const { times, digits, unit } = scaleOf(id);
  const least = 10 ** -digits;
  const give = Math.max(least, se * times * GIVE_OR_TAKE).toFixed(digits);
  return { size: `${Math.abs(value * times).toFixed(digits)}${unit && ` ${unit}`}`, give };
}

/** "down by 7 of 100, give or take 4" */
function sayChange(id: MeasureId, change: Measured): string {
  const { size, give } = sizeOf(id, change);
  if (Number.parseFloat(size) === 0) return `the same, give or take ${give}`;
  return `${change.value < 0 ? 'down' : 'up'} by ${size}, give or take ${give}`;
}

const CHANGE_WORDS: Readonly<Record<ChangeWord, string>> = {
  better: 'better',
  'no-clear-change': 'no clear change',
  worse: 'worse',
};

export interface ChangeInWords {
  readonly id: MeasureId;
  readonly name: string;
  readonly before: string;
  readonly now: string;
  readonly by: string;
  /** Absent for what is neither good nor bad by itself. */
  readonly word?: string;
  /** Better or worse: stands by itself, the others are folded. */
  readonly standsOut: boolean;
}

/** Every change in words, in the order in which measures are read out. */
export function describeChanges(changes: readonly MeasureChange[]): ChangeInWords[] {
  const firsts = describeMeasures(Object.fromEntries(changes.map(({ measure, first }) => [measure, first])));
  const laters = describeMeasures(Object.fromEntries(changes.map(({ measure, later }) => [measure, later])));
  return firsts.flatMap(({ id, name, says }) => {
    const found = changes.find(({ measure }) => measure === id);
    const now = laters.find((later) => later.id === id);
    if (!found || !now) return [];
    const standsOut = found.word === 'better' || found.word === 'worse';
    const said = { id, name, before: says, now: now.says, by: sayChange(id, found.change), standsOut };
    return [found.word ? { ...said, word: CHANGE_WORDS[found.word] } : said];
  });
}

export const nameOfMeasure = (id: MeasureId): string =>
  describeMeasures({ [id]: { value: 0, se: 1 } })[0]?.name ?? id;

export const sayMeasure = (id: MeasureId, measured: Measured): string =>
  describeMeasures({ [id]: measured })[0]?.says ?? '';

/** "From look to look: down by 7 of 100, give or take 4, a week." */
export function describeTrend(id: MeasureId, trend: Trend): string {
  const isClear = Math.abs(trend.perWeek.value) > GIVE_OR_TAKE * trend.perWeek.se;
  const says = `A straight line through the looks goes ${sayChange(id, trend.perWeek).replace(/^the same/, 'neither up nor down')}, in a week.`;
  return isClear ? says : `${says} That could as well be no change.`;
}

export const CHANGE_PAGE_WORDS = {
  title: 'Then and now',
  lead: 'Both leaves are brought to one length and stood upright, the more pointed end on top where there is one, and the colour of the light is taken out of both. How large they are in life, a photo does not tell.',
  role: 'Which leaves',
  first: 'Then',
  later: 'Now',
  sameLeaf: 'It is the very same leaf',
  sameLeafWhy:
    'Two leaves of one plant differ a little by themselves. Only the same leaf lets small changes count.',
  slider: 'Slide between then and now',
  sliderAt: (later: number): string => `${100 - later} of 100 then, ${later} of 100 now`,
  turnRound: 'Turn “now” upside down',
  noLight: 'The light of one of these photos is not known, so its colours are shown as the camera gave them.',
  noPicture: 'The picture is no longer on this device; what was measured is.',
  leaf: {
    better: 'Taken together, the leaf is better.',
    'no-clear-change': 'Taken together, no clear change.',
    worse: 'Taken together, the leaf is worse.',
  } satisfies Record<ChangeWord, string>,
  sureness:
    'Called better or worse only where a plant that stays as it is would look so by chance in at most 1 of 20 comparisons.',
  others: (count: number): string =>
    count === 1 ? 'One more measure' : `${count} more measures, none of them clearly better or worse`,
  measure: 'Follow one measure over all looks',
  plot: (name: string, count: number): string => `${name}, over ${count} looks; the same in words below.`,
  notYet: 'Once two looks have a readable photo of the same kind of leaf, they can be compared here.',
} as const;
