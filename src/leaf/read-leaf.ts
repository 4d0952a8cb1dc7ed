import { convertPixelsToLab, type LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../photo/scale-to-working-frame.ts';
import { settleWhite } from '../photo/settle-white.ts';
import type { PhotoRole, PhotoTrouble, Pixels } from '../photo/types.ts';
import { classifyTissue, TISSUE_INDEX } from './classify-tissue.ts';
import { type FoundLeaf, findLeaf } from './find-leaf.ts';
import { judgeExposure, judgeSharpness } from './judge-photo.ts';
import { judgePlantColour } from './judge-plant.ts';
import { looksLikeLeaf } from './looks-like-leaf.ts';
import { measureDistances } from './measure-distances.ts';
import { measureLoss } from './measure-loss.ts';
import { measureStipples } from './measure-stipples.ts';
import { medianInside } from './measure-tissue.ts';
import type { MeasureId, Measures } from './measures.ts';
import { enlargeMask } from './refine-outline.ts';
import { type LeafSample, SMALL_SAMPLE_PX, sampleLeaf } from './sample-leaf.ts';
import { type TakenMeasures, takeMeasures } from './take-measures.ts';
import { traceOutline } from './trace-outline.ts';
import type { LeafAnalysis, LeafReading, Taps, WhiteReference } from './types.ts';

export interface ReadLeafOptions {
  readonly role: PhotoRole;
  readonly taps?: Taps;
  readonly file?: string;
  readonly takenAt?: string;
}

/** Darker than this in the middle of its range, a frame is noise; measured on photographs darkened by steps. */
const DARK_L = 9;
/** Share of full white above which colours are lost. */
const BURNT_SHARE = 0.35;
/** Sharpness below which veins and spots cannot be read: a blur of 2–3 px at the working frame. */
const BLURRED = 0.28;
/** A leaf smaller than this share of the frame, or than this many pixels, shows no veins. */
const SMALL_SHARE = 0.015;
const SMALL_PX = 1500;
/** Troubles that leave the leaf measurable make its errors this much wider. */
const WIDER = 2;

/**
 * Reads one photo: finds the leaf and takes every measure, each with its standard error. Pixels may be of any size from
 * 32 px a side; everything happens on the working frame. Never throws on a picture: what is wrong is in
 * `reading.trouble`. Too dark and no leaf leave no measures; the other troubles keep them with wider errors.
 */
export function readLeaf(pixels: Pixels, options: ReadLeafOptions): LeafAnalysis {
  const frame = scaleToWorkingFrame(pixels);
  const { width, height } = frame;
  const lab = convertPixelsToLab(frame);
  const taps = options.taps ?? {};
  const whole = judgeExposure(frame, lab);
  if (whole.medianL < DARK_L && whole.dark > 0.8) return withoutLeaf(options, frame, ['too-dark']);
  if (whole.burnt > 0.97) return withoutLeaf(options, frame, ['burnt-out']);
  const leaf = findLeaf(frame, lab, taps);
  const wasTapped = taps.leaf !== undefined || (taps.add?.length ?? 0) > 0;
  if (leaf === undefined || !looksLikeLeaf(lab, leaf, wasTapped)) {
    const trouble: PhotoTrouble[] = judgeSharpness(lab) < BLURRED ? ['too-blurred', 'no-leaf'] : ['no-leaf'];
    return withoutLeaf(options, frame, trouble);
  }
  const plantAt = (i: number): number => judgePlantColour(lab.a[i]!, lab.b[i]!);
  const white = settleWhite(frame, leaf.outline, plantAt, taps.white);
  const sample = sampleLeaf(frame, leaf.outline, leaf.remaining);
  const small = sampleLeaf(frame, leaf.outline, leaf.remaining, SMALL_SAMPLE_PX);
  const taken = takeMeasures(sample, small, white);
  const loss = measureLoss(sample, leaf.score.onRim);
  const shape = measureFrame(lab, leaf);
  const trouble = findTrouble(frame, lab, leaf, shape);
  const stipples = measureStipples(lab, leaf.remaining, shape.depth);
  const measures: Measures = {
    ...taken.measures,
    ...loss.measures,
    ...(stipples === undefined ? {} : { 'stipple-density': stipples }),
    'frame-share': { value: shape.share, se: Math.max(0.002, 0.01 * shape.share) },
    sharpness: { value: shape.sharpness, se: 0.04 },
  };
  return {
    reading: {
      ...describeFile(options),
      trouble,
      leaf: { found: true, outline: traceOutline(leaf.outline, width, height) },
      white,
      measures: trouble.length > 0 ? widen(measures) : measures,
    },
    width,
    height,
    mask: { width, height, data: leaf.remaining },
    tissues: { width, height, data: mapTissues(frame, leaf, white, sample, taken, loss.missing) },
  };
}

function describeFile(options: ReadLeafOptions): Pick<LeafReading, 'role' | 'file' | 'takenAt'> {
  return {
    role: options.role,
    ...(options.file === undefined ? {} : { file: options.file }),
    ...(options.takenAt === undefined ? {} : { takenAt: options.takenAt }),
  };
}

function withoutLeaf(options: ReadLeafOptions, frame: Pixels, trouble: PhotoTrouble[]): LeafAnalysis {
  return {
    reading: { ...describeFile(options), trouble, leaf: { found: false }, measures: {} },
    width: frame.width,
    height: frame.height,
  };
}

interface FrameFacts {
  readonly areaPx: number;
  readonly share: number;
  readonly sharpness: number;
  readonly depth: Float32Array;
}

function measureFrame(lab: LabPlanes, leaf: FoundLeaf): FrameFacts {
  let areaPx = 0;
  for (let i = 0; i < leaf.outline.length; i++) if (leaf.outline[i] === 255) areaPx++;
  return {
    areaPx,
    share: areaPx / leaf.outline.length,
    sharpness: judgeSharpness(lab, leaf.outline),
    depth: measureDistances(leaf.outline, lab.width, lab.height, 255, 6),
  };
}

function findTrouble(frame: Pixels, lab: LabPlanes, leaf: FoundLeaf, facts: FrameFacts): PhotoTrouble[] {
  const trouble: PhotoTrouble[] = [];
  const exposure = judgeExposure(frame, lab, leaf.remaining);
  if (exposure.medianL < DARK_L) trouble.push('too-dark');
  if (exposure.burnt > BURNT_SHARE) trouble.push('burnt-out');
  if (facts.sharpness < BLURRED) trouble.push('too-blurred');
  if (facts.share < SMALL_SHARE || facts.areaPx < SMALL_PX) trouble.push('leaf-too-small');
  return trouble;
}

function widen(measures: Measures): Measures {
  const wider: { [Id in MeasureId]?: { value: number; se: number } } = {};
  for (const id of Object.keys(measures) as MeasureId[]) {
    const { value, se } = measures[id]!;
    wider[id] = { value, se: WIDER * se };
  }
  return wider;
}

/** What was measured where, on the working frame: kinds of tissue under the white that was set, veins, missing parts. */
function mapTissues(
  frame: Pixels,
  leaf: FoundLeaf,
  white: WhiteReference,
  sample: LeafSample,
  taken: TakenMeasures,
  missing: Uint8Array,
): Uint8Array {
  const { width, height } = frame;
  const lab = convertPixelsToLab(frame, white.gains);
  const data = classifyTissue(lab, leaf.remaining, medianInside(lab.L, leaf.remaining));
  const size = { width: sample.cropWidth, height: sample.cropHeight };
  const grid = { width: sample.width, height: sample.height };
  const veins = enlargeMask({ ...grid, data: taken.veins }, size.width, size.height);
  const gaps = enlargeMask({ ...grid, data: missing }, size.width, size.height);
  for (let y = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++) {
      const k = y * size.width + x;
      const i = (sample.top + y) * width + sample.left + x;
      if (sample.top + y >= height) continue;
      if (gaps[k] === 255 && leaf.remaining[i] !== 255) data[i] = TISSUE_INDEX.missing;
      else if (veins[k] === 255 && data[i] === TISSUE_INDEX.healthy) data[i] = TISSUE_INDEX.vein;
    }
  }
  return data;
}
