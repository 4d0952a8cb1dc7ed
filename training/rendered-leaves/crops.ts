import type { CropId } from '../../src/signs/vocabulary.ts';
import type { Dice } from './dice.ts';
import {
  type BladeShape,
  drawFingeredBlade,
  drawFingerRibs,
  drawMidrib,
  drawSimpleBlade,
  type FingeredBlade,
  type SimpleBlade,
  type Vein,
  type Venation,
} from './shape-outlines.ts';

export type Range = readonly [number, number];

/** How a crop's tissue looks when nothing is wrong. */
export interface CropLook {
  readonly chlorophyll: Range;
  /** Green left in the veins, as a share: below 1 they are paler than the tissue. */
  readonly veinGreen: Range;
  /** Height of the bulge between side veins, in lengths. */
  readonly quilt: Range;
  /** Mirror-like shine, 0–1. */
  readonly gloss: Range;
  /** Roughness of the skin. */
  readonly grain: number;
  /** Grey wax. */
  readonly wax: number;
  readonly purple: number;
  /** Thick ribs of another colour: white of cabbage and lettuce, red or yellow of chard. */
  readonly ribs?: { readonly green: number; readonly carotenoid: number; readonly purple: number };
}

/** A blade put into the leaf: where its stalk ends, heading of its tip, its length. Lengths of the leaf. */
export interface PlacedBlade {
  readonly shape: BladeShape;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly length: number;
}

/** A leaf of one or several blades and the stalks between them. */
export interface LeafPlan {
  readonly crop: CropId;
  readonly look: CropLook;
  readonly blades: readonly PlacedBlade[];
  /** Pairs of points with a width, lengths of the leaf. */
  readonly stalks: readonly {
    readonly points: readonly (readonly [number, number])[];
    readonly width: number;
  }[];
  /** Straps and other long leaves are seen in part. */
  readonly isStrap?: boolean;
}

const PLAIN: CropLook = {
  chlorophyll: [0.55, 1.5],
  veinGreen: [0.3, 0.8],
  quilt: [0.002, 0.007],
  gloss: [0.1, 0.5],
  grain: 1,
  wax: 0,
  purple: 0,
};

const simple = (shape: SimpleBlade, venation: Venation, dice: Dice): BladeShape => ({
  outline: drawSimpleBlade(shape, dice),
  mainVeins: [drawMidrib(shape.ribWidth ?? 0.016, dice)],
  venation,
});

const fingered = (shape: FingeredBlade, venation: Venation, width: number, dice: Dice): BladeShape => ({
  outline: drawFingeredBlade(shape, dice),
  mainVeins: drawFingerRibs(shape, width),
  venation,
});

/** Two basal side veins nearly as strong as the midrib, as in beans. */
function addBasalRibs(shape: BladeShape, halfWidth: number): BladeShape {
  const ribs: Vein[] = [-1, 1].map((sign) => ({
    width: 0.008,
    places: Array.from({ length: 25 }, (_, k) => {
      const t = k / 24;
      return { u: 0.02 + 0.5 * t ** 1.25, v: sign * halfWidth * 0.86 * Math.sin(1.35 * t) };
    }),
  }));
  return { ...shape, mainVeins: [...shape.mainVeins, ...ribs] };
}

const one = (crop: CropId, look: CropLook, shape: BladeShape): LeafPlan => ({
  crop,
  look,
  blades: [{ shape, x: 0, y: 0, heading: 0, length: 1 }],
  stalks: [
    {
      points: [
        [-0.45, 0],
        [0.01, 0],
      ],
      width: 0.016,
    },
  ],
});

/** Leaflets in pairs along a stalk with one at its end. */
function feathered(
  crop: CropId,
  look: CropLook,
  pairs: number,
  draw: (isEnd: boolean) => BladeShape,
  { spread, side, end }: { readonly spread: number; readonly side: number; readonly end: number },
  dice: Dice,
  small?: () => BladeShape,
): LeafPlan {
  const blades: PlacedBlade[] = [];
  const stalks: { points: [number, number][]; width: number }[] = [];
  const reach = 1 - end;
  stalks.push({
    points: [
      [-0.3, 0],
      [reach, 0],
    ],
    width: 0.014,
  });
  for (let pair = 0; pair < pairs; pair++) {
    const along = reach * (0.12 + (0.82 * pair) / Math.max(1, pairs - 0.4));
    const grown = side * (0.8 + 0.3 * Math.sin((Math.PI * (pair + 0.8)) / (pairs + 0.5)));
    for (const sign of [-1, 1]) {
      const heading = sign * (spread + dice.normal(0.12));
      const foot = 0.05 * dice.between(0.4, 1.3);
      const x = along + dice.normal(0.015);
      const to: [number, number] = [x + foot * Math.cos(heading), foot * Math.sin(heading)];
      stalks.push({ points: [[x, 0], to], width: 0.009 });
      blades.push({
        shape: draw(false),
        x: to[0],
        y: to[1],
        heading,
        length: grown * dice.between(0.85, 1.12),
      });
      if (small && dice.chance(0.5)) {
        const sx = along + 0.09;
        blades.push({
          shape: small(),
          x: sx,
          y: 0.012 * sign,
          heading: sign * 1.3,
          length: side * dice.between(0.18, 0.4),
        });
      }
    }
  }
  blades.push({ shape: draw(true), x: reach, y: 0, heading: dice.normal(0.1), length: end });
  return { crop, look, blades, stalks };
}

