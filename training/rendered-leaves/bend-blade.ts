import type { Dice } from './dice.ts';

/** How a blade is bent out of its plane. Angles in radians. */
export interface Bend {
  /** Roll of the sides from midrib to margin; above 0 upwards. */
  readonly roll: number;
  /** Fold along the midrib; above 0 the halves rise. */
  readonly fold: number;
  /** Arch along the midrib from base to tip; above 0 the tip goes down. */
  readonly arch: number;
  /** Turn about the midrib from base to tip. */
  readonly twist: number;
  /** Bend of the midrib within the plane. */
  readonly sway: number;
  /** Waves of the margin: height in lengths, number along the blade, and where they start. */
  readonly wave: number;
  readonly waves: number;
  readonly phase: number;
  /** Factor of the width: strap-like growth. */
  readonly narrow: number;
}

export const drawBend = (dice: Dice, strength: number): Bend => ({
  roll: dice.normal(0.3 * strength),
  fold: dice.normal(0.16 * strength),
  arch: dice.normal(0.35 * strength),
  twist: dice.normal(0.18 * strength),
  sway: dice.normal(0.12 * strength),
  wave: Math.abs(dice.normal(0.012 * strength)),
  waves: dice.between(1.5, 5),
  phase: dice.between(0, 6.28),
  narrow: 1,
});

export type Point = readonly [number, number, number];

/** Where a place on the blade comes to lie: along, across, up; in lengths. */
export function bendPlace(u: number, v: number, bend: Bend, halfWidth: number): Point {
  const across = Math.abs(v) * bend.narrow;
  const side = Math.sign(v);
  const half = halfWidth * bend.narrow;
  let y = across;
  let z = 0;
  const curve = bend.roll / half;
  if (Math.abs(curve) > 1e-3) {
    y = Math.sin(across * curve) / curve;
    z = (1 - Math.cos(across * curve)) / curve;
  }
  const cosFold = Math.cos(bend.fold);
  const sinFold = Math.sin(bend.fold);
  const lifted = y * sinFold + z * cosFold;
  y = side * (y * cosFold - z * sinFold);
  z = lifted;
  const out = half > 0 ? across / half : 0;
  z += bend.wave * out * out * Math.sin(2 * Math.PI * bend.waves * u + bend.phase + side * 0.9);
  const turn = bend.twist * u;
  const cosTurn = Math.cos(turn);
  const sinTurn = Math.sin(turn);
  const yTurned = y * cosTurn - z * sinTurn;
  z = y * sinTurn + z * cosTurn;
  y = yTurned;
  // Along the midrib: first the arch, then the bend within the plane.
  const angle = bend.arch * u;
  const along = Math.abs(bend.arch) > 1e-3 ? Math.sin(angle) / bend.arch : u;
  const down = Math.abs(bend.arch) > 1e-3 ? (1 - Math.cos(angle)) / bend.arch : 0;
  const x = along + z * Math.sin(angle);
  const up = z * Math.cos(angle) - down;
  const swing = bend.sway * u;
  const onX = Math.abs(bend.sway) > 1e-3 ? Math.sin(swing) / bend.sway : u;
  const onY = Math.abs(bend.sway) > 1e-3 ? (1 - Math.cos(swing)) / bend.sway : 0;
  return [x - u + onX - y * Math.sin(swing), onY + y * Math.cos(swing), up];
}
