import type { MarkId } from '../../src/signs/vocabulary.ts';
import type { Bend } from './bend-blade.ts';
import type { LeafKind } from './crops.ts';
import type { Dice } from './dice.ts';
import { drawEdgeBites, drawRaggedHoles, drawShotHoles, drawVeinsLeft } from './mark-losses.ts';
import {
  drawBlackened,
  drawBleachedPatches,
  drawBlotches,
  drawBrownEdges,
  drawBrownPatches,
  drawBrownSpots,
  drawDead,
  drawHaloedSpots,
  drawRingedSpots,
  drawRust,
} from './mark-spots.ts';
import {
  drawGrazed,
  drawMines,
  drawPowder,
  drawPucker,
  drawSilverFlecks,
  drawSilverPattern,
  drawStipple,
} from './mark-surface.ts';
import {
  drawBetweenVeins,
  drawEdgeYellow,
  drawEvenYellow,
  drawGolden,
  drawGreenMosaic,
  drawPatchYellow,
  drawPurple,
  drawVeinYellow,
  drawYellowMosaic,
  type PutOn,
} from './mark-yellowing.ts';

/** A mark as it is put on a leaf: on its surface, in its bends, or both. */
interface DrawnMark {
  readonly putOn?: PutOn;
  readonly bend?: Partial<Bend>;
}

interface MarkKind {
  /** How often among single marks. */
  readonly weight: number;
  /** Marks of one group are not put on one leaf together. */
  readonly group: 'yellow' | 'spots' | 'dead' | 'surface' | 'shape' | 'lost' | 'all';
  readonly draw: (dice: Dice) => DrawnMark;
  readonly only?: readonly LeafKind[];
}

const on =
  (draw: (dice: Dice) => PutOn) =>
  (dice: Dice): DrawnMark => ({ putOn: draw(dice) });

/** Marks that can be drawn, each as the vocabulary names it. */
export const MARK_KINDS = {
  'yellow-even': { weight: 0.8, group: 'yellow', draw: on(drawEvenYellow) },
  'yellow-between-veins': { weight: 1.6, group: 'yellow', draw: on(drawBetweenVeins) },
  'yellow-edges': { weight: 0.6, group: 'yellow', draw: on(drawEdgeYellow) },
  'yellow-along-veins': { weight: 0.4, group: 'yellow', draw: on(drawVeinYellow) },
  'yellow-patches': { weight: 0.6, group: 'yellow', draw: on(drawPatchYellow) },
  mottled: {
    weight: 1.6,
    group: 'yellow',
    draw: (dice) => ({ putOn: dice.chance(0.65) ? drawYellowMosaic(dice) : drawGreenMosaic(dice) }),
  },
  'purple-tint': { weight: 0.5, group: 'yellow', draw: on(drawPurple) },
  'brown-edges': { weight: 0.5, group: 'dead', draw: on(drawBrownEdges) },
  'brown-spots': { weight: 1.4, group: 'spots', draw: on(drawBrownSpots) },
  'haloed-spots': { weight: 0.9, group: 'spots', draw: on(drawHaloedSpots) },
  'ringed-spots': { weight: 0.4, group: 'spots', draw: on(drawRingedSpots) },
  'spreading-blotches': { weight: 0.4, group: 'dead', draw: on(drawBlotches) },
  'bleached-patches': { weight: 0.3, group: 'dead', draw: on(drawBleachedPatches) },
  stippled: { weight: 0.6, group: 'surface', draw: on(drawStipple) },
  'silver-flecks': { weight: 0.4, group: 'surface', draw: on(drawSilverFlecks) },
  'silver-pattern': {
    weight: 0.3,
    group: 'surface',
    draw: on(drawSilverPattern),
    only: ['squash', 'cucumber'],
  },
  'white-powder': { weight: 1.8, group: 'surface', draw: on(drawPowder) },
  'rust-pustules': { weight: 1.4, group: 'spots', draw: on(drawRust) },
  'pale-trails': { weight: 0.5, group: 'surface', draw: on(drawMines) },
  'cupped-up': {
    weight: 0.9,
    group: 'shape',
    draw: (dice) => ({
      bend: { roll: dice.between(0.9, 2), fold: dice.between(0, 0.5), arch: dice.normal(0.3) },
    }),
  },
  'cupped-down': {
    weight: 0.6,
    group: 'shape',
    draw: (dice) => ({
      bend: { roll: -dice.between(0.8, 1.8), fold: -dice.between(0, 0.4), arch: dice.between(0.2, 1.3) },
    }),
  },
  'twisted-narrow': {
    weight: 0.9,
    group: 'shape',
    draw: (dice) => {
      const sign = dice.chance(0.5) ? 1 : -1;
      return {
        bend: {
          narrow: dice.between(0.35, 0.65),
          twist: sign * dice.between(0.7, 2.2),
          sway: sign * dice.between(0.2, 0.9),
          wave: dice.between(0.02, 0.07),
          roll: dice.normal(0.6),
        },
        ...(dice.chance(0.5) && { putOn: drawPucker(dice) }),
      };
    },
  },
  puckered: {
    weight: 1.4,
    group: 'shape',
    draw: (dice) => ({
      putOn: drawPucker(dice),
      bend: { wave: dice.between(0.005, 0.03), waves: dice.between(3, 8) },
    }),
  },
  'shot-holes': { weight: 0.6, group: 'lost', draw: on(drawShotHoles) },
  'ragged-holes': { weight: 0.7, group: 'lost', draw: on(drawRaggedHoles) },
  'edge-bites': { weight: 0.7, group: 'lost', draw: on(drawEdgeBites) },
  'veins-left': { weight: 0.4, group: 'lost', draw: on(drawVeinsLeft) },
  'surface-grazed': { weight: 0.3, group: 'surface', draw: on(drawGrazed) },
  'brown-patches': { weight: 0.4, group: 'dead', draw: on(drawBrownPatches) },
  blackened: { weight: 0.25, group: 'dead', draw: on(drawBlackened) },
  'leaf-dead': { weight: 0.2, group: 'all', draw: on(drawDead) },
  'whole-colour-golden': { weight: 0.15, group: 'yellow', draw: on(drawGolden) },
} as const satisfies { readonly [Id in MarkId]?: MarkKind };