const BEAN: CropLook = {
  ...PLAIN,
  chlorophyll: [0.4, 1.5],
  quilt: [0.003, 0.013],
  gloss: [0.05, 0.45],
  grain: 1.6,
  veinGreen: [0.3, 0.85],
};

const beanBlade = (dice: Dice): BladeShape => {
  const width = dice.between(0.55, 0.88);
  return addBasalRibs(
    simple(
      {
        width,
        base: dice.between(0.3, 0.7),
        tip: dice.between(0.75, 1.2),
        drawn: dice.between(0, 0.12),
        heart: dice.between(0, 0.12),
        uneven: 0.1,
      },
      {
        angleDegrees: dice.between(42, 58),
        bend: 35,
        sideVeins: dice.between(8, 13),
        mesh: dice.between(0.022, 0.04),
      },
      dice,
    ),
    width / 2,
  );
};

function bean(dice: Dice): LeafPlan {
  if (dice.chance(0.82)) return one('french-bean', BEAN, beanBlade(dice));
  return feathered(
    'french-bean',
    BEAN,
    1,
    () => beanBlade(dice),
    { spread: 1.2, side: 0.48, end: 0.55 },
    dice,
  );
}

function pepper(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 2.2],
    quilt: [0.002, 0.009],
    gloss: [0.2, 1],
    grain: 0.6,
    veinGreen: [0.25, 0.7],
  };
  return one(
    'pepper',
    look,
    simple(
      {
        width: dice.between(0.32, 0.58),
        base: dice.between(0.8, 1.1),
        tip: dice.between(1.05, 1.6),
        drawn: dice.between(0.02, 0.16),
        uneven: 0.08,
      },
      {
        angleDegrees: dice.between(42, 60),
        bend: 40,
        sideVeins: dice.between(9, 14),
        mesh: dice.between(0.03, 0.05),
      },
      dice,
    ),
  );
}

function aubergine(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 1.2],
    gloss: [0, 0.2],
    grain: 2.2,
    wax: 0.05,
    ...(dice.chance(0.4) && { ribs: { green: 0.4, carotenoid: 0.6, purple: 0.8 } }),
  };
  return one(
    'aubergine',
    look,
    simple(
      {
        width: dice.between(0.6, 0.85),
        base: 0.65,
        tip: 0.9,
        lobes: { count: dice.between(2, 3.4), depth: dice.between(0.08, 0.25) },
        uneven: 0.1,
        ribWidth: 0.024,
      },
      { angleDegrees: 52, bend: 25, sideVeins: dice.between(6, 8), mesh: 0.035 },
      dice,
    ),
  );
}

function tomato(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 1.5],
    quilt: [0.004, 0.014],
    gloss: [0, 0.25],
    grain: 2,
  };
  const leaflet = (): BladeShape =>
    simple(
      {
        width: dice.between(0.45, 0.68),
        base: 0.6,
        tip: 1.05,
        lobes: { count: dice.between(3, 4.5), depth: dice.between(0.15, 0.4) },
        teeth: { count: dice.between(6, 10), depth: dice.between(0.05, 0.18) },
        uneven: 0.12,
        ribWidth: 0.02,
      },
      { angleDegrees: 52, bend: 30, sideVeins: 9, mesh: 0.045 },
      dice,
    );
  if (dice.chance(0.6)) return one('tomato', look, leaflet());
  return feathered(
    'tomato',
    look,
    dice.whole(2, 3),
    leaflet,
    { spread: 1.05, side: 0.36, end: 0.4 },
    dice,
    leaflet,
  );
}

