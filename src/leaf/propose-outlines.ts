import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { modelColours } from './colour-model.ts';
import { createFlowGrid, createGridCutter, type FlowGrid, type GridCutter, placeInGrid } from './cut-grid.ts';
import { describePlainGround } from './find-holes.ts';
import { colourStep, growFromSeed, STEP_X, STEP_Y } from './grow-from-seed.ts';
import { judgePlant } from './judge-plant.ts';
import { fillHoles, labelRegions } from './label-regions.ts';
import { addAgreement, measureAgreement, type OutlineScore, scoreOutline } from './score-outline.ts';

/** What the person fixed, as pixel indices of the coarse frame. */
export interface Seeds {
  readonly leaf: readonly number[];
  readonly ground: readonly number[];
}

/** An outline proposed, filled, on the coarse frame (255 = leaf), with its score. */
export interface Proposal {
  readonly mask: Uint8Array;
  readonly score: OutlineScore;
}

/**
 * Proposes outlines of the leaf around the seeds on a coarse frame, best first. There is no single setting that suits a
 * leaf on paper and a leaf among leaves, so several cuts are made (as in Carreira and Sminchisescu 2012, CPMC) and the
 * best bounded one is chosen. Each starts from another guess of what is leaf: near the seed by colour distance along
 * the way, at several reaches, with or without the demand that every place of the leaf be seen straight from its
 * middle (star shape; Veksler 2008); or unlike the rim of the frame, in place or in colour. The three best are cut again
 * with what they taught. Where the network has a guess, one cut follows it, and all are held to agree with it: it knows
 * leaves from their neighbours, the cuts know where exactly the edge runs.
 *
 * @param makeGuess gives the network's log odds of leaf for each pixel, undefined where it cannot; asked only when needed
 */
export function proposeOutlines(
  lab: LabPlanes,
  cells: Uint16Array,
  seeds: Seeds,
  makeGuess: () => Float32Array | undefined,
): Proposal[] {
  const n = lab.width * lab.height;
  const edges = weighEdges(lab);
  const scene: Scene = { lab, cells, seeds, cut: createGridCutter(edges), plant: judgePlant(lab) };
  const starred: Scene = { ...scene, cut: createGridCutter(demandStar(edges, lab, seeds)) };
  const near = growFromSeed(lab, seeds.leaf, 0.012, 9);
  const leaf = new Float32Array(n);
  const ground = new Float32Array(n);
  const starts: Scored[] = [];
  const score = (mask: Uint8Array): Proposal => ({ mask, score: scoreOutline(lab, mask, scene.plant) });
  const attempt = (cut: Cut): void => {
    const inside = cutOnce(cut.star ? starred : scene, leaf, ground, cut);
    if (inside !== undefined) starts.push({ ...score(inside), cut });
  };
  const believe = (isLeaf: (i: number) => boolean): void => {
    for (let i = 0; i < n; i++) {
      leaf[i] = isLeaf(i) ? 1 : 0;
      ground[i] = 1 - leaf[i]!;
    }
  };
  const reaches = REACHES.map((share) => quantile(near, share));
  const believeNear = (reach: number): void => {
    for (let i = 0; i < n; i++) {
      leaf[i] = 1 / (1 + (near[i]! / reach) ** 4);
      ground[i] = 1 - leaf[i]!;
    }
  };
  /** The network's guess and the cuts that follow it; undefined where it has nothing to add to the best cut by colour. */
  const askNetwork = (byColour: readonly Proposal[]): Advice | undefined => {
    const best = byColour[0];
    if (best !== undefined && isBeyondDoubt(best.score)) return undefined;
    // Over paper a cut by colour is exact, and the network has nothing to add.
    if (best !== undefined && isOverPaper(lab, best)) return undefined;
    const guess = makeGuess();
    if (guess === undefined) return undefined;
    const guided = [GUIDED_COLOUR, 0].flatMap((colourWeight) => {
      believe((i) => guess[i]! > 0);
      const inside = cutOnce(scene, leaf, ground, { guess, colourWeight, star: false });
      return inside === undefined ? [] : [score(inside)];
    });
    return { guess, guided };
  };
  // The cuts that tell whether there is doubt, and the only ones that ever win beside those that follow the network.
  for (const reach of reaches) {
    believeNear(reach);
    attempt({ near, reach, colourWeight: 0.6, star: true });
  }
  const rim = growFromRim(lab, seeds);
  believe((i) => rim[i]! > 0.5);
  attempt({ colourWeight: 1, star: false });
  const belt = Math.max(2, Math.round(0.05 * Math.min(lab.width, lab.height)));
  believe((i) => {
    const x = i % lab.width;
    const y = (i / lab.width) | 0;
    return x >= belt && y >= belt && x < lab.width - belt && y < lab.height - belt;
  });
  for (const i of seeds.ground) ground[i] = 1;
  attempt({ colourWeight: 1.5, star: false });
  starts.sort(byScore);
  let advice = askNetwork(starts);
  if (advice !== undefined) {
    const weighed = weighAdvice([...starts, ...advice.guided], advice.guess);
    if (weighed.trust === 1) return weighed.proposals;
  }

  for (const reach of reaches) {
    believeNear(reach);
    attempt({ near, reach, colourWeight: 0.35, star: false });
    attempt({ near, reach, colourWeight: 1, star: false });
  }
  starts.sort(byScore);
  const again: Proposal[] = [];
  for (const { mask, cut } of starts.slice(0, 3)) {
    believe((i) => mask[i] === 255);
    const inside = cutOnce(cut.star ? starred : scene, leaf, ground, cut);
    if (inside !== undefined) again.push(score(inside));
  }
  const byColour = [...starts, ...again].sort(byScore);
  advice ??= askNetwork(byColour);
  return advice === undefined
    ? byColour
    : weighAdvice([...byColour, ...advice.guided], advice.guess).proposals;
}