export type RenderedMark = keyof typeof MARK_KINDS;
export const RENDERED_MARKS = Object.keys(MARK_KINDS) as RenderedMark[];

/** Losses come last, so that nothing is painted over a hole's rim; surfaces lie over tissue. */
const ORDER: readonly MarkKind['group'][] = ['all', 'yellow', 'dead', 'spots', 'shape', 'surface', 'lost'];
const kindOf = (mark: RenderedMark): MarkKind => MARK_KINDS[mark];
const inOrder = (marks: readonly RenderedMark[]): RenderedMark[] =>
  [...marks].sort((a, b) => ORDER.indexOf(kindOf(a).group) - ORDER.indexOf(kindOf(b).group));

/** About a quarter healthy, half with one mark, the rest with two or three that can stand together. */
export function chooseMarks(leaf: LeafKind, dice: Dice): RenderedMark[] {
  const luck = dice.next();
  const wanted = luck < 0.25 ? 0 : luck < 0.75 ? 1 : luck < 0.93 ? 2 : 3;
  const chosen: RenderedMark[] = [];
  for (let tries = 0; tries < 30 && chosen.length < wanted; tries++) {
    const mark = pickMark(leaf, dice);
    const { group } = kindOf(mark);
    const clashes = chosen.some(
      (other) => kindOf(other).group === group || kindOf(other).group === 'all' || group === 'all',
    );
    if (!clashes) chosen.push(mark);
  }
  return chosen;
}

function pickMark(leaf: LeafKind, dice: Dice): RenderedMark {
  const open = RENDERED_MARKS.filter((mark) => kindOf(mark).only?.includes(leaf) ?? true);
  let left = dice.next() * open.reduce((sum, mark) => sum + kindOf(mark).weight, 0);
  for (const mark of open) {
    left -= kindOf(mark).weight;
    if (left < 0) return mark;
  }
  return open[0]!;
}

/** The draws of marks settled, in the order in which they are put on, and the bends of all together. */
export function drawMarks(
  marks: readonly RenderedMark[],
  dice: Dice,
): { readonly putOn: PutOn[]; readonly bend: Partial<Bend> } {
  const drawn = inOrder(marks).map((mark): DrawnMark => MARK_KINDS[mark].draw(dice));
  return {
    putOn: drawn.flatMap(({ putOn }) => (putOn ? [putOn] : [])),
    bend: Object.assign({}, ...drawn.map(({ bend }) => bend)),
  };
}