function potato(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 1.4],
    quilt: [0.005, 0.015],
    gloss: [0, 0.25],
    grain: 1.6,
  };
  const leaflet = (): BladeShape =>
    simple(
      {
        width: dice.between(0.55, 0.75),
        base: 0.55,
        tip: dice.between(0.75, 1),
        drawn: 0.03,
        heart: 0.06,
        uneven: 0.14,
        ribWidth: 0.02,
      },
      { angleDegrees: 50, bend: 40, sideVeins: 9, mesh: 0.045 },
      dice,
    );
  if (dice.chance(0.6)) return one('potato', look, leaflet());
  return feathered(
    'potato',
    look,
    dice.whole(2, 3),
    leaflet,
    { spread: 1.15, side: 0.34, end: 0.42 },
    dice,
    leaflet,
  );
}

function pea(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.4, 1],
    gloss: [0, 0.2],
    wax: 0.12,
    quilt: [0.001, 0.004],
    veinGreen: [0.4, 0.8],
  };
  const leaflet = (): BladeShape =>
    simple(
      { width: dice.between(0.5, 0.68), base: 0.6, tip: 0.7, uneven: 0.06, ribWidth: 0.018 },
      { angleDegrees: 40, bend: 30, sideVeins: 9, mesh: 0.045 },
      dice,
    );
  if (dice.chance(0.65)) return one('pea', look, leaflet());
  return feathered('pea', look, dice.whole(1, 2), leaflet, { spread: 1.1, side: 0.42, end: 0.4 }, dice);
}

function strawberry(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.7, 1.7],
    quilt: [0.006, 0.016],
    gloss: [0.05, 0.4],
    grain: 1.4,
  };
  const leaflet = (): BladeShape =>
    simple(
      {
        width: dice.between(0.7, 0.9),
        base: 0.72,
        tip: 0.52,
        teeth: { count: 12, depth: 0.16 },
        uneven: 0.08,
        ribWidth: 0.018,
      },
      { angleDegrees: 42, bend: 5, sideVeins: 10, mesh: 0.045 },
      dice,
    );
  if (dice.chance(0.65)) return one('strawberry', look, leaflet());
  return feathered('strawberry', look, 1, leaflet, { spread: 1.35, side: 0.5, end: 0.52 }, dice);
}

function cucumber(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 1.4],
    quilt: [0.004, 0.012],
    gloss: [0, 0.25],
    grain: 2.4,
  };
  return one(
    'cucumber',
    look,
    fingered(
      {
        fingers: [1, dice.between(0.78, 0.95), dice.between(0.55, 0.75)],
        spread: dice.between(54, 64),
        bay: dice.between(0.68, 0.85),
        slim: 1.1,
        teeth: { count: 34, depth: 0.05 },
      },
      { angleDegrees: 48, bend: 20, sideVeins: 5, mesh: 0.04 },
      0.016,
      dice,
    ),
  );
}

function squash(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.5, 1.5],
    quilt: [0.003, 0.01],
    gloss: [0, 0.25],
    grain: 2.2,
  };
  return one(
    'courgette',
    look,
    fingered(
      {
        fingers: [1, dice.between(0.75, 0.95), dice.between(0.5, 0.75)],
        spread: dice.between(52, 66),
        bay: dice.between(0.3, 0.65),
        slim: dice.between(1, 1.8),
        teeth: { count: 44, depth: 0.1 },
      },
      { angleDegrees: 45, bend: 15, sideVeins: 6, mesh: 0.035 },
      0.018,
      dice,
    ),
  );
}

function cabbage(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.35, 1.2],
    wax: dice.between(0.05, 0.22),
    gloss: [0, 0.3],
    quilt: [0.002, 0.009],
    grain: 0.5,
    veinGreen: [0.15, 0.5],
    ribs: { green: 0.15, carotenoid: 0.25, purple: dice.chance(0.15) ? 0.5 : 0 },
  };
  return one(
    dice.pick(['cabbage', 'kale', 'broccoli', 'cauliflower']),
    look,
    simple(
      {
        width: dice.between(0.6, 0.9),
        base: dice.between(0.6, 1),
        tip: dice.between(0.4, 0.6),
        ragged: 0.12,
        uneven: 0.08,
        ribWidth: dice.between(0.03, 0.055),
        ...(dice.chance(0.35) && { teeth: { count: 18, depth: 0.15 } }),
      },
      { angleDegrees: 48, bend: 35, sideVeins: dice.between(6, 9), mesh: 0.035 },
      dice,
    ),
  );
}