interface Advice {
  readonly guess: Float32Array;
  readonly guided: readonly Proposal[];
}

/** Best agreement of any outline with the network from which it is trusted wholly, and below which hardly. */
const AT_HOME = 0.75;
const LOST = 0.35;
const LEAST_TRUST = 0.1;

/**
 * Proposals with what the network says of them, best first. On a scene unlike all it learnt from, no outline agrees with its guess:
 * then the guess counts for less.
 */
function weighAdvice(
  proposals: readonly Proposal[],
  guess: Float32Array,
): { readonly proposals: Proposal[]; readonly trust: number } {
  const agreed = proposals.map(({ mask }) => measureAgreement(mask, guess));
  const best = Math.max(...agreed);
  const trust = Math.max(LEAST_TRUST, Math.min(1, (best - LOST) / (AT_HOME - LOST)));
  return {
    proposals: proposals.map((proposal, k) => addAgreement(proposal, agreed[k]!, trust)).sort(byScore),
    trust,
  };
}

/** A soft edge is no leaf's on paper: what is plain may be a board. */
function isOverPaper(lab: LabPlanes, { mask, score }: Proposal): boolean {
  return score.contrast > PAPER_CONTRAST && describePlainGround(lab, mask) !== undefined;
}

const PAPER_CONTRAST = 0.6;

interface Scored extends Proposal {
  readonly cut: Cut;
}

/** Best first. */
const byScore = (p: Proposal, q: Proposal): number => q.score.total - p.score.total;

/** One solid shape with a sharp edge all round: neighbours that were taken along would leave notches or soft stretches. */
function isBeyondDoubt({ contrast, weakest, solid, onRim, green }: OutlineScore): boolean {
  return contrast > 0.96 && weakest > 0.85 && solid > 0.92 && onRim < 0.05 && green > 0.3;
}

/** Weight of the colours in a cut that follows the network. */
const GUIDED_COLOUR = 0.3;

interface Scene {
  readonly lab: LabPlanes;
  readonly cells: Uint16Array;
  readonly seeds: Seeds;
  /** The side of every pixel for evidence of leaf at each. */
  readonly cut: GridCutter;
  readonly plant: Float32Array;
}

interface Cut {
  /** Distance from the seeds and the distance at which leaf and ground are equally likely. */
  readonly near?: Float32Array;
  readonly reach?: number;
  /** Log odds of leaf from the network. */
  readonly guess?: Float32Array;
  readonly colourWeight: number;
  readonly star: boolean;
}

/** Weight of the network's log odds against edges and colours. */
const GUESS_WEIGHT = 3;

/** Shares of the frame that the leaf may fill: the reach of the growth is set so that this share lies within it. */
const REACHES = [0.08, 0.2, 0.4] as const;

/** One for pixels that are nearer, in colour, to the seed than the rim of the frame is. */
function growFromRim(lab: LabPlanes, seeds: Seeds): Float32Array {
  const { width, height } = lab;
  const rim: number[] = [...seeds.ground];
  for (let x = 0; x < width; x++) rim.push(x, (height - 1) * width + x);
  for (let y = 0; y < height; y++) rim.push(y * width, y * width + width - 1);
  const fromRim = growFromSeed(lab, rim, 0.004, 9);
  const fromSeed = growFromSeed(lab, seeds.leaf, 0.004, 9);
  return fromRim.map((d, i) => d / (d + fromSeed[i]! + 1e-6));
}

function quantile(values: Float32Array, share: number): number {
  const sorted = Float32Array.from(values).sort();
  return Math.max(1e-3, sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!);
}

