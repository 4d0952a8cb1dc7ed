import { convertPixelsToLab, type LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import { scaleToWorkingFrame } from '../photo/scale-to-working-frame.ts';
import { settleWhite } from '../photo/settle-white.ts';
import type { PhotoRole, PhotoTrouble, Pixels } from '../photo/types.ts';
import { classifyTissue, TISSUE_INDEX } from './classify-tissue.ts';
import { countHoles } from './count-holes.ts';
import { type FoundLeaf, findLeaf } from './find-leaf.ts';
import { judgeExposure, judgeSharpness, softenLightness } from './judge-photo.ts';
import { judgePlantColour } from './judge-plant.ts';
import { looksLikeLeaf } from './looks-like-leaf.ts';
import { measureLoss } from './measure-loss.ts';
import { measureStipples } from './measure-stipples.ts';
import { medianInside } from './measure-tissue.ts';
import type { MeasureId, Measures } from './measures.ts';
import { enlargeMask } from './refine-outline.ts';
import {
  type Box,
  boundsOf,
  cropMask,
  cropPixels,
  type LeafSample,
  SMALL_SAMPLE_PX,
  sampleLeaf,
} from './sample-leaf.ts';
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
/**
 * Share of the leaf with a full channel above which colours are lost: of photographs brightened by steps none was spoilt up to 0.32,
 * ten of eleven from 0.49 on; of 140 as taken, none has more than 0.17 (`training/measure-photo-thresholds.ts`).
 */
const BURNT_SHARE = 0.4;
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
  const loss = measureLoss(
    sample,
    leaf.score.onRim,
    leaf.overPlainGround,
    countHoles(leaf.outline, leaf.remaining, width, height),
  );
  const crop = cropLeaf(frame, leaf, white);
  const soft = softenLightness(crop.lab);
  const facts = measureFrame(crop, frame, soft);
  const trouble = findTrouble(crop, facts);
  const stipples = measureStipples(crop.lab, crop.remaining, crop.outline, soft);
  const measures: Measures = {
    ...taken.measures,
    ...loss.measures,
    ...(stipples === undefined ? {} : { 'stipple-density': stipples }),
    'frame-share': { value: facts.share, se: Math.max(0.004, 0.02 * facts.share) },
    sharpness: { value: facts.sharpness, se: 0.04 },
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
    tissues: { width, height, data: mapTissues(frame, crop, sample, taken, loss.missing) },
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

/** The leaf at the scale of the working frame, under the white that was set. */
interface LeafCrop {
  readonly box: Box;
  readonly pixels: Pixels;
  readonly lab: LabPlanes;
  readonly outline: Uint8Array;
  readonly remaining: Uint8Array;
}

function cropLeaf(frame: Pixels, leaf: FoundLeaf, white: WhiteReference): LeafCrop {
  const box = boundsOf(leaf.outline, frame.width, frame.height);
  const pixels = cropPixels(frame, box);
  return {
    box,
    pixels,
    lab: convertPixelsToLab(pixels, white.gains),
    outline: cropMask(leaf.outline, frame.width, box),
    remaining: cropMask(leaf.remaining, frame.width, box),
  };
}

interface FrameFacts {
  readonly areaPx: number;
  readonly share: number;
  readonly sharpness: number;
}

function measureFrame({ lab, outline }: LeafCrop, frame: Pixels, soft: Float32Array): FrameFacts {
  let areaPx = 0;
  for (let i = 0; i < outline.length; i++) if (outline[i] === 255) areaPx++;
  return {
    areaPx,
    share: areaPx / (frame.width * frame.height),
    sharpness: judgeSharpness(lab, outline, soft),
  };
}

function findTrouble({ pixels, lab, remaining }: LeafCrop, facts: FrameFacts): PhotoTrouble[] {
  const trouble: PhotoTrouble[] = [];
  const exposure = judgeExposure(pixels, lab, remaining);
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
  { box, lab, remaining }: LeafCrop,
  sample: LeafSample,
  taken: TakenMeasures,
  missing: Uint8Array,
): Uint8Array {
  const data = new Uint8Array(frame.width * frame.height);
  const kinds = classifyTissue(lab, remaining, medianInside(lab.L, remaining));
  const grid = { width: sample.width, height: sample.height };
  const veins = enlargeMask({ ...grid, data: taken.veins }, box.width, box.height);
  const gaps = enlargeMask({ ...grid, data: missing }, box.width, box.height);
  for (let k = 0; k < kinds.length; k++) {
    let kind = kinds[k]!;
    if (gaps[k] === 255 && remaining[k] !== 255) kind = TISSUE_INDEX.missing;
    else if (veins[k] === 255 && kind === TISSUE_INDEX.healthy) kind = TISSUE_INDEX.vein;
    const y = (k / box.width) | 0;
    data[(box.top + y) * frame.width + box.left + (k - y * box.width)] = kind;
  }
  return data;
}