function rocket(dice: Dice): LeafPlan {
  const look: CropLook = { ...PLAIN, chlorophyll: [0.4, 1.1], gloss: [0.05, 0.4], veinGreen: [0.25, 0.6] };
  return one(
    dice.pick(['rocket', 'radish', 'turnip']),
    look,
    simple(
      {
        width: dice.between(0.35, 0.55),
        base: 1.25,
        tip: 0.5,
        lobes: { count: dice.between(3, 4.5), depth: dice.between(0.3, 0.65) },
        ragged: 0.14,
        ribWidth: 0.028,
      },
      { angleDegrees: 58, bend: 15, sideVeins: 8, mesh: 0.04 },
      dice,
    ),
  );
}

function lettuce(dice: Dice): LeafPlan {
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.15, 0.6],
    gloss: [0.1, 0.6],
    quilt: [0.006, 0.018],
    veinGreen: [0.2, 0.5],
    purple: dice.chance(0.15) ? dice.between(0.3, 0.9) : 0,
    ribs: { green: 0.15, carotenoid: 0.3, purple: 0 },
  };
  return one(
    'lettuce',
    look,
    simple(
      {
        width: dice.between(0.6, 0.9),
        base: dice.between(0.8, 1.2),
        tip: dice.between(0.32, 0.5),
        ragged: 0.2,
        ribWidth: 0.045,
      },
      { angleDegrees: 45, bend: 20, sideVeins: 7, mesh: 0.035 },
      dice,
    ),
  );
}

function beet(dice: Dice): LeafPlan {
  const rib = dice.pick([
    { green: 0.1, carotenoid: 0.4, purple: 2.5 },
    { green: 0.1, carotenoid: 0.4, purple: 2.5 },
    { green: 0.06, carotenoid: 0.15, purple: 0 },
    { green: 0.06, carotenoid: 1.2, purple: 0 },
    { green: 0.5, carotenoid: 0.8, purple: 0 },
  ]);
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.6, 1.8],
    gloss: [0.2, 0.9],
    quilt: [0.005, 0.016],
    grain: 0.5,
    veinGreen: [0.3, 0.7],
    ribs: rib,
  };
  return one(
    dice.pick(['beetroot', 'chard', 'spinach']),
    look,
    simple(
      {
        width: dice.between(0.42, 0.7),
        base: dice.between(0.55, 0.8),
        tip: dice.between(0.65, 0.95),
        ragged: 0.1,
        ribWidth: dice.between(0.025, 0.05),
      },
      { angleDegrees: 50, bend: 35, sideVeins: 9, mesh: 0.035 },
      dice,
    ),
  );
}

/** Onion, leek, sweetcorn: a piece of a strap with veins along it. */
function strap(dice: Dice): LeafPlan {
  const crop: CropId = dice.pick(['leek', 'onion', 'sweetcorn', 'garlic']);
  const width = crop === 'sweetcorn' ? dice.between(0.14, 0.24) : dice.between(0.09, 0.18);
  const look: CropLook = {
    ...PLAIN,
    chlorophyll: [0.4, 1.3],
    wax: crop === 'sweetcorn' ? 0 : dice.between(0.05, 0.2),
    gloss: [0, 0.4],
    quilt: [0.0005, 0.001],
    veinGreen: [0.6, 0.95],
    ...(crop === 'sweetcorn' && { ribs: { green: 0.25, carotenoid: 0.4, purple: 0 } }),
  };
  const shape: BladeShape = {
    outline: drawSimpleBlade(
      { width, base: dice.between(0.16, 0.3), tip: dice.between(0.4, 0.8), ragged: 0.05 },
      dice,
    ),
    mainVeins: [drawMidrib(crop === 'sweetcorn' ? 0.014 : 0.006, dice)],
    venation: { angleDegrees: 20, bend: 0, sideVeins: 1, mesh: width / dice.between(9, 16), parallel: true },
  };
  return { ...one(crop, look, shape), stalks: [], isStrap: true };
}

const PLANS = {
  bean,
  pepper,
  aubergine,
  tomato,
  potato,
  pea,
  strawberry,
  cucumber,
  squash,
  cabbage,
  rocket,
  lettuce,
  beet,
  strap,
} as const;

/** The shapes of leaf that can be drawn. */
export type LeafKind = keyof typeof PLANS;
export const LEAF_KINDS = Object.keys(PLANS) as LeafKind[];

export const planLeaf = (kind: LeafKind, dice: Dice): LeafPlan => PLANS[kind](dice);

/** The leaflet at the end of a compound leaf as a leaf of its own; a simple leaf as it is. */
export function takeLeaflet(plan: LeafPlan): LeafPlan {
  if (plan.blades.length === 1) return plan;
  const end = plan.blades.at(-1)!;
  return { ...plan, ...one(plan.crop, plan.look, end.shape) };
}