/** Capacity between neighbours: high where the colour stays the same. */
function weighEdges(lab: LabPlanes): FlowGrid {
  const { width, height } = lab;
  const steps = new Float32Array(width * height * 4).fill(-1);
  let sum = 0;
  let count = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      for (let k = 0; k < 4; k++) {
        const nx = x + STEP_X[k]!;
        const ny = y + STEP_Y[k]!;
        if (nx < 0 || nx >= width || ny >= height) continue;
        const step = colourStep(lab, i, ny * width + nx);
        steps[i * 4 + k] = step;
        sum += step * step;
        count++;
      }
    }
  }
  // The scale is the picture's own mean, as in Boykov and Jolly 2001 and Rother et al. 2004.
  const beta = 1 / Math.max(1, (2 * sum) / count);
  const grid = createFlowGrid(width, height);
  for (let i = 0; i < steps.length; i++) {
    if (steps[i]! < 0) continue;
    const k = i & 3;
    const x = (i >> 2) % width;
    const y = Math.floor((i >> 2) / width);
    const length = k >= 2 ? Math.SQRT2 : 1;
    const weight = Math.round((SMOOTHNESS * (0.04 + Math.exp(-beta * steps[i]! * steps[i]!))) / length);
    grid.capacity[placeInGrid(grid, x, y) * 8 + k] = weight;
    grid.capacity[placeInGrid(grid, x + STEP_X[k]!, y + STEP_Y[k]!) * 8 + (k ^ 4)] = weight;
  }
  return grid;
}

/** Weight of a fully smooth edge against one nat of evidence at a pixel, both in whole units. */
const UNIT = 100;
const SMOOTHNESS = 4 * UNIT;

/** One cut; undefined when nothing useful remains around the seeds. Holes are filled, other pieces dropped. */
function cutOnce(
  scene: Scene,
  leafWeights: Float32Array,
  groundWeights: Float32Array,
  { near, reach = 1, guess, colourWeight }: Cut,
): Uint8Array | undefined {
  const { cells, seeds } = scene;
  const { width, height } = scene.lab;
  const n = width * height;
  const leaf = modelColours(cells, leafWeights);
  const ground = modelColours(cells, groundWeights);
  // What a colour says is worked out once for all pixels of it.
  const says = new Float32Array(leaf.length);
  for (let cell = 0; cell < says.length; cell++) {
    if (leaf[cell] === ground[cell]) continue;
    says[cell] = colourWeight * Math.log((leaf[cell]! + 2e-4) / (ground[cell]! + 2e-4));
  }
  const terminal = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    let evidence = says[cells[i]!]!;
    if (near !== undefined) evidence += 1.2 * Math.log((reach + 1e-6) / (near[i]! + 1e-6));
    if (guess !== undefined) evidence += Math.max(-6, Math.min(6, GUESS_WEIGHT * guess[i]!));
    terminal[i] = Math.round(UNIT * Math.max(-6, Math.min(6, evidence)));
  }
  for (const i of seeds.ground) terminal[i] = -CERTAIN;
  for (const i of seeds.leaf) terminal[i] = CERTAIN;
  return keepSeeded(scene.cut(terminal), width, height, seeds);
}

const CERTAIN = 10_000_000;

/** If a pixel is leaf, so is the next one on the straight way to the middle of the seeds. */
function demandStar(edges: FlowGrid, { width, height }: LabPlanes, seeds: Seeds): FlowGrid {
  const capacity = edges.capacity.slice();
  let cx = 0;
  let cy = 0;
  for (const i of seeds.leaf) {
    cx += (i % width) / seeds.leaf.length;
    cy += Math.floor(i / width) / seeds.leaf.length;
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const far = Math.hypot(cx - x, cy - y);
      if (far < 1.5) continue;
      const dx = Math.round((cx - x) / far);
      const dy = Math.round((cy - y) / far);
      const toward = STEP_X.findIndex((stepX, k) => stepX === dx && STEP_Y[k] === dy);
      capacity[placeInGrid(edges, x, y) * 8 + toward]! += CERTAIN;
    }
  }
  return { ...edges, capacity };
}

/** Keeps the pieces that hold a seed, holes filled. */
export function keepSeeded(
  sides: Uint8Array,
  width: number,
  height: number,
  seeds: Seeds,
): Uint8Array | undefined {
  const regions = labelRegions(sides, width, height, 1, 4);
  const wanted = new Set<number>();
  for (const i of seeds.leaf) wanted.add(regions.labels[i]!);
  wanted.delete(0);
  if (wanted.size === 0) return undefined;
  const mask = new Uint8Array(sides.length);
  for (let i = 0; i < mask.length; i++) if (wanted.has(regions.labels[i]!)) mask[i] = 255;
  return fillHoles(mask, width, height, seeds.ground);
}
