import { drawCamera } from './camera.ts';
import { chooseMarks, drawMarks, RENDERED_MARKS, type RenderedMark } from './choose-marks.ts';
import { chooseSurroundings } from './choose-surroundings.ts';
import { LEAF_KINDS, type LeafKind, planLeaf } from './crops.ts';
import { rollDice } from './dice.ts';
import { drawLight } from './light-scene.ts';
import { drawBlemish } from './mark-spots.ts';
import { drawDew, drawDust } from './mark-surface.ts';
import { type RenderedScene, renderScene } from './render-scene.ts';

/** A square picture of one leaf as the classifier is shown it, with all that is true of it. */
export interface Example {
  readonly size: number;
  readonly rgb: Uint8ClampedArray;
  readonly mask: Uint8Array;
  readonly marks: Readonly<Record<RenderedMark, 0 | 1>>;
  readonly measures: RenderedScene['measures'];
  readonly crop: string;
  readonly leaf: LeafKind;
  readonly ground: string;
}

/** Marks of a pixel or two: who photographs them holds still. */
const FINE: readonly RenderedMark[] = [
  'rust-pustules',
  'stippled',
  'brown-spots',
  'haloed-spots',
  'silver-flecks',
];

export interface Wishes {
  readonly leaf?: LeafKind;
  readonly marks?: readonly RenderedMark[];
}

/** The example of a seed: what is on it, how it is lit and how it is photographed are drawn from it alone. */
export function renderExample(seed: number, size: number, wishes: Wishes = {}): Example {
  const dice = rollDice(seed);
  const leaf = wishes.leaf ?? dice.pick(LEAF_KINDS);
  const plan = planLeaf(leaf, dice);
  const chosen = wishes.marks ?? chooseMarks(leaf, dice);
  const { putOn, bend } = drawMarks(chosen, dice);
  if (dice.chance(0.15)) putOn.unshift(drawBlemish(dice));
  if (dice.chance(0.12)) putOn.push(drawDust(dice));
  if (dice.chance(0.06)) putOn.push(drawDew(dice));
  const { ground, hand, behind, inFront } = chooseSurroundings(dice);
  const camera = drawCamera(dice, size);
  const zoomed = dice.chance(0.15) || plan.isStrap === true;
  const scene = renderScene({
    seed,
    width: size,
    height: size,
    plan,
    marks: putOn,
    bend,
    bendStrength: dice.logBetween(0.35, 1.3),
    tilt: dice.normal(0.3),
    lean: dice.normal(0.3),
    turn: dice.between(0, 2 * Math.PI),
    ground,
    hand,
    behind,
    inFront,
    neighboursShareMarks: dice.chance(0.6),
    light: drawLight(dice),
    camera: chosen.some((mark) => FINE.includes(mark)) ? { ...camera, blur: 0.5 * camera.blur } : camera,
    fill: (1 / (1 + dice.between(0.1, 0.25))) * (zoomed ? dice.between(1.05, plan.isStrap ? 2.2 : 1.4) : 1),
    shiftX: dice.normal(zoomed ? 0.06 : 0.01),
    shiftY: dice.normal(zoomed ? 0.06 : 0.01),
  });
  const marks = Object.fromEntries(RENDERED_MARKS.map((mark) => [mark, chosen.includes(mark) ? 1 : 0]));
  return {
    size,
    rgb: scene.rgb,
    mask: scene.mask,
    marks: marks as Record<RenderedMark, 0 | 1>,
    measures: scene.measures,
    crop: plan.crop,
    leaf,
    ground,
  };
}
